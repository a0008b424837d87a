import assert from 'node:assert/strict';
import { check } from 'recheck';
import { hiddenCharacter } from '../../server/src/language/look-alikes';
import { filesThatBuildPatterns, literalPatterns, type Pattern } from '../support/patterns';

/**
 * Whether a regular expression costs no more than its text is long is decided by `recheck`, which looks at it
 * as an automaton and runs nothing. What it can't decide, or decides otherwise, stands here with the reason
 * why it does no harm.
 */

/** Texts that these see are short, however long the file is. */
const onShortTexts: ReadonlyMap<string, string> = new Map([
  [
    String.raw`\d\s*([A-Za-zµμΩ°%]+[*/^](?:[A-Za-z0-9µμΩ°%*/^(])*)$`,
    'the last 400 characters before the cursor',
  ],
  [
    String.raw`[A-Za-z_][A-Za-z0-9_-]*(?:\.(?!\.)[A-Za-z0-9_-]*)*$`,
    'the last 400 characters before the cursor',
  ],
  [String.raw`\.?0+$`, 'a number that Propsoff wrote itself'],
]);

/** These look around, which `recheck` does not follow: they run over hostile texts instead. */
const byRunning: readonly RegExp[] = [
  /^[A-Za-z0-9_-]*(?:\.(?!\.)[A-Za-z0-9_-]+)*/,
  /(?<!`)(`+)(?!`)( ?)(.+?)\2(?<!`)\1(?!`)|\\([!-/:-@[-`{-~])|\*+|&lt;|&amp;/g,
  /[A-Za-z_](?:[A-Za-z0-9_]|-(?=[A-Za-z0-9_]))*(?:\.(?:[A-Za-z0-9_](?:[A-Za-z0-9_]|-(?=[A-Za-z0-9_]))*))*/y,
  /[A-Za-z0-9_](?:[A-Za-z0-9_]|-(?=[A-Za-z0-9_]))*/y,
  /(?:0[xXbBoO][0-9A-Fa-f]+(?![A-Za-z])|(?:\d[\d_]*(?:\.(?!\.)[\d_]*)*|\.\d[\d_]*)(?:[eE](?:[+-]?\d+|(?![A-Za-z/^*%])[+-]?))?)/y,
  /\d[\d_]*(?:\.(?!\.)[\d_]*)*(?:,\d[\d_]*(?:\.(?!\.)[\d_]*)*)+/y,
  /\d{1,3}(?: \d{3})+(?![\d.,])/y,
  /(?<![\w.])\d+\.\d{4,}(?= [A-Za-z%])/g,
  /(?<![\w./-])[a-z][a-z0-9-]*(?:\.[a-z0-9][a-z0-9-]*)+(?![\w/-])/g,
  /(?<![\w.(/\\-])(?:\\?-)?\d+(?:\\\.\d+)? (?:\\.|[%°\p{L}])(?:\\.|[^\s,;:.*\\])*/gu,
  /(?<![\w.\\/-])[a-z](?:[a-z0-9]|\\-)*(?:\\\.[a-z0-9](?:[a-z0-9]|\\-)*)+(?![\w/])/g,
  /(?<!\d)(-?\d+(?:\.\d+)?)\.\.(-?\d+(?:\.\d+)?) ([^\s),;]+)/g,
  /(?<![\w.(/-])(-?\d+(?:\.\d+)?) ([%°\p{L}][^\s,;:]*)/gu,
];

const longest = 50_000;
const pieces = [
  ' ',
  'a',
  'A-',
  '-',
  '.',
  'a.',
  '1',
  '1_',
  '1.',
  ' 000',
  '1e',
  '0x',
  '`',
  '``a',
  ' `',
  '\\',
  '*',
  '1.00000 ',
  'a-',
  'a-a.a',
  'Set ',
  'a.a on',
  '11 a',
  '1..1',
  '-1',
  '1\\.1',
  '\\-',
  'a\\.a',
  'a\\-',
];
const endings = ['', ' ', 'x', '!', '.', '`', '\u0000'];

type Decided = { readonly status: string; readonly complexity?: { readonly type: string } };

async function isLinear({ source, flags }: Pick<Pattern, 'source' | 'flags'>): Promise<boolean> {
  const decided: Decided = await check(source, flags, { checker: 'automaton', timeout: null });
  return decided.status === 'safe' && ['safe', 'linear'].includes(decided.complexity?.type ?? '');
}

/** What a module hands to `new RegExp` while it is loaded. */
function builtIn(module: string): readonly Pick<Pattern, 'source' | 'flags'>[] {
  const path = require.resolve(module);
  const [kept, plain] = [require.cache[path], globalThis.RegExp];
  const found: RegExp[] = [];
  delete require.cache[path];
  globalThis.RegExp = new Proxy(plain, {
    construct: (target, given: [string, string?]) => {
      const made = new target(...given);
      found.push(made);
      return made;
    },
  });
  try {
    require(path);
  } finally {
    globalThis.RegExp = plain;
    if (kept !== undefined) require.cache[path] = kept;
  }
  return found.map(({ source, flags }) => ({ source, flags }));
}

describe('no text makes a pattern slow (F06)', () => {
  const patterns = literalPatterns();
  const running = new Set(byRunning.map(({ source, flags }) => `/${source}/${flags}`));

  it('every pattern that ships costs no more than its text is long', async function () {
    this.timeout(300_000);
    assert.ok(patterns.length > 100, `${patterns.length} patterns were found`);
    const slow: string[] = [];
    for (const pattern of patterns) {
      const name = `/${pattern.source}/${pattern.flags}`;
      if (onShortTexts.has(pattern.source) || running.has(name)) continue;
      if (!(await isLinear(pattern))) slow.push(`${name} in ${pattern.files.join(', ')}`);
    }
    assert.deepEqual(slow, []);
  });

  it('no other pattern is excused', () => {
    const names = new Set(patterns.map(({ source, flags }) => `/${source}/${flags}`));
    const sources = new Set(patterns.map(({ source }) => source));
    assert.deepEqual(
      [...running].filter((name) => !names.has(name)),
      [],
    );
    assert.deepEqual(
      [...onShortTexts.keys()].filter((source) => !sources.has(source)),
      [],
    );
  });

  it('nor does one that is put together when the program starts', async () => {
    assert.deepEqual(filesThatBuildPatterns(), [
      'server/src/cli/report/visible.ts',
      'server/src/language/acceptance.ts',
      'server/src/language/hidden-characters.ts',
      'server/src/language/number.ts',
    ]);
    const [acceptances, units] = ['acceptance', 'number'].map((name) =>
      builtIn(`../../server/src/language/${name}`),
    );
    assert.equal(acceptances?.length, 2);
    assert.equal(units?.length, 1);
    // Whatever follows the check's name makes no difference to what stands before it.
    const followed = (one: Pick<Pattern, 'source' | 'flags'>) => ({
      ...one,
      source: one.source.replace('(?![a-z/-])', ''),
    });
    for (const pattern of [...(acceptances ?? []).map(followed), ...(units ?? [])])
      assert.ok(await isLinear(pattern), `it may be slow: ${pattern.source}`);
    assert.ok(await isLinear({ source: hiddenCharacter.source, flags: 'gu' }));
  });

  for (const pattern of byRunning) {
    it(`${pattern} comes to the end of ${longest} hostile characters`, () => {
      for (const piece of pieces)
        for (const ending of endings) {
          const text = piece.repeat(longest / piece.length) + ending;
          assert.equal(typeof text.replace(pattern, ''), 'string');
        }
    });
  }
});
