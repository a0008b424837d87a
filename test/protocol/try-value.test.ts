import assert from 'node:assert/strict';
import { CodeLensRequest, RequestType } from 'vscode-languageserver-protocol/node';
import type { AboutScript } from '../../server/src/lsp/own-message';
import type { SetHere, SettingToTry, TryAnswer } from '../../server/src/lsp/protocol';
import type { Tryable } from '../../server/src/sheet/try-value';
import { countingIn, ownClient, withServer } from '../support/server';

type Setting = AboutScript & SettingToTry;
const tryable = new RequestType<Setting, Tryable | null, void>('propsoff/tryable');
const tryIt = new RequestType<Setting & { to: string }, TryAnswer | null, void>('propsoff/try');
const setHere = new RequestType<AboutScript & { position: object }, SetHere | null, void>('propsoff/setHere');

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
