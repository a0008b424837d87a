import { strict as assert } from 'node:assert';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { craftOf, type FindingSummary, findingsIn, findingsOf, summaryOf } from '../../support/findings';
import { retype } from '../../support/retyped';

const demo = (name: string) => readFileSync(join('test/demo', name), 'utf8');
const club = { 'club-habits.craft': demo('club-habits.craft') };

const isSerious = ({ level }: FindingSummary) => level === 'must-fix' || level === 'risk';
const shown = ({ id, line }: FindingSummary) => `${line}: ${id}`;

/** A script of which one line after the other is changed: a fresh craft for each takes five times as long. */
class Edited {
  readonly lines: readonly string[];
  private readonly craft;
  private readonly known: ReadonlySet<string>;

  constructor(name: string) {
    const text = demo(name);
    this.lines = text.split('\n');
    this.craft = craftOf(text, club);
    this.known = new Set(this.found().map(shown));
  }

  /** What another text of a line brings at the levels that matter, apart from what was there. */
  brought(number: number, line: string): readonly FindingSummary[] {
    retype(this.craft, this.lines.with(number, line).join('\n'));
    return this.found().filter((one) => isSerious(one) && !this.known.has(shown(one)));
  }

  private found(): readonly FindingSummary[] {
    return findingsOf(this.craft).map(summaryOf);
  }
}

describe('a misspelt name brings one finding and no other', () => {
  const sandmartin = new Edited('sandmartin.craft');
  for (const [number, line] of sandmartin.lines.entries()) {
    const match = /^(\s*)([a-z.-]{5,})(\s*=)/.exec(line);
    if (match === null) continue;
    const [whole, indent = '', name = '', equals = ''] = match;
    const misspelt = `${name.slice(0, -2)}${name.slice(-1)}`;
    it(`${misspelt} (line ${number + 1})`, () => {
      const after = `${indent}${misspelt}${equals}${line.slice(whole.length)}`;
      assert.deepEqual(sandmartin.brought(number, after).map(shown), [`${number}: line/unknown-name`]);
    });
  }
});

describe('a misspelt section brings one finding and no other', () => {
  const sandmartin = new Edited('sandmartin.craft');
  for (const [number, line] of sandmartin.lines.entries()) {
    const match = /^\[([a-z]{5,})([^\]@]*)\]/.exec(line);
    if (match === null || match[1] === 'craft') continue;
    const [whole, word = '', rest = ''] = match;
    const misspelt = `${word.slice(0, -2)}${word.slice(-1)}`;
    it(`[${misspelt}${rest}] (line ${number + 1})`, () => {
      const after = `[${misspelt}${rest}]${line.slice(whole.length)}`;
      assert.deepEqual(sandmartin.brought(number, after).map(shown), [`${number}: line/unknown-section`]);
    });
  }
});

describe('a line that cannot be understood', () => {
  for (const name of ['sandmartin.craft', 'bittern.craft', 'wagtail.craft']) {
    it(`brings one finding and no other, whichever it is in ${name}`, () => {
      const script = new Edited(name);
      for (const [number, line] of script.lines.entries()) {
        if (!/^\s*[a-z.-]+\s*=/.test(line)) continue;
        const found = script.brought(number, line.replace(/=.*/, '= )('));
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
      const fresh = findingsIn(demo(name), {}).filter(isSerious);
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
