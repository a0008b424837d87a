import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { RequestType } from 'vscode-languageserver-protocol/node';
import { type ComparedSide, variantsRequest } from '../../server/src/lsp/protocol';
import type { Comparison } from '../../server/src/sheet/compare/compare';
import { propsoff as run } from '../support/command-line';
import { withScratch } from '../support/scratch';
import { withServer } from '../support/server';

const request = new RequestType<{ before: ComparedSide; after: ComparedSide }, Comparison | null, void>(
  'propsoff/compare',
);
const racer = readFileSync('test/demo/sandmartin.craft', 'utf8');
const slower = racer.replace('cutoff = 2.5 * quiet', 'cutoff = 1.5 * quiet');
const files = {
  'club-habits.craft': readFileSync('test/demo/club-habits.craft', 'utf8'),
  'racer.craft': racer,
  'slower.craft': slower,
};

function propsoff(args: readonly string[], cwd: string, input = '') {
  return run(args, { cwd, input });
}

describe('comparing over the protocol', () => {
  it('puts an open script beside an earlier text of it', () =>
    withScratch(files, (scratch) =>
      withServer({ folders: [scratch.uri] }, async (server) => {
        const uri = scratch.uriOf('slower.craft');
        await server.open(uri, slower);
        await server.pushedFor(uri, 1);
        const side = { uri, pack: null, otherwise: null };
        const result = await server.connection.sendRequest(request, {
          before: { ...side, text: racer, name: 'before' },
          after: { ...side, text: null, name: 'now' },
        });
        assert.deepEqual(
          result?.settings.map(({ path, before, after }) => [path, before.text, after.text]),
          [['gyro.filter.1.cutoff', '225 Hz', '135 Hz']],
        );
        assert.deepEqual([result?.before.file, result?.after.pack], ['before', 'sprint']);
      }),
    ));

  it('puts a craft beside itself in the cold, and writes nothing', () =>
    withScratch(files, (scratch) =>
      withServer({ folders: [scratch.uri] }, async (server) => {
        const uri = scratch.uriOf('racer.craft');
        await server.open(uri, racer);
        await server.pushedFor(uri, 1);
        const variants = await server.connection.sendRequest(variantsRequest, { textDocument: { uri } });
        const cold = variants?.find(({ path }) => path === 'craft.air-temperature');
        assert.ok(cold?.to);
        const side = { uri, pack: null, text: null, otherwise: null, name: 'as it is' };
        const otherwise = { path: cold.path, to: cold.to };
        const after = { ...side, otherwise, name: cold.words };
        const result = await server.connection.sendRequest(request, { before: side, after });
        assert.deepEqual([result?.before.file, result?.after.file], ['as it is', 'in the cold, at 0 degC']);
        assert.deepEqual(
          result?.settings.map(({ path }) => path),
          ['craft.air-temperature'],
        );
        const minutes = result?.matters.find(
          (one) => one.kind === 'moved' && one.figure.id === 'minutes-to-landing',
        );
        assert.ok(minutes !== undefined, 'how long it flies is what a pilot asks of the cold first');
        assert.deepEqual(
          await server.connection.sendRequest(variantsRequest, { textDocument: { uri } }),
          variants,
        );
      }),
    ));

  it('answers null for a script that is not open', () =>
    withServer({}, async (server) => {
      const side = { uri: 'file:///nowhere/x.craft', text: null, name: 'x', pack: null, otherwise: null };
      assert.equal(await server.connection.sendRequest(request, { before: side, after: side }), null);
    }));
});

describe('propsoff compare', () => {
  it('tells what differs and what it does', () =>
    withScratch(files, async ({ path }) => {
      const { status, stdout } = propsoff(['compare', 'racer.craft', 'slower.craft'], path);
      assert.equal(status, 0);
      assert.match(
        stdout,
        /^One setting differs\. Figures: .*\n\nWhat differs\n {2}Make it fly well\n {4}gyro\.filter\.1\.cutoff: 225 Hz → 135 Hz\n\nWhat matters most\n/m,
      );
      assert.match(stdout, /\nThe rest: --all\n/);
      const all = propsoff(['compare', '--all', 'racer.craft', 'slower.craft'], path).stdout;
      assert.match(all, /\nOther figures\n {2}.* → .*\n/);
      assert.match(stdout, /Estimates are estimates/);
    }));

  it('takes an earlier revision from standard input, which includes the same files', () =>
    withScratch(files, async ({ path }) => {
      const { status, stdout } = propsoff(['compare', '--json', '-', 'slower.craft'], path, racer);
      assert.equal(status, 0);
      const { version, settings } = JSON.parse(stdout);
      assert.deepEqual([version, settings.length], [1, 1]);
    }));

  it('compares two packs of one script', () =>
    withScratch(files, async ({ path }) => {
      const { status, stdout } = propsoff(
        ['compare', 'racer.craft', '--pack', 'sprint', '--pack', 'cruise'],
        path,
      );
      assert.equal(status, 0);
      assert.match(stdout, /pack\.<pack in view>\.cells: 6 → 4/);
      assert.match(stdout, /\nThe rest, and what each change does alone: --all\n/);
    }));

  for (const args of [
    ['racer.craft'],
    ['racer.craft', 'slower.craft', '--pack', 'winter'],
    ['racer.craft', 'nowhere.craft'],
    ['-', '-'],
  ]) {
    it(`refuses ${args.join(' ')} in one line`, () =>
      withScratch(files, async ({ path }) => {
        const { status, stderr } = propsoff(['compare', ...args], path);
        assert.equal(status, 2);
        assert.match(stderr, /^propsoff: [^\n]+\n$/);
      }));
  }

  it('shows control characters of a script as what they are', () =>
    withScratch(
      { 'a.craft': '[craft]\nname = "a"\n', 'b.craft': '[craft]\nname = "b\u202ec"\n' },
      async ({ path }) => {
        const { stdout } = propsoff(['compare', 'a.craft', 'b.craft'], path);
        assert.doesNotMatch(stdout, /\u202e/);
      },
    ));
});
