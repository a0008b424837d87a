import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createOnigScanner, createOnigString, loadWASM } from 'vscode-oniguruma';
import { type IGrammar, INITIAL, parseRawGrammar, Registry } from 'vscode-textmate';

const root = join(__dirname, '../../..');
const path = join(root, 'syntaxes/craft-script.tmLanguage.json');

/** The grammar in the editor's own engine. */
async function loadGrammar(): Promise<IGrammar> {
  await loadWASM(readFileSync(require.resolve('vscode-oniguruma/release/onig.wasm')));
  const registry = new Registry({
    onigLib: Promise.resolve({ createOnigScanner, createOnigString }),
    loadGrammar: async () => parseRawGrammar(readFileSync(path, 'utf8'), path),
  });
  const grammar = await registry.loadGrammar('source.craft-script');
  assert.ok(grammar);
  return grammar;
}

describe('colours of a script before the server answers', () => {
  let grammar: IGrammar;

  before(async () => {
    grammar = await loadGrammar();
  });

  /** What is coloured in a line: the text and the first two parts of its innermost scope. */
  function coloured(line: string, state = INITIAL): readonly string[] {
    return grammar.tokenizeLine(line, state).tokens.flatMap(({ startIndex, endIndex, scopes }) => {
      const scope = scopes.length > 1 ? scopes.at(-1) : undefined;
      const name = scope?.split('.').slice(0, 2).join('.');
      return name === undefined ? [] : [`${line.slice(startIndex, endIndex)}: ${name}`];
    });
  }

  const cases: readonly (readonly [line: string, ...expected: string[]])[] = [
    [
      'include "club-habits.craft"',
      'include: keyword.control',
      '": string.quoted',
      'club-habits.craft: string.quoted',
      '": string.quoted',
    ],
    [
      'let quiet = 90 Hz',
      'let: keyword.other',
      'quiet: variable.other',
      '=: keyword.operator',
      '90: constant.numeric',
      'Hz: keyword.other',
    ],
    [
      '[gyro.filter.1 @ cruise]',
      '[: punctuation.definition',
      'gyro.filter.1: entity.name',
      '@: keyword.operator',
      'cruise: entity.name',
      ']: punctuation.definition',
    ],
    [
      'on = 1750..2050 us',
      'on: variable.other',
      '=: keyword.operator',
      '1750: constant.numeric',
      '..: keyword.operator',
      '2050: constant.numeric',
      'us: keyword.other',
    ],
    [
      'gain = -1.5e-3 %/(deg/s)',
      'gain: variable.other',
      '=: keyword.operator',
      '-1.5e-3: constant.numeric',
      '%/(deg/s): keyword.other',
    ],
    [
      'pulse = 20 µs',
      'pulse: variable.other',
      '=: keyword.operator',
      '20: constant.numeric',
      'µs: keyword.other',
    ],
    ['compass = off', 'compass: variable.other', '=: keyword.operator', 'off: constant.language'],
    ['port = uart2', 'port: variable.other', '=: keyword.operator', 'uart2: variable.other'],
    ['date = 2026-05-14', 'date: variable.other', '=: keyword.operator', '2026-05-14: constant.other'],
    [
      'cutoff = max(90 Hz, quiet)',
      'cutoff: variable.other',
      '=: keyword.operator',
      'max: support.function',
      '90: constant.numeric',
      'Hz: keyword.other',
      'quiet: variable.other',
    ],
    [
      'note = "no # comment"',
      'note: variable.other',
      '=: keyword.operator',
      '": string.quoted',
      'no # comment: string.quoted',
      '": string.quoted',
    ],
    ['# plain', '# plain: comment.line'],
    [
      '# accept tune/derivative-unfiltered: a test',
      '# : comment.line',
      'accept: keyword.other',
      'tune/derivative-unfiltered: entity.name',
      ':: comment.line',
      ' a test: comment.line',
    ],
  ];

  for (const [line, ...expected] of cases) {
    it(`of ${line}`, () => assert.deepEqual(coloured(line), expected));
  }

  const own: typeof cases = [
    [
      '[own."PID α" @ cruise] # theirs',
      '[: punctuation.definition',
      'own."PID α": entity.name',
      '@: keyword.operator',
      'cruise: entity.name',
      ']: punctuation.definition',
      '# theirs: comment.line',
    ],
    [
      '"gyro rate".2 = 0x1F, on - 5 # why',
      '"gyro rate".2: variable.other',
      '=: keyword.operator',
      '0x1F, on - 5 : string.unquoted',
      '# why: comment.line',
    ],
    [
      'shade = "#ff8800" # why',
      'shade: variable.other',
      '=: keyword.operator',
      '"#ff8800": string.quoted',
      '# why: comment.line',
    ],
    ['empty = # accept', 'empty: variable.other', '=: keyword.operator', '# accept: comment.line'],
    ['let quiet = 5', 'let: keyword.other', 'quiet: variable.other', '=: keyword.operator'],
    ['[gyro]', '[: punctuation.definition', 'gyro: entity.name', ']: punctuation.definition'],
    ['compass = off', 'compass: variable.other', '=: keyword.operator', 'off: constant.language'],
    ['own.x = off', 'own.x: variable.other', '=: keyword.operator', 'off: string.unquoted'],
  ];

  it('of settings that only the board knows, down to the next header', () => {
    let state = INITIAL;
    for (const [line, ...expected] of own) {
      assert.deepEqual(coloured(line, state), expected, line);
      state = grammar.tokenizeLine(line, state).ruleStack;
    }
  });

  it('come to the end of lines of 50,000 characters that look like much and are nothing (F06, F07)', () => {
    const nasty = ['a-', 'a.', '1_', '1 a/', '1 a/(', '(', '"\\', '-', '[a', 'accept a-/', '1e', '..'].concat(
      ['a', '1', '"a".', ' ', '"', '#', '[', '=', 'a = ', '\t[', 'let ', 'on', '1/(a', '\u{1f6e0}'],
    );
    for (const piece of nasty) {
      const line = `${piece.repeat(50_000 / piece.length)} # end`;
      const { tokens, stoppedEarly } = grammar.tokenizeLine(line, INITIAL, 0);
      assert.equal(stoppedEarly, false);
      assert.equal(tokens.at(-1)?.endIndex, line.length, `a line of ${piece} is not coloured to its end`);
      const { ruleStack } = grammar.tokenizeLine('[own]', INITIAL);
      assert.equal(grammar.tokenizeLine(line, ruleStack, 0).stoppedEarly, false);
    }
  });
});
