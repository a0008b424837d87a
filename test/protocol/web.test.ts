import { strict as assert } from 'node:assert';
import { readFileSync } from 'node:fs';
import type { Diagnostic } from 'vscode-languageserver-protocol/node';
import { CompletionRequest, HoverRequest } from 'vscode-languageserver-protocol/node';
import {
  type FileAnswer,
  listFolderRequest,
  readFileRequest,
  sheetRequest,
} from '../../server/src/lsp/protocol';
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
    assert.deepEqual(asked, [`${folder}/base.craft`, `${folder}/parts/tones.craft`]);
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
    assert.deepEqual(asked, [`${folder}/base.craft`, `${folder}/none.craft`]);
  });

  it('takes in what a folder adds to the catalogue', async () => {
    const { server } = await started({ 'propsoff/buzzer.json': textOf(buzzer) });
    await server.open(main, '[buzzer]\ntune = 3.5 kHz\n');
    await server.pushed(main, (found) => found.some(({ code }) => code === 'buzzer/shrill'));
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
