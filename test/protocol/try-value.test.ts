import assert from 'node:assert/strict';
import { CodeLensRequest, RequestType } from 'vscode-languageserver-protocol/node';
import type { AboutScript } from '../../server/src/lsp/own-message';
import type { SetHere } from '../../server/src/lsp/protocol';
import type {
  LinesAnswer,
  SettingsToWrite,
  SettingToTry,
  TryAnswer,
} from '../../server/src/lsp/values-protocol';
import type { Tryable } from '../../server/src/sheet/try-value';
import { countingIn, ownClient, withServer } from '../support/server';

type Setting = AboutScript & SettingToTry;
const tryable = new RequestType<Setting, Tryable | null, void>('propsoff/tryable');
const tryIt = new RequestType<Setting & { to: string }, TryAnswer | null, void>('propsoff/try');
const setHere = new RequestType<AboutScript & { position: object }, SetHere | null, void>('propsoff/setHere');
const linesFor = new RequestType<AboutScript & SettingsToWrite, LinesAnswer | null, void>(
  'propsoff/linesToWrite',
);

const uri = 'file:///bench/one.craft';
const text = [
  '[craft]',
  'name = "🛠"',
  '[pack.short]',
  'cells = 4',
  '[gyro.filter.1]',
  'kind  = butterworth',
  'cutoff = 2 * 60 Hz # 🛠',
  '[gyro.filter.1 @ short]',
  'cutoff = 100 Hz',
].join('\n');

describe('trying a value over the protocol', () => {
  it('answers with the edits for the version that it looked at, as the client counts', () =>
    withServer({ capabilities: countingIn('utf-8') }, async (server) => {
      await server.open(uri, text, 7);
      const setting = { textDocument: { uri }, path: 'gyro.filter.1.cutoff', pack: null };
      assert.equal((await server.connection.sendRequest(tryable, setting))?.now, '100 Hz');
      const answer = await server.connection.sendRequest(tryIt, { ...setting, to: '90 Hz' });
      assert.equal(answer?.version, 7);
      assert.deepEqual(answer?.edits, [
        { range: { start: { line: 8, character: 9 }, end: { line: 8, character: 15 } }, newText: '90 Hz' },
      ]);
    }));

  it('says what a line sets, and for which pack', () =>
    withServer({ capabilities: ownClient }, async (server) => {
      await server.open(uri, text);
      const at = (line: number) =>
        server.connection.sendRequest(setHere, { textDocument: { uri }, position: { line, character: 0 } });
      assert.deepEqual(await at(3), { path: 'pack.short.cells', parameter: 'pack.<name>.cells', pack: null });
      assert.deepEqual(await at(8), {
        path: 'gyro.filter.1.cutoff',
        parameter: 'gyro.filter.<number>.cutoff',
        pack: 'short',
      });
      assert.equal(await at(0), null);
    }));

  it('is offered above the sections that have a number in them', () =>
    withServer({ capabilities: ownClient }, async (server) => {
      await server.open(uri, text);
      const lenses = await server.connection.sendRequest(CodeLensRequest.type, { textDocument: { uri } });
      const offers = (lenses ?? []).filter(({ command }) => command?.command === 'propsoff.tryValue');
      assert.deepEqual(
        offers.map(({ range, command }) => [range.start.line, ...(command?.arguments ?? []).slice(1)]),
        [
          [2, ['pack.short.cells'], 'short'],
          [4, ['gyro.filter.1.cutoff'], null],
          [7, ['gyro.filter.1.cutoff'], 'short'],
        ],
      );
    }));

  it('is null for a script that is not open, and for what can’t be tried', () =>
    withServer({ capabilities: ownClient }, async (server) => {
      const setting = { textDocument: { uri }, path: 'craft.name', pack: null };
      assert.equal(await server.connection.sendRequest(tryable, setting), null);
      await server.open(uri, text);
      assert.equal(await server.connection.sendRequest(tryable, setting), null);
    }));
});

describe('lines to fill in over the protocol', () => {
  it('are edits for the version that was looked at, as the client counts, with where the first value goes', () =>
    withServer({ capabilities: countingIn('utf-8') }, async (server) => {
      await server.open(uri, `${text}\n`, 3);
      const paths = ['gyro.filter.1.width', 'craft.mass'];
      const answer = await server.connection.sendRequest(linesFor, { textDocument: { uri }, paths });
      assert.equal(answer?.version, 3);
      assert.deepEqual(answer.edits, [
        {
          range: { start: { line: 6, character: 25 }, end: { line: 6, character: 25 } },
          newText: '\nwidth = # Width of each notch of a gyro filter, in Hz',
        },
        {
          range: { start: { line: 1, character: 13 }, end: { line: 1, character: 13 } },
          newText: '\nmass = # Mass without pack and payload, in g',
        },
      ]);
      assert.deepEqual(answer.at, { line: 2, character: 7 });
    }));

  it('are null for a script that is not open, and for what there is not', () =>
    withServer({ capabilities: ownClient }, async (server) => {
      const asked = { textDocument: { uri }, paths: ['craft.colour'] };
      assert.equal(await server.connection.sendRequest(linesFor, asked), null);
      await server.open(uri, text);
      assert.equal(await server.connection.sendRequest(linesFor, asked), null);
    }));
});
