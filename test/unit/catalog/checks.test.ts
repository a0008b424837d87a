import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import type { Check } from '../../../server/src/catalog/model/check';
import { slotsIn, wordSlot } from '../../../server/src/checks/data/data-template';
import { wordsOf } from '../../../server/src/checks/data/rule-faults';
import { checkCases } from '../../support/all-check-cases';
import { testCatalog } from '../../support/catalog';
import { shippedData } from './shipped';

const checks: readonly Check[] = shippedData().bundle.checks.flatMap((file) => file.checks);

/** The ids of the checks that a rule does not hold for. */
function without(rule: (check: Check) => boolean): readonly string[] {
  return checks.filter((one) => !rule(one)).map(({ id }) => id);
}

/** What a message says about where nothing is: there is no number to tell. */
const aboutNothing = /\b(no|not|nothing|nobody|none|only)\b/i;

describe('each check', () => {
  it('names no word in its sentences that a parameter does not have', () => {
    const named = [...testCatalog.checks.values()].flatMap(({ id, message, advice }) =>
      slotsIn(`${message} ${advice}`).flatMap((slot) => {
        const [, path = '', word = ''] = wordSlot.exec(slot) ?? [];
        return word === '' ? [] : [{ id, path: path.replace('<element>', 'cell-voltage'), word }];
      }),
    );
    assert.ok(named.length > 10, `only ${named.length}`);
    for (const { id, path, word } of named) {
      const found = testCatalog.parameter(path);
      const words = found === undefined ? [] : (wordsOf(found, testCatalog) ?? []);
      assert.ok(words.includes(word), `${id}: ${path} ${word}`);
    }
  });

  it('has its smallest script and the nearest sound one: its group is held case by case', () => {
    const groups = shippedData().bundle.checks.map(({ group }) => group);
    assert.ok(groups.length >= 9, groups.join(', '));
    // Those about a board's text are held on such texts, in the same way.
    assert.deepEqual(
      groups.filter((group) => group !== 'board').sort(),
      checkCases.map(({ group }) => group).sort(),
    );
    assert.ok(
      readFileSync('test/unit/checks/rules/board.test.ts', 'utf8').includes("describe('checks: board'"),
    );
  });

  it('has its own id and its own message', () => {
    const ids = checks.map(({ id }) => id);
    assert.equal(new Set(ids).size, ids.length);
    assert.ok(ids.length >= 320, String(ids.length));
  });

  it('says in a sentence what is wrong, and in another what to do', () => {
    const isSentence = (text: string) => /^[A-Z{`].*[.?]$/s.test(text.replace(/\]\]/g, ''));
    assert.deepEqual(
      without(({ message, advice }) => isSentence(message) && isSentence(advice)),
      [],
    );
  });

  it('between lines puts the craft’s own words and numbers into its message, unless it is about what is not there', () => {
    assert.deepEqual(
      without(
        ({ id, message }) =>
          id.startsWith('line/') || /\{[^{}]+\}/.test(message) || aboutNothing.test(message),
      ),
      [],
    );
  });

  it('tells where it is known from, as a source or as common practice', () => {
    assert.deepEqual(
      without(({ source }) => source.text.length >= 12),
      [],
    );
  });

  it('that is data and can be mended by one value offers that', () => {
    const mends = checks.filter((one) => one.by === 'data' && (one.fixes ?? []).length > 0);
    assert.ok(mends.length >= 20, String(mends.length));
    for (const one of mends) {
      const fixes = one.by === 'data' ? (one.fixes ?? []) : [];
      for (const fix of fixes)
        assert.ok(fix.title !== '' && ('remove' in fix || (fix.set !== '' && fix.to !== '')), one.id);
    }
  });

  it('promises nothing: no craft is called safe, legal or airworthy', () => {
    const text = checks.map(({ message, advice }) => `${message} ${advice}`).join('\n');
    assert.deepEqual(text.match(/\b(is|are) (now )?(safe|legal|airworthy)\b/gi) ?? [], []);
  });
});
