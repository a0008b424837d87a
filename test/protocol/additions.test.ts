import assert from 'node:assert/strict';
import {
  type ClientCapabilities,
  CompletionRequest,
  FileChangeType,
  HoverRequest,
} from 'vscode-languageserver-protocol/node';
import { buzzer, textOf } from '../support/buzzer';
import { type Scratch, withScratch } from '../support/scratch';
import { ableClient, countingIn, type TestServer, withOwnServer, withServer } from '../support/server';
import { shown } from '../support/shown';

const file = 'propsoff/buzzer.json';
const script = '[buzzer]\ntune = 3.5 kHz\n';
const unknown = '0:1-7 line/unknown-section';
const shrill = '1:7-14 buzzer/shrill';

interface Here {
  readonly server: TestServer;
  readonly scratch: Scratch;
  readonly main: string;
  readonly added: string;
}

function inFolder(
  files: Readonly<Record<string, string>>,
  run: (here: Here) => Promise<void>,
  capabilities: ClientCapabilities = ableClient,
) {
  return () =>
    withScratch(files, (scratch) =>
      withServer({ folders: [scratch.uri], capabilities }, async (server) => {
        const main = scratch.uriOf('main.craft');
        await server.open(main, script);
        await run({ server, scratch, main, added: scratch.uriOf(file) });
      }),
    );
}

async function until(server: TestServer, uri: string, ...wanted: string[]) {
  return server.pushed(
    uri,
    ({ diagnostics }) => JSON.stringify(shown(diagnostics)) === JSON.stringify(wanted),
  );
}

describe('a file in the folder "propsoff" of the workspace', () => {
  it('is in use from the first finding on', () =>
    withScratch({ [file]: textOf(buzzer) }, (scratch) =>
      withOwnServer({ folders: [scratch.uri] }, async (server) => {
        const main = scratch.uriOf('main.craft');
        await server.open(main, script);
        const first = await server.pushedFor(main, 1);
        assert.deepEqual(shown(first.diagnostics), [shrill]);
      }),
    ));

  it(
    'is explained and completed like anything built in',
    inFolder({ [file]: textOf(buzzer) }, async ({ server, main }) => {
      await until(server, main, shrill);
      const at = { textDocument: { uri: main }, position: { line: 1, character: 3 } };
      const hover = JSON.stringify(await server.connection.sendRequest(HoverRequest.type, at));
      assert.match(hover, /Pitch of the buzzer/);
      await server.open('untitled:more', '[buzzer]\n\n');
      const list = await server.connection.sendRequest(CompletionRequest.type, {
        textDocument: { uri: 'untitled:more' },
        position: { line: 1, character: 0 },
      });
      const items = Array.isArray(list) ? list : (list?.items ?? []);
      assert.ok(items.some(({ label }) => label === 'tune'));
    }),
  );

  it(
    'takes effect as it appears, changes and goes on the disk (F01)',
    inFolder({}, async ({ server, scratch, main, added }) => {
      await until(server, main, unknown);
      scratch.write(file, textOf(buzzer));
      await server.filesChanged({ uri: added, type: FileChangeType.Created });
      await until(server, main, shrill);
      scratch.write(file, textOf({ ...buzzer, checks: [] }));
      await server.filesChanged({ uri: added, type: FileChangeType.Changed });
      await until(server, main);
      scratch.remove(file);
      await server.filesChanged({ uri: added, type: FileChangeType.Deleted });
      await until(server, main, unknown);
    }),
  );

  it(
    'is told its own faults though it is not open',
    inFolder({ [file]: '{\n  "gears": 3\n}\n' }, async ({ server, added }) => {
      const { diagnostics } = await server.pushed(added);
      assert.deepEqual(shown(diagnostics), ['1:2-9 addition/shape']);
      assert.match(
        String(diagnostics[0]?.message),
        /"gears" is not known here\.\nMend it: nothing of this file is in use/,
      );
    }),
  );

  it(
    'is read as it is typed: its faults at their place, what it was when it was fine still in use',
    inFolder({ [file]: textOf(buzzer) }, async ({ server, main, added }) => {
      await until(server, main, shrill);
      await server.open(added, textOf(buzzer));
      const lines = textOf(buzzer).split('\n');
      const line = lines.findIndex((one) => one.includes('"unit"'));
      const start = lines[line]?.indexOf('kHz') ?? -1;
      const change = (text: string, length: number, version: number) =>
        server.change(added, version, {
          range: { start: { line, character: start }, end: { line, character: start + length } },
          text,
        });
      await change('bananas', 3, 2);
      await until(server, added, `${line}:${start - 1}-${start + 8} addition/value`);
      await server.change(main, 2, {
        range: { start: { line: 1, character: 7 }, end: { line: 1, character: 10 } },
        text: '3.6',
      });
      assert.deepEqual(shown((await server.pushedFor(main, 2)).diagnostics), [shrill]);
      await change('Hz', 7, 3);
      await until(server, added);
    }),
  );

  it(
    'counts places as the client counts',
    inFolder(
      { [file]: '{ "\u{1f6e0}": 1 }' },
      async ({ server, added }) => {
        const { diagnostics } = await server.pushed(added);
        assert.deepEqual(shown(diagnostics), ['0:2-8 addition/shape']);
      },
      countingIn('utf-8'),
    ),
  );

  it('is asked for by its text alone, so that no other feature is offered for it', async () => {
    const synchronization = { dynamicRegistration: true };
    const capabilities = { ...ableClient, textDocument: { ...ableClient.textDocument, synchronization } };
    await withServer({ capabilities }, async (server) => {
      await server.open('untitled:one', '[gyro]\n');
      await server.pushed('untitled:one');
      assert.deepEqual(server.registered.map(({ method }) => method).sort(), [
        'textDocument/didChange',
        'textDocument/didClose',
        'textDocument/didOpen',
        'workspace/didChangeWatchedFiles',
      ]);
      for (const { registerOptions } of server.registered)
        assert.match(JSON.stringify(registerOptions), /propsoff\/\*\.\{json,jsonc\}/);
    });
  });
});

