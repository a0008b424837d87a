import { strict as assert } from 'node:assert';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type FindingSummary, findingsIn } from '../../support/findings';

const demo = (name: string) => readFileSync(join('test/demo', name), 'utf8');
const club = { 'club-habits.craft': demo('club-habits.craft') };

const isSerious = ({ level }: FindingSummary) => level === 'must-fix' || level === 'risk';
const shown = ({ id, line }: FindingSummary) => `${line}: ${id}`;

/** What a change of one text to another brings at the levels that matter, apart from what was there. */
function brought(
  before: string,
  after: string,
  files: Readonly<Record<string, string>> = club,
): readonly FindingSummary[] {
  const known = knownIn(before, files);
  return findingsIn(after, files).filter((one) => isSerious(one) && !known.has(shown(one)));
}

/** What was there before, looked for once: every line of a script is changed in turn. */
const kept = new Map<string, ReadonlySet<string>>();

function knownIn(text: string, files: Readonly<Record<string, string>>): ReadonlySet<string> {
  const key = JSON.stringify([text, files]);
  const known = kept.get(key) ?? new Set(findingsIn(text, files).map(shown));
  kept.set(key, known);
  return known;
}

describe('a misspelt name brings one finding and no other', () => {
  const sandmartin = demo('sandmartin.craft');
  const lines = sandmartin.split('\n');
  for (const [number, line] of lines.entries()) {
    const match = /^(\s*)([a-z.-]{5,})(\s*=)/.exec(line);
    if (match === null) continue;
    const [whole, indent = '', name = '', equals = ''] = match;
    const misspelt = `${name.slice(0, -2)}${name.slice(-1)}`;
    it(`${misspelt} (line ${number + 1})`, () => {
      const after = lines.with(number, `${indent}${misspelt}${equals}${line.slice(whole.length)}`).join('\n');
      assert.deepEqual(brought(sandmartin, after).map(shown), [`${number}: line/unknown-name`]);
    });
  }
});

describe('a misspelt section brings one finding and no other', () => {
  const sandmartin = demo('sandmartin.craft');
  const lines = sandmartin.split('\n');
  for (const [number, line] of lines.entries()) {
    const match = /^\[([a-z]{5,})([^\]@]*)\]/.exec(line);
    if (match === null || match[1] === 'craft') continue;
    const [whole, word = '', rest = ''] = match;
    const misspelt = `${word.slice(0, -2)}${word.slice(-1)}`;
    it(`[${misspelt}${rest}] (line ${number + 1})`, () => {
      const after = lines.with(number, `[${misspelt}${rest}]${line.slice(whole.length)}`).join('\n');
      assert.deepEqual(brought(sandmartin, after).map(shown), [`${number}: line/unknown-section`]);
    });
  }
});

describe('a line that cannot be understood', () => {
  for (const name of ['sandmartin.craft', 'bittern.craft', 'wagtail.craft']) {
    it(`brings one finding and no other, whichever it is in ${name}`, () => {
      const text = demo(name);
      const lines = text.split('\n');
      for (const [number, line] of lines.entries()) {
        if (!/^\s*[a-z.-]+\s*=/.test(line)) continue;
        const after = lines.with(number, line.replace(/=.*/, '= )(')).join('\n');
        const found = brought(text, after);
        assert.ok(
          found.every((one) => one.line === number && one.id.startsWith('line/')),
          `line ${number + 1}: ${found.map(shown).join(', ')}`,
        );
      }
    });
  }
});

describe('an include that is not there', () => {
  for (const name of ['sandmartin.craft', 'bittern.craft', 'wagtail.craft']) {
    it(`is the only finding that ${name} gets from it`, () => {
      const found = brought(demo(name), demo(name), {});
      const fresh = findingsIn(demo(name), {}).filter(isSerious);
      assert.deepEqual(found, []);
      assert.deepEqual(
        fresh.map(({ id }) => id).filter((id) => !id.startsWith('tune/')),
        ['line/include-missing'],
      );
    });
  }
});

describe('a value that will be refused', () => {
  const cases: readonly (readonly [text: string, ids: readonly string[]])[] = [
    ['[arming]\ntilt-limit = 400 deg\n', ['line/outside-range']],
    ['[switch.arm]\nchannel = 0\non = 1750..2050 us\n', ['line/outside-range']],
    ['[stick.roll]\ncurve = 0 % -> 0 deg/s, 0,5 -> 200 deg/s, 100 % -> 800 deg/s\n', ['line/decimal-comma']],
    ['[video]\npower = 14 dBm + 3 mW\n', ['line/unit-in-product']],
  ];
  for (const [text, ids] of cases) {
    it(`gets one finding: ${text.split('\n')[1]}`, () => {
      const found = findingsIn(text).filter(isSerious);
      assert.deepEqual(
        found.map(({ id }) => id),
        ids,
      );
    });
  }
});
