import { strict as assert } from 'node:assert';
import * as vscode from 'vscode';
import type { ServerWorker } from '../../../client/src/worker-transports';
import { closeAll, foundIn, openText, untilFound } from '../suite/scripts';

type WorkerClass = new (url: string) => ServerWorker;

/** The servers that the extension has started: it makes its workers in this same place. */
const servers: ServerWorker[] = [];

const Made = Reflect.get(globalThis, 'Worker') as WorkerClass;
Reflect.set(
  globalThis,
  'Worker',
  class extends Made {
    constructor(url: string) {
      super(url);
      servers.push(this);
    }
  },
);

describe('in a browser, when the checks fail', () => {
  afterEach(closeAll);

  it('they come back by themselves, with what was typed meanwhile', async () => {
    const document = await openText('[arming]\ntilt-limt = 60 deg\n');
    await untilFound(document, 'line/unknown-name');
    const before = servers.length;
    const server = servers.at(-1);
    assert.ok(server !== undefined);
    server.terminate();
    const edit = new vscode.WorkspaceEdit();
    edit.insert(document.uri, new vscode.Position(2, 0), 'needs = [nothing-such]\n');
    assert.ok(await vscode.workspace.applyEdit(edit));
    // As a browser tells of a program that it can't go on with.
    server.onerror?.({ message: 'ended by a test' });
    await untilFound(document, 'line/unknown-word');
    assert.ok(foundIn(document).includes('line/unknown-name'));
    assert.equal(servers.length, before + 1);
  });
});
