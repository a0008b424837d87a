import { strict as assert } from 'node:assert';
import { CancellationTokenSource } from 'vscode-languageserver-protocol/node';
import { boardTextRequest, proveRequest } from '../../server/src/lsp/board-protocol';
import { type FileAnswer, readFileRequest } from '../../server/src/lsp/files-protocol';
import { benchCardRequest } from '../../server/src/lsp/flight-protocol';
import { compareRequest } from '../../server/src/lsp/protocol';
import { ownClient, type TestServer, withOwnServer } from '../support/server';
import { shown } from '../support/shown';

const folder = 'shelf://host/work';
const main = `${folder}/main.craft`;

async function untilFound(server: TestServer, code: string): Promise<string> {
  const { diagnostics } = await server.pushed(main, (found) =>
    found.diagnostics.some((one) => one.code === code),
  );
  assert.equal(shown(diagnostics).length, 1);
  return String(diagnostics[0]?.message);
}

describe('a folder that is not on this machine', () => {
  it('has its includes read by the editor', () =>
    withOwnServer({ capabilities: ownClient, folders: [folder] }, async (server) => {
      const asked: string[] = [];
      server.connection.onRequest(readFileRequest, ({ uri }): FileAnswer => {
        asked.push(uri);
        return { kind: 'text', text: 'let quiet = 9000 Hz\n' };
      });
      await server.open(main, 'include "base.craft"\n[gyro.filter.1]\ncutoff = 2 * quiet\n');
      await untilFound(server, 'line/outside-range');
      assert.deepEqual(
        asked.filter((uri) => uri.endsWith('.craft')),
        [`${folder}/base.craft`],
      );
    }));

  it('is told of at the include, where the editor hands over no files', () =>
    withOwnServer({ folders: [folder] }, async (server) => {
      await server.open(main, 'include "base.craft"\n');
      const message = await untilFound(server, 'line/include-refused');
      assert.match(message, /hands over no files but those on this machine/);
    }));

  it('keeps the disk out of reach', () =>
    withOwnServer({ folders: [folder] }, async (server) => {
      await server.open(main, 'include "../../../etc/base.craft"\n');
      const message = await untilFound(server, 'line/include-refused');
      assert.match(message, /relative path within the workspace/);
    }));

  it('lets nothing out of a script before what it includes is there, and a person need not wait for that', () =>
    withOwnServer({ capabilities: ownClient, folders: [folder] }, async (server) => {
      const { connection } = server;
      let arrive = (_: FileAnswer) => {};
      const answer = new Promise<FileAnswer>((resolve) => {
        arrive = resolve;
      });
      connection.onRequest(readFileRequest, () => answer);
      await server.open(main, 'include "base.craft"\n[board]\nprofile = wren\n');
      const about = { textDocument: { uri: main } };
      const wanted = { ...about, board: null, since: null, reason: null, isPreview: true };
      const open = { uri: main, text: null, name: 'main.craft', pack: null, otherwise: null };
      const earlier = { ...open, text: '[craft]\nname = "Plover"\n' };
      const left = new CancellationTokenSource();
      const given = connection.sendRequest(boardTextRequest, wanted);
      const proved = connection.sendRequest(proveRequest, {
        omitsDefaults: false,
        ...about,
        capture: "who/title-of-craft <- 'Finch'\n",
        board: null,
      });
      const card = connection.sendRequest(benchCardRequest, about);
      const compared = connection.sendRequest(compareRequest, { before: earlier, after: open });
      const unwanted = [
        connection.sendRequest(boardTextRequest, wanted, left.token),
        connection.sendRequest(compareRequest, { before: open, after: earlier }, left.token),
      ];
      left.cancel();
      for (const one of unwanted) await assert.rejects(one, { code: -32800 });
      arrive({ kind: 'text', text: '[craft]\nname = "Plover"\n[gyro.filter.1]\ncutoff = 123 Hz\n' });
      const text = await given;
      assert.match(text?.kind === 'text' ? text.pieces.join('') : '', /\b123\b/);
      const proof = await proved;
      assert.match(proof?.kind === 'proof' ? JSON.stringify(proof) : '', /Plover/);
      assert.equal((await card)?.card.name, 'Plover');
      assert.match(JSON.stringify((await compared)?.members), /gyro\.filter\.1/);
    }));
});
