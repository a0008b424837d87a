import { strict as assert } from 'node:assert';
import {
  CancellationTokenSource,
  type ClientCapabilities,
  FileChangeType,
  ReferencesRequest,
  RenameRequest,
  ShowMessageNotification,
  type TextDocumentEdit,
  WorkDoneProgress,
  type WorkspaceEdit,
  WorkspaceSymbolRequest,
} from 'vscode-languageserver-protocol/node';
import { type Scratch, withScratch } from '../support/scratch';
import { ableClient, type TestServer, withServer } from '../support/server';

const habits = 'let quiet = 90 Hz\n[gyro.filter.1]\nkind = butterworth\ncutoff = quiet\n';
const plover = 'include "../habits.craft"\n[craft]\nname = "Plover"\n[gyro.filter.2]\ncutoff = 2 * quiet\n';
const files = {
  'habits.craft': habits,
  'race/plover.craft': plover,
  'race/dunlin.craft': 'include "../habits.craft"\n[craft]\nname = "Dunlin"\n[pack.dash]\ncells = 6\n',
  'alone.craft': 'let quiet = 4 ms\n',
};

/** Edits of a rename by file name: the lines that they are on, with the new texts. */
function editsIn(edit: WorkspaceEdit | null, scratch: Scratch) {
  const changes = (edit?.documentChanges ?? []).filter((one): one is TextDocumentEdit => 'edits' in one);
  return Object.fromEntries(
    changes.map(({ textDocument, edits }) => [
      `${textDocument.uri.slice(scratch.uri.length + 1)} ${textDocument.version}`,
      edits.map((one) =>
        'newText' in one ? `${one.range.start.line}:${one.range.start.character} ${one.newText}` : '',
      ),
    ]),
  );
}

const atQuiet = { line: 0, character: 5 };

async function rename(server: TestServer, scratch: Scratch, newName: string, position = atQuiet) {
  const textDocument = { uri: scratch.uriOf('habits.craft') };
  return server.connection.sendRequest(RenameRequest.type, { textDocument, position, newName });
}

async function includers(server: TestServer, scratch: Scratch, name: string, line = 0) {
  const found = await server.connection.sendRequest(ReferencesRequest.type, {
    textDocument: { uri: scratch.uriOf(name) },
    position: { line, character: 12 },
    context: { includeDeclaration: true },
  });
  return (found ?? [])
    .map(({ uri, range }) => `${uri.slice(scratch.uri.length + 1)}:${range.start.line}`)
    .sort();
}

