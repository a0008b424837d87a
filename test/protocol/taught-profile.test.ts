import assert from 'node:assert/strict';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { boardTextRequest, proveRequest } from '../../server/src/lsp/board-protocol';
import { writtenRequest } from '../../server/src/lsp/files-protocol';
import { type BoardLesson, teachRequest } from '../../server/src/lsp/learn-protocol';
import { withScratch } from '../support/scratch';
import { countingIn, type TestServer, withServer } from '../support/server';

const listing = [
  'harbour lamp ~> 40',
  'harbour rope ~> 12.5',
  'quay lamp ~> 60',
  'quay crane ~> off',
  'beeper @@ loud',
  'DECK ::',
  'hull ~> 7',
  'mast ~> 9',
];

interface Here {
  readonly server: TestServer;
  readonly uri: string;
  /** Says something of the board, and writes the profile that comes of it; or why nothing does. */
  readonly teach: (lesson: BoardLesson) => Promise<string>;
  readonly copied: () => Promise<{ readonly text: string; readonly isAssumed: boolean }>;
}

/** A file alone, in no workspace, with its text as the board printed it. */
function alone(run: (here: Here) => Promise<void>) {
  return () =>
    withScratch({ 'gannet.boardtext': listing.join('\n'), 'boards/none.txt': '' }, async (scratch) =>
      withServer({ capabilities: countingIn('utf-16') }, async (server) => {
        const uri = pathToFileURL(join(scratch.path, 'gannet.boardtext')).toString();
        const textDocument = { uri };
        await server.open(uri, listing.join('\n'), 1, 'board-text');
        const teach = async (lesson: BoardLesson) => {
          const answer = await server.connection.sendRequest(teachRequest, { textDocument, lesson });
          if (answer?.kind !== 'taught') return answer?.message ?? '';
          const file = join(scratch.path, 'boards', `${answer.board}.json`);
          writeFileSync(file, answer.profile);
          await server.connection.sendRequest(writtenRequest, { uri: pathToFileURL(file).toString() });
          return answer.said;
        };
        const copied = async () => {
          const asked = { textDocument, board: null, since: null, reason: null, isPreview: true };
          const answer = await server.connection.sendRequest(boardTextRequest, asked);
          assert.ok(answer?.kind === 'text');
          return { text: answer.pieces.join(''), isAssumed: answer.isAssumed };
        };
        await run({ server, uri, teach, copied });
      }),
    );
}

const line = (number: number, kind: BoardLesson['kind'], part = ''): BoardLesson => ({
  kind,
  line: number,
  part,
});

describe('what is said of a board in an editor, with the text as a file alone', () => {
  it(
    'is kept in a profile beside it, and counts at once',
    alone(async ({ teach, copied, server, uri }) => {
      assert.equal((await copied()).isAssumed, true);
      assert.equal(await teach(line(4, 'setting')), 'Line 5 is a setting.');
      assert.equal(await teach(line(5, 'heading')), 'Line 6 is a heading.');
      const command: BoardLesson = { kind: 'command', line: null, part: 'tell quay crane to be off' };
      assert.match(
        await teach(command),
        /^From now on the board is told a setting like this: tell quay crane/,
      );
      assert.deepEqual(await copied(), {
        text: listing
          .filter((text) => text !== 'DECK ::')
          .map((text) => `tell ${text.replace(/ (~>|@@) /, ' to be ')}\n`)
          .join(''),
        isAssumed: false,
      });
      const capture = listing.join('\n').replace('mast ~> 9', 'mast ~> 8');
      const asked = { textDocument: { uri }, capture, board: null, omitsDefaults: false };
      const proof = await server.connection.sendRequest(proveRequest, asked);
      assert.ok(proof?.kind === 'proof');
      assert.deepEqual(proof.problems, [{ line: 7, message: 'The script says 9.' }]);
    }),
  );

  it(
    'asks whether only what differs is listed where half is missing',
    alone(async ({ teach, server, uri }) => {
      await teach(line(4, 'setting'));
      const asked = {
        textDocument: { uri },
        capture: 'harbour lamp ~> 40\nquay lamp ~> 60\n',
        board: null,
        omitsDefaults: false,
      };
      const proof = await server.connection.sendRequest(proveRequest, asked);
      assert.ok(proof?.kind === 'proof');
      assert.match(
        proof.question ?? '',
        /^\d settings are missing, which is about half: does this board list only/,
      );
      assert.match(
        await teach({ kind: 'omits-defaults', line: null, part: '' }),
        /taken to be at its default\.$/,
      );
      const again = await server.connection.sendRequest(proveRequest, asked);
      assert.ok(again?.kind === 'proof');
      assert.equal(again.question, null);
      assert.match(again.markdown, /leaves out what is at its default, and nobody has said what that is/);
    }),
  );

  it(
    'is refused with what to do where it is nothing that a profile could hold',
    alone(async ({ teach }) => {
      assert.match(await teach(line(40, 'comment')), /^There is nothing in this line\.$/);
      assert.match(
        await teach({ kind: 'command', line: null, part: 'quay lamp 7' }),
        /would set it to 60\.$/,
      );
    }),
  );
});
