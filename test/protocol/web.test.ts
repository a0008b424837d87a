import { strict as assert } from 'node:assert';
import { readFileSync } from 'node:fs';
import type { Diagnostic } from 'vscode-languageserver-protocol/node';
import {
  CompletionRequest,
  HoverRequest,
  RenameRequest,
  ShowMessageNotification,
  WillRenameFilesRequest,
  WorkspaceDiagnosticRequest,
} from 'vscode-languageserver-protocol/node';
import {
  type FileAnswer,
  findScriptsRequest,
  listFolderRequest,
  readFileRequest,
} from '../../server/src/lsp/files-protocol';
import { sheetRequest } from '../../server/src/lsp/protocol';
import { built } from '../support/built';
import { buzzer, textOf } from '../support/buzzer';
import { shown } from '../support/shown';
import { WebServer } from '../support/web-server';

const folder = 'shelf:/work';
const main = `${folder}/main.craft`;

/** The worker with an editor whose file system holds these, by their paths in the folder. */
async function started(files: Readonly<Record<string, string | FileAnswer>>) {
  const server = new WebServer();
  const asked: string[] = [];
  server.connection.onRequest(readFileRequest, ({ uri }): FileAnswer => {
    asked.push(uri);
    const file = files[uri.slice(folder.length + 1)];
    return typeof file === 'string' ? { kind: 'text', text: file } : (file ?? { kind: 'missing' });
  });
  server.connection.onRequest(listFolderRequest, ({ uri }) =>
    Object.keys(files)
      .filter((name) => `${folder}/${name}`.startsWith(`${uri}/`))
      .map((name) => name.split('/').at(-1) ?? ''),
  );
  await server.initialize(folder);
  return { server, asked };
}

function justThese(...wanted: string[]) {
  return (found: readonly Diagnostic[]) => JSON.stringify(shown([...found])) === JSON.stringify(wanted);
}

const uses = 'include "base.craft"\n[gyro.filter.1]\ncutoff = 2 * quiet\n';

describe('the server in a web worker', () => {
  it('finds, explains and completes', async () => {
    const { server } = await started({});
    await server.open(main, '[arming]\ntilt-limt = 60 deg\ntilt-limit = 60 deg\n\n');
    await server.pushed(main, justThese('1:0-9 line/unknown-name'));
    const about = { textDocument: { uri: main } };
    const hover = await server.connection.sendRequest(HoverRequest.type, {
      ...about,
      position: { line: 2, character: 3 },
    });
    assert.match(JSON.stringify(hover?.contents), /arming\.tilt-limit/);
    const list = await server.connection.sendRequest(CompletionRequest.type, {
      ...about,
      position: { line: 3, character: 0 },
    });
    const items = list === null ? [] : 'items' in list ? list.items : list;
    assert.ok(items.some(({ label }) => label === 'needs'));
    assert.ok((await server.connection.sendRequest(sheetRequest, about)) !== null);
  });

  it('reads includes, and what they include, through the editor', async () => {
    const { server, asked } = await started({
      'base.craft': 'include "parts/tones.craft"\n',
      'parts/tones.craft': '\ufefflet quiet = 9000 Hz\n',
    });
    await server.open(main, uses);
    await server.pushed(main, justThese('2:9-18 line/outside-range'));
    const scripts = asked.filter((uri) => uri.endsWith('.craft'));
    assert.deepEqual(scripts, [`${folder}/base.craft`, `${folder}/parts/tones.craft`]);
  });

  it('says at the include what the editor could not read, and asks for nothing outside the folder', async () => {
    const { server, asked } = await started({
      'base.craft': { kind: 'unreadable', why: 'it is locked away' },
    });
    await server.open(main, 'include "base.craft"\ninclude "none.craft"\ninclude "../out.craft"\n');
    const wanted = [
      '0:8-20 line/include-refused',
      '1:8-20 line/include-missing',
      '2:8-22 line/include-refused',
    ];
    const found = await server.pushed(main, justThese(...wanted));
    assert.match(String(found[0]?.message), /it is locked away/);
    assert.match(String(found[2]?.message), /outside the workspace/);
    const scripts = asked.filter((uri) => uri.endsWith('.craft'));
    assert.deepEqual(scripts, [`${folder}/base.craft`, `${folder}/none.craft`]);
  });

  it('takes in what a folder adds to the catalogue', async () => {
    const { server } = await started({ 'propsoff/buzzer.json': textOf(buzzer) });
    await server.open(main, '[buzzer]\ntune = 3.5 kHz\n');
    await server.pushed(main, (found) => found.some(({ code }) => code === 'buzzer/shrill'));
  });
});

describe('scripts in a web worker that nobody has opened', () => {
  const files = {
    'base.craft': 'let quiet = 90 Hz\n',
    'race/plover.craft': 'include "../base.craft"\n[gyro.filter.1]\nkind = butterworth\ncutoff = 2 * quiet\n',
    'odd.craft': { kind: 'unreadable', why: 'it is locked away' },
  } as const;

  it('are found and read through the editor: renamed in, followed, and told of', async () => {
    const { server, asked } = await started(files);
    const scripts = Object.keys(files).map((name) => `${folder}/${name}`);
    const folders: string[] = [];
    server.connection.onRequest(findScriptsRequest, ({ uri }) => {
      folders.push(uri);
      return { scripts, unread: [], isCut: false };
    });
    const told: string[] = [];
    server.connection.onNotification(ShowMessageNotification.type, ({ message }) => void told.push(message));
    const base = `${folder}/base.craft`;
    await server.open(base, files['base.craft']);
    const about = { textDocument: { uri: base }, position: { line: 0, character: 5 } };
    const edit = await server.connection.sendRequest(RenameRequest.type, { ...about, newName: 'calm' });
    const edited = (edit?.documentChanges ?? []).map((one) =>
      'textDocument' in one ? one.textDocument.uri : '',
    );
    assert.deepEqual(edited, [base, `${folder}/race/plover.craft`]);
    assert.match(told.join(), /odd\.craft \(it is locked away\)/);
    assert.deepEqual(folders, [folder]);
    const moved = await server.connection.sendRequest(WillRenameFilesRequest.type, {
      files: [{ oldUri: base, newUri: `${folder}/club.craft` }],
    });
    assert.match(JSON.stringify(moved), /\\"..\/club.craft\\"/);
    const { items } = await server.connection.sendRequest(WorkspaceDiagnosticRequest.type, {
      previousResultIds: [],
    });
    const found = items.map((one) => `${one.uri} ${one.kind === 'full' && one.items.length > 0}`);
    assert.ok(found.includes(`${folder}/odd.craft true`), found.join());
    assert.ok(asked.every((uri) => uri.startsWith(`${folder}/`)));
  });
});

describe('the bundles for a browser', () => {
  const names = (name: string) =>
    [...readFileSync(built(name), 'utf8').matchAll(/\brequire\(\s*["'`]([^"'`]*)/g)].map(([, one]) => one);

  it('load no module but the editor’s own', () => {
    assert.deepEqual(names('web/server.js'), []);
    assert.deepEqual([...new Set(names('web/extension.js'))], ['vscode']);
  });
});