describe('scripts that nobody has opened', () => {
  it('follow the rename of a constant that they share, and no other', () =>
    withScratch(files, (scratch) =>
      withServer({ folders: [scratch.uri] }, async (server) => {
        await server.open(scratch.uriOf('habits.craft'), habits, 7);
        assert.deepEqual(editsIn(await rename(server, scratch, 'calm'), scratch), {
          'habits.craft 7': ['0:4 calm', '3:9 calm'],
          'race/plover.craft null': ['4:13 calm'],
        });
      }),
    ));

  it('keep a name from being given that one of them has', () =>
    withScratch({ ...files, 'race/dunlin.craft': `${files['race/dunlin.craft']}[gyro]\n` }, (scratch) =>
      withServer({ folders: [scratch.uri] }, async (server) => {
        scratch.write('race/knot.craft', 'include "../habits.craft"\nlet calm = 1 Hz\n');
        await server.open(scratch.uriOf('habits.craft'), habits);
        await assert.rejects(
          rename(server, scratch, 'calm'),
          /^Error: The name calm is taken by a constant in line 2 of knot\.craft\.$/,
        );
      }),
    ));

  it('count as they stand: on the disk once it was told, in an open text before the disk', () =>
    withScratch(files, (scratch) =>
      withServer({ folders: [scratch.uri] }, async (server) => {
        await server.open(scratch.uriOf('habits.craft'), habits);
        await rename(server, scratch, 'calm');
        scratch.write('race/plover.craft', `# Moved down.\n${plover}`);
        scratch.write('race/knot.craft', 'include "../habits.craft"\nx = quiet\n');
        await server.filesChanged(
          { uri: scratch.uriOf('race/plover.craft'), type: FileChangeType.Changed },
          { uri: scratch.uriOf('race/knot.craft'), type: FileChangeType.Created },
        );
        await server.open(scratch.uriOf('alone.craft'), 'include "habits.craft"\nx = quiet\n', 3);
        assert.deepEqual(editsIn(await rename(server, scratch, 'calm'), scratch), {
          'habits.craft 1': ['0:4 calm', '3:9 calm'],
          'alone.craft 3': ['1:4 calm'],
          'race/plover.craft null': ['5:13 calm'],
          'race/knot.craft null': ['1:4 calm'],
        });
      }),
    ));

  it('are read again where nobody tells of the disk, and right before they are edited', async () => {
    const deaf: ClientCapabilities = {
      ...ableClient,
      workspace: { workspaceEdit: { documentChanges: true } },
    };
    for (const capabilities of [ableClient, deaf])
      await withScratch(files, (scratch) =>
        withServer({ folders: [scratch.uri], capabilities }, async (server) => {
          await server.open(scratch.uriOf('habits.craft'), habits);
          await rename(server, scratch, 'calm');
          scratch.write('race/plover.craft', `# Moved down.\n${plover}`);
          const edits = editsIn(await rename(server, scratch, 'calm'), scratch);
          assert.deepEqual(edits['race/plover.craft null'], ['5:13 calm']);
        }),
      );
  });

  it('that include what an include line names are found from it', () =>
    withScratch(files, (scratch) =>
      withServer({ folders: [scratch.uri] }, async (server) => {
        await server.open(scratch.uriOf('race/plover.craft'), plover);
        assert.deepEqual(await includers(server, scratch, 'race/plover.craft'), [
          'race/dunlin.craft:0',
          'race/plover.craft:0',
        ]);
      }),
    ));

  it('are left out where propsoff.json says so, at once when it is saved', () =>
    withScratch(files, (scratch) =>
      withServer({ folders: [scratch.uri] }, async (server) => {
        await server.open(scratch.uriOf('race/plover.craft'), plover);
        const found = () => includers(server, scratch, 'race/plover.craft');
        assert.equal((await found()).length, 2);
        scratch.write('propsoff.json', '{ "leaveOut": ["race/d*.craft"] }');
        await server.filesChanged({ uri: scratch.uriOf('propsoff.json'), type: FileChangeType.Created });
        assert.deepEqual(await found(), ['race/plover.craft:0']);
      }),
    ));

  it('and can’t be read are told of once, with why', () =>
    withScratch({ ...files, 'race/big.craft': 'x'.repeat(1_000_001), 'race/odd.craft': 'a\0b' }, (scratch) =>
      withServer({ folders: [scratch.uri] }, async (server) => {
        const told: string[] = [];
        server.connection.onNotification(
          ShowMessageNotification.type,
          ({ message }) => void told.push(message),
        );
        await server.open(scratch.uriOf('habits.craft'), habits);
        await rename(server, scratch, 'calm');
        await rename(server, scratch, 'calm');
        assert.equal(told.length, 1);
        assert.match(told[0] ?? '', /big\.craft \(it is too long for a settings script\)/);
        assert.match(told[0] ?? '', /odd\.craft \(it is not a text\)/);
      }),
    ));

  it('have their crafts, packs, constants and settings among the symbols of the workspace', () =>
    withScratch(files, (scratch) =>
      withServer({ folders: [scratch.uri] }, async (server) => {
        const names = async (query: string) =>
          (await server.connection.sendRequest(WorkspaceSymbolRequest.type, { query }))?.map(
            ({ name, containerName, location }) =>
              `${name} in ${containerName} ${'range' in location ? location.range.start.line : ''}`,
          );
        assert.deepEqual(await names('plover'), ['Plover in plover.craft 2']);
        assert.deepEqual(await names('dash'), [
          'dash in dunlin.craft 3',
          'pack.dash.cells in dunlin.craft 4',
        ]);
        assert.deepEqual(await names('quiet'), ['quiet in alone.craft 0', 'quiet in habits.craft 0']);
        assert.deepEqual((await names('filter.2.cutoff'))?.slice(0, 1), [
          'gyro.filter.2.cutoff in plover.craft 4',
        ]);
      }),
    ));
});

describe('many scripts that nobody has opened', () => {
  const many = Object.fromEntries(
    Array.from({ length: 100 }, (_, at) => [
      `racer-${at}.craft`,
      `include "habits.craft"\nx = quiet # ${at}\n`,
    ]),
  );

  it('are read with a progress that the client asked for, and the work ends when it loses interest', () =>
    withScratch({ ...files, ...many }, (scratch) =>
      withServer({ folders: [scratch.uri] }, async (server) => {
        const { connection } = server;
        const seen: string[] = [];
        connection.onProgress(WorkDoneProgress.type, 'mine', (value) => {
          seen.push(value.kind === 'end' ? 'end' : `${value.kind} ${value.message}`);
        });
        await server.open(scratch.uriOf('habits.craft'), habits);
        const params = {
          textDocument: { uri: scratch.uriOf('habits.craft') },
          position: atQuiet,
          newName: 'calm',
        };
        const source = new CancellationTokenSource();
        const left = connection.sendRequest(RenameRequest.type, params, source.token);
        source.cancel();
        await assert.rejects(left, { code: -32800 });
        const edit = await connection.sendRequest(RenameRequest.type, { ...params, workDoneToken: 'mine' });
        assert.equal(edit?.documentChanges?.length, 102);
        assert.match(seen[0] ?? '', /^begin \d+ of 10\d$/);
        assert.equal(seen.at(-1), 'end');
        assert.ok(seen.length > 2, seen.join());
        seen.length = 0;
        await connection.sendRequest(RenameRequest.type, { ...params, workDoneToken: 'mine' });
        assert.deepEqual(seen, []);
      }),
    ));
});
