import { strict as assert } from 'node:assert';
import * as vscode from 'vscode';
import type { ServerWorker } from '../../../client/src/worker-transports';
import { asked, closeAll, foundIn, openText, untilFound } from '../suite/scripts';
import { until } from '../suite/until';

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

/** As a browser tells of a program that it can't go on with. */
function fail(): void {
  servers.at(-1)?.onerror?.({ message: 'ended by a test' });
}

/** Waits until a server answers. */
async function untilAnswered({ uri }: vscode.TextDocument): Promise<void> {
  await asked('vscode.executeHoverProvider', uri, new vscode.Position(0, 2));
}

describe('in a browser, when the checks fail', () => {
  afterEach(closeAll);

  it('again and again, they are left alone until a person starts them', async () => {
    const document = await openText('[arming]\ntilt-limt = 60 deg\n');
    await untilFound(document, 'line/unknown-name');
    const first = servers.length;
    for (let times = 1; times <= 4; times += 1) {
      fail();
      await until('another server', () => servers.length === first + times);
      await untilAnswered(document);
    }
    fail();
    await until('the findings to go', () => foundIn(document).length === 0);
    assert.equal(servers.length, first + 4);
    await vscode.commands.executeCommand('propsoff.startChecks');
    await untilFound(document, 'line/unknown-name');
    assert.equal(servers.length, first + 5);
  });

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
    fail();
    await untilFound(document, 'line/unknown-word');
    assert.ok(foundIn(document).includes('line/unknown-name'));
    assert.equal(servers.length, before + 1);
  });
});
