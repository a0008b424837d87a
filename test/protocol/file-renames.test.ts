import { strict as assert } from 'node:assert';
import {
  type ClientCapabilities,
  type FileRename,
  ShowMessageNotification,
  WillRenameFilesRequest,
  type WorkspaceEdit,
} from 'vscode-languageserver-protocol/node';
import { type Scratch, withScratch } from '../support/scratch';
import { ableClient, type StartOptions, type TestServer, withServer } from '../support/server';

const able: ClientCapabilities = {
  ...ableClient,
  workspace: {
    ...ableClient.workspace,
    workspaceEdit: { documentChanges: true, resourceOperations: ['create', 'rename'] },
  },
};

const files = {
  'habits.craft': 'include "parts/tones.craft"\n',
  'parts/tones.craft': 'let quiet = 90 Hz\n',
  'race/plover.craft':
    'include "../habits.craft" # the club’s\ninclude "../parts/tones.craft"\n[board]\nprofile = rook\n',
  'race/plover.craft.handed.json': '{}',
  'race/plover.craft.flown.json': '{}',
  'race/dunlin.craft': 'include "./plover.craft"\n',
  'boards/rook.json': '{}',
};

/** Every change as one line: places count from 0. */
function lines(edit: WorkspaceEdit | null, scratch: Scratch): readonly string[] {
  const name = (uri: string) => decodeURIComponent(uri.slice(scratch.uri.length + 1));
  return (edit?.documentChanges ?? []).flatMap((change) => {
    if ('edits' in change)
      return change.edits.map((one) => {
        const { line, character } = one.range.start;
        return `${name(change.textDocument.uri)}:${line}:${character} ${'newText' in one ? one.newText : ''}`;
      });
    return change.kind === 'rename' ? [`${name(change.oldUri)} -> ${name(change.newUri)}`] : [change.kind];
  });
}

async function renamed(
  server: TestServer,
  scratch: Scratch,
  ...pairs: readonly (readonly [string, string])[]
) {
  const params = pairs.map(
    ([from, to]): FileRename => ({ oldUri: scratch.uriOf(from), newUri: scratch.uriOf(to) }),
  );
  return lines(await server.connection.sendRequest(WillRenameFilesRequest.type, { files: params }), scratch);
}

function withFiles(
  run: (
    rename: (...pairs: readonly (readonly [string, string])[]) => Promise<readonly string[]>,
    server: TestServer,
    scratch: Scratch,
  ) => Promise<void>,
  { more = {}, ...options }: StartOptions & { readonly more?: Readonly<Record<string, string>> } = {},
): Promise<void> {
  return withScratch({ ...files, ...more }, (scratch) =>
    withServer({ capabilities: able, folders: [scratch.uri], ...options }, (server) =>
      run((...pairs) => renamed(server, scratch, ...pairs), server, scratch),
    ),
  );
}