describe('a file in the folder "boards" of the workspace', () => {
  const tooFew = '3:9-15 wire/too-few-motor-outputs';
  const craft = (board: string) => `board.profile = ${board}\n[craft]\nname = "Tern"\nlayout = quad-x\n`;
  const board = (name: string, motorOutputs: number) => JSON.stringify({ name, hardware: { motorOutputs } });
  /** Of many findings, those about outputs and boards that can't be used. */
  const seen = (diagnostics: Parameters<typeof shown>[0]) =>
    shown(diagnostics).filter((one) => /motor-outputs|board-faulty|unknown-word/.test(one));
  const sees = (server: TestServer, uri: string, ...wanted: string[]) =>
    server.pushed(uri, ({ diagnostics }) => JSON.stringify(seen(diagnostics)) === JSON.stringify(wanted));

  it('is read when a script names its board, and again when it changes', () =>
    withScratch({ 'boards/dipper.json': board('dipper', 2), 'boards/gull.json': '{ "name": ' }, (scratch) =>
      withServer({ folders: [scratch.uri], capabilities: ableClient }, async (server) => {
        const main = scratch.uriOf('main.craft');
        await server.open(main, craft('dipper'));
        await sees(server, main, tooFew);
        scratch.write('boards/dipper.json', board('dipper', 4));
        await server.filesChanged({ uri: scratch.uriOf('boards/dipper.json'), type: FileChangeType.Changed });
        await sees(server, main);
        const other = scratch.uriOf('other.craft');
        await server.open(other, craft('gull'));
        await sees(server, other, '0:16-20 wire/board-faulty');
        const { diagnostics } = await server.pushed(
          scratch.uriOf('boards/gull.json'),
          (one) => one.diagnostics.length > 0,
        );
        assert.deepEqual(
          diagnostics.map(({ code }) => code),
          ['addition/not-json'],
        );
      }),
    ));

  it('is in use as an editor shows it', () =>
    withScratch({ 'boards/dipper.json': board('dipper', 2) }, (scratch) =>
      withServer({ folders: [scratch.uri], capabilities: ableClient }, async (server) => {
        const main = scratch.uriOf('main.craft');
        await server.open(main, craft('dipper'));
        await sees(server, main, tooFew);
        await server.open(scratch.uriOf('boards/dipper.json'), board('dipper', 4));
        await sees(server, main);
        await server.open(scratch.uriOf('boards/new.json'), board('new', 2));
        await server.open(scratch.uriOf('other.craft'), craft('new'));
        await sees(server, scratch.uriOf('other.craft'), tooFew);
      }),
    ));
});
