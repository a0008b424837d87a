import assert from 'node:assert/strict';
import {
  DefinitionRequest,
  DocumentFormattingRequest,
  HoverRequest,
  type LocationLink,
} from 'vscode-languageserver-protocol/node';
import { propsoff } from '../support/command-line';
import { offered } from '../support/completion';
import { withScratch } from '../support/scratch';
import { countingIn, withServer } from '../support/server';
import { shown } from '../support/shown';

/** What a board of nobody keeps for itself, in every look that a value has. */
const kept = `[own]
"gyro rate" = 8000
step = 1,5
mask = 0x1F
low-bits = 0b0101
version = 012.4.0
rates = 8000 4000
offset = −5
gain = 1.25e-3
share = 40%
speed = 420 deg/s
mode = on
other-mode = enabled
name = "Guten Tag # 5"
said = "say \\"so\\""
path = C:\\boards\\one
empty = ""
outer = " a "
list = [1, 2, 3]
pair = (4; 5)
day = 2026-05-14
"größe 1" = größe
"lamp/colour" = "#ff8800"
12 = up
"#2" = down

[own."PID α".roll]
p = 47
i = 80
d = 23
"d"."#2" = 24

[own."PID α".pitch]
p = 49
"größer als" = "="
`;
const craft = `include "board.craft"

[pack.sprint]
cells = 6

[own]
"gyro rate" = 4000  # slower

[own."PID α".roll @ sprint]
p = 51
`;

describe('settings of the board’s own', () => {
  for (const encoding of ['utf-8', 'utf-16'] as const)
    it(`are checked, explained, completed, led to and tidied by a client that counts in ${encoding}`, () =>
      withScratch({ 'board.craft': kept, 'my.craft': craft }, (scratch) =>
        withServer({ folders: [scratch.uri], capabilities: countingIn(encoding) }, async (server) => {
          const [board, my] = [scratch.uriOf('board.craft'), scratch.uriOf('my.craft')];
          await server.open(board, kept);
          assert.deepEqual(shown((await server.pushedFor(board, 1)).diagnostics), []);
          await server.open(my, craft);
          const found = shown((await server.pushedFor(my, 1)).diagnostics);
          assert.deepEqual(
            found.filter((one) => / line\//.test(one)),
            [],
          );
          const over = { textDocument: { uri: my }, position: { line: 6, character: 3 } };
          const hover = JSON.stringify(await server.connection.sendRequest(HoverRequest.type, over));
          assert.match(hover, /4000/);
          assert.match(hover, /in place of `8000` in board.*craft, line 2/);
          assert.match(hover, /nobody has said what it means/);
          const targets = (await server.connection.sendRequest(
            DefinitionRequest.type,
            over,
          )) as LocationLink[];
          assert.deepEqual(
            targets.map(({ targetUri, targetSelectionRange: { start } }) => [targetUri, start.line]),
            [
              [my, 6],
              [board, 1],
            ],
          );
          const names = await offered(server, my, { line: 7, character: 0 });
          assert.ok(names.some(({ label }) => label === '"größe 1"'));
          const options = { tabSize: 2, insertSpaces: true };
          const edits = await server.connection.sendRequest(DocumentFormattingRequest.type, {
            textDocument: { uri: board },
            options,
          });
          assert.ok((edits ?? []).every(({ newText }) => /^ *$/.test(newText)));
        }),
      ));

  it('are told as the included text of the board states them, and completed with what it allows', () => {
    const text = 'Dipper at your service\n\ngyro rate: 8000 [1000..8000]\n\nlamp: dim {off, dim, bright}\n';
    const over = 'include "dipper.boardtext"\n[own]\n"gyro rate" = 4000\nlamp = \n';
    return withScratch({ 'dipper.boardtext': text, 'my.craft': over }, (scratch) =>
      withServer({ folders: [scratch.uri] }, async (server) => {
        const uri = scratch.uriOf('my.craft');
        await server.open(uri, over);
        const place = { textDocument: { uri }, position: { line: 2, character: 3 } };
        const ask = async () => JSON.stringify(await server.connection.sendRequest(HoverRequest.type, place));
        let told = await ask();
        // The included text is read beside what is asked meanwhile.
        while (!told.includes('in place of')) told = await ask();
        assert.match(told, /in place of `8000` in dipper.*boardtext, line 3/);
        assert.match(told, /own listing says:.*`1000` to `8000`/);
        const values = await offered(server, uri, { line: 3, character: 7 });
        assert.deepEqual(
          values.map(({ label }) => label),
          ['dim', 'off', 'bright'],
        );
      }),
    );
  });

  it('are checked, tidied and compared on the command line', () =>
    withScratch({ 'board.craft': kept, 'changed.craft': kept.replace('0x1F', '0x2F') }, (scratch) => {
      const run = (...args: readonly string[]) => propsoff(args, { cwd: scratch.file('.') });
      assert.match(
        run('check', 'board.craft').stdout,
        /^1 script checked: 0 must-fix, 0 risk, 0 note, 0 tidy/m,
      );
      assert.equal(run('format', 'board.craft').status, 0);
      assert.equal(run('format', '--check', 'board.craft').status, 0);
      const { stdout } = run('compare', 'board.craft', 'changed.craft', '--json');
      const { settings } = JSON.parse(stdout);
      assert.deepEqual(
        settings.map(({ path, before, after }: Record<string, { text: string }>) => [
          path,
          before?.text,
          after?.text,
        ]),
        [['own.mask', '0x1F', '0x2F']],
      );
      assert.match(run('explain', 'own."gyro rate"').stdout, /nobody has said what it means/);
      return Promise.resolve();
    }));
});