describe('a file that is to be called otherwise', () => {
  it('is followed by the includes of all scripts, and takes what is kept beside it along', () =>
    withFiles(async (rename) => {
      assert.deepEqual(await rename(['habits.craft', 'club "1".craft']), [
        'race/plover.craft:0:8 "../club \\"1\\".craft"',
      ]);
      const moved = await rename(['race/plover.craft', 'plover 2.craft']);
      assert.deepEqual(moved.slice(0, 3).sort(), [
        'race/dunlin.craft:0:8 "../plover 2.craft"',
        'race/plover.craft:0:8 "habits.craft"',
        'race/plover.craft:1:8 "parts/tones.craft"',
      ]);
      // Once the texts are as they are to be.
      assert.deepEqual(moved.slice(3), [
        'race/plover.craft.handed.json -> plover 2.craft.handed.json',
        'race/plover.craft.flown.json -> plover 2.craft.flown.json',
      ]);
    }));

  it('may be a folder, or several that lie in each other', () =>
    withFiles(async (rename) => {
      assert.deepEqual([...(await rename(['parts', 'shared/sounds']))].sort(), [
        'habits.craft:0:8 "shared/sounds/tones.craft"',
        'race/plover.craft:1:8 "../shared/sounds/tones.craft"',
      ]);
      assert.deepEqual(await rename(['race', 'racers']), []);
      assert.deepEqual(
        await rename(['parts', 'p'], ['parts/tones.craft', 'tones.craft'], ['habits.craft', 'h.craft']),
        [
          'habits.craft:0:8 "tones.craft"',
          'race/plover.craft:0:8 "../h.craft"',
          'race/plover.craft:1:8 "../tones.craft"',
        ],
      );
    }));

  it('keeps the way in which an include is written, and leaves what still leads there', () =>
    withFiles(async (rename) => {
      assert.deepEqual(await rename(['race/plover.craft', 'race/knot.craft']), [
        'race/dunlin.craft:0:8 "./knot.craft"',
        'race/plover.craft.handed.json -> race/knot.craft.handed.json',
        'race/plover.craft.flown.json -> race/knot.craft.flown.json',
      ]);
    }));

  it('is followed in an open text as it stands, with its version', () =>
    withFiles(async (_, server, scratch) => {
      await server.open(scratch.uriOf('race/dunlin.craft'), '\n\ninclude "../habits.craft"\n', 9);
      const edit = await server.connection.sendRequest(WillRenameFilesRequest.type, {
        files: [{ oldUri: scratch.uriOf('habits.craft'), newUri: scratch.uriOf('club.craft') }],
      });
      assert.deepEqual(lines(edit, scratch), [
        'race/dunlin.craft:2:8 "../club.craft"',
        'race/plover.craft:0:8 "../club.craft"',
      ]);
      const versions = (edit?.documentChanges ?? []).map((one) =>
        'edits' in one ? one.textDocument.version : 0,
      );
      assert.deepEqual(versions, [9, null]);
    }));

  it('may be a board’s profile: its name changes wherever it is named', () =>
    withFiles(
      async (rename) => {
        assert.deepEqual([...(await rename(['boards/rook.json', 'boards/crow.json']))].sort(), [
          'race/plover.craft:3:10 crow',
          'texts/a.boardtext.board.json:0:26 "crow"',
        ]);
        assert.deepEqual(await rename(['boards/rook.json', 'boards/No Name.json']), []);
        assert.deepEqual(await rename(['boards/rook.json', 'boards/wren.json']), []);
        assert.deepEqual(await rename(['boards/rook.json', 'rook.json']), []);
      },
      {
        more: {
          'texts/a.boardtext': 'x = 1\n',
          'texts/a.boardtext.board.json': '{ "version": 1, "board" : "rook" }\n',
          'texts/a.craft': 'include "a.boardtext"\n',
        },
      },
    ));

  it('is followed by the paths of propsoff.json, and takes a board’s text along with what is said of it', () =>
    withFiles(
      async (rename) => {
        assert.deepEqual(await rename(['race/dunlin.craft', 'old/dunlin.craft'], ['parts', 'shared']), [
          'habits.craft:0:8 "shared/tones.craft"',
          'race/plover.craft:1:8 "../shared/tones.craft"',
          'propsoff.json:2:15 "old/dunlin.craft"',
          'propsoff.json:2:50 "shared"',
        ]);
        assert.deepEqual(await rename(['texts/a.boardtext', 'texts/b.boardtext']), [
          'texts/a.craft:0:8 "b.boardtext"',
          'texts/a.boardtext.board.json -> texts/b.boardtext.board.json',
        ]);
      },
      {
        more: {
          'propsoff.json': '{\n  // ours\n  "leaveOut": ["race/dunlin.craft", "race/*.old", "parts"]\n}\n',
          'texts/a.boardtext': 'x = 1\n',
          'texts/a.boardtext.board.json': '{ "version": 1, "board": "wren" }\n',
          'texts/a.craft': 'include "a.boardtext"\n',
        },
      },
    ));

  it('is told of where no path leads to it any more', () =>
    withFiles(async (rename, server) => {
      const told: string[] = [];
      server.connection.onNotification(
        ShowMessageNotification.type,
        ({ message }) => void told.push(message),
      );
      assert.deepEqual(await rename(['habits.craft', 'back\\slash.craft']), []);
      assert.deepEqual(told, [
        'What is included there can’t be named by a path from the script any more: line 1 of plover.craft.',
      ]);
    }));

  it('is followed by plain edits in a client that takes no others', () =>
    withFiles(
      async (_, server, scratch) => {
        const edit = await server.connection.sendRequest(WillRenameFilesRequest.type, {
          files: [{ oldUri: scratch.uriOf('race/plover.craft'), newUri: scratch.uriOf('race/knot.craft') }],
        });
        assert.deepEqual(Object.keys(edit?.changes ?? {}), [scratch.uriOf('race/dunlin.craft')]);
        assert.equal(edit?.documentChanges, undefined);
      },
      { capabilities: {} },
    ));

  it('is asked about where it may be named: scripts, boards’ texts, profiles and folders', () =>
    withFiles(async (_, server) => {
      const { willRename } = server.initialized.capabilities.workspace?.fileOperations ?? {};
      assert.deepEqual(
        willRename?.filters.map(({ pattern }) => `${pattern.matches} ${pattern.glob}`),
        ['file **/*.{craft,boardtext,board.json}', 'folder **', 'file **/boards/*.{json,jsonc}'],
      );
    }));
});
