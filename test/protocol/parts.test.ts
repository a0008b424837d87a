import assert from 'node:assert/strict';
import { type PublishDiagnosticsParams, RequestType } from 'vscode-languageserver-protocol/node';
import type { BoardTextAnswer, BoardTextParams } from '../../server/src/lsp/board-protocol';
import type { AboutScript } from '../../server/src/lsp/own-message';
import type { Summary } from '../../server/src/lsp/protocol';
import { propsoff } from '../support/command-line';
import { withScratch } from '../support/scratch';
import { withServer } from '../support/server';

const summaryRequest = new RequestType<AboutScript, Summary | null, void>('propsoff/summary');
const boardTextRequest = new RequestType<BoardTextParams, BoardTextAnswer | null, void>('propsoff/boardText');

const part = '[board]\nprofile = wren\n[signal-loss]\nhold = 350 ms\n';
const packs = '[pack.sprint]\nchemistry = lipo\ncells = 6\ncapacity = 550 mAh\n';
const files = {
  'part.craft': part,
  'packs.craft': packs,
  'blank.craft': '# soon\n',
  'lacking.craft': 'include "gone.craft"\n',
};
const unchecked = 'Read as a part: what a whole craft needs was not checked.';

/** What is said of each script that is no whole craft. */
const said = [
  ['part.craft', 'part', unchecked],
  ['blank.craft', 'empty', 'Nothing is written here yet: there was nothing to check.'],
  [
    'lacking.craft',
    'incomplete',
    'Something that it includes could not be read: what a whole craft needs was not checked.',
  ],
] as const;

describe('a script that is no whole craft, on the command line', () => {
  for (const [name, readAs, told] of said) {
    it(`says so wherever ${name} is told of`, () =>
      withScratch(files, async ({ path: cwd }) => {
        const text = propsoff(['check', name], { cwd }).stdout;
        assert.match(text, new RegExp(`^${name} ${told}$`, 'm'));
        assert.equal(JSON.parse(propsoff(['check', '--json', name], { cwd }).stdout).files[0].readAs, readAs);
        const [run] = JSON.parse(propsoff(['check', '--sarif', name], { cwd }).stdout).runs;
        const [note] = run.invocations[0].toolExecutionNotifications;
        assert.deepEqual([note.level, note.message.text], ['note', `${name}: ${told}`]);
        const sheet = propsoff(['sheet', name], { cwd }).stdout;
        assert.match(sheet, new RegExp(`^  ${told}$`, 'm'));
        assert.doesNotMatch(sheet, /Can it fly\? nothing found to mend$/m);
        assert.equal(JSON.parse(propsoff(['sheet', '--json', name], { cwd }).stdout).readAs, readAs);
      }));
  }

  it('says so on a bench card and in the text that is handed over', () =>
    withScratch(files, async ({ path: cwd }) => {
      assert.match(
        propsoff(['bench-card', 'part.craft'], { cwd }).stdout,
        new RegExp(`^\\*\\*${unchecked}`, 'm'),
      );
      assert.equal(
        JSON.parse(propsoff(['bench-card', '--json', 'part.craft'], { cwd }).stdout).unchecked,
        unchecked,
      );
      const { status, stdout, stderr } = propsoff(['board-text', 'part.craft'], { cwd });
      assert.equal(status, 0);
      assert.ok(stdout.includes(unchecked), stdout);
      assert.ok(stderr.startsWith(`${unchecked}\n`), stderr);
    }));

  it('is a whole craft where it has packs, unless some script below the folder includes it', () =>
    withScratch(files, async (scratch) => {
      const check = () => propsoff(['check', 'packs.craft'], { cwd: scratch.path });
      const alone = check();
      assert.equal(alone.status, 1);
      assert.match(
        alone.stdout,
        /^packs\.craft:1:1 note safe\/craft-unsaid There is no \[craft\] here, but the script has\s+packs/m,
      );
      assert.match(alone.stdout, /must-fix safe\/no-arm-switch/);
      scratch.write('racers/finch.craft', 'include "../packs.craft"\n[craft]\nname = "Finch"\n');
      const included = check();
      assert.equal(included.status, 0);
      assert.match(included.stdout, new RegExp(`^packs\\.craft ${unchecked}\n`));
    }));
});

describe('a script that is no whole craft, in the editor', () => {
  it('says so in the summary, and stops once a script includes it', () =>
    withScratch(files, (scratch) =>
      withServer({ folders: [scratch.uri] }, async (server) => {
        const uri = scratch.uriOf('packs.craft');
        const readAs = async () =>
          (await server.connection.sendRequest(summaryRequest, { textDocument: { uri } }))?.readAs;
        const isUnsaid = ({ diagnostics }: PublishDiagnosticsParams) =>
          diagnostics.some(({ code }) => code === 'safe/craft-unsaid');
        await server.open(uri, packs);
        await server.pushed(uri, isUnsaid);
        assert.equal(await readAs(), 'whole');
        await server.open(scratch.uriOf('finch.craft'), 'include "packs.craft"\n[craft]\n');
        await server.pushed(uri, (params) => !isUnsaid(params));
        assert.equal(await readAs(), 'part');
      }),
    ));

  it('says so when it is handed over', () =>
    withServer({}, async (server) => {
      const uri = 'file:///bench/part.craft';
      await server.open(uri, part);
      const answer = await server.connection.sendRequest(boardTextRequest, {
        textDocument: { uri },
        board: null,
        since: null,
        reason: null,
        isPreview: false,
      });
      assert.ok(answer?.kind === 'text');
      assert.equal(answer.unchecked, unchecked);
      assert.equal(answer.report[0], unchecked);
      assert.ok(answer.pieces.join('').includes(unchecked));
    }));
});
