import assert from 'node:assert/strict';
import type { Choice, Parameter } from '../../../server/src/catalog/model/parameter';
import { shippedCatalog, shippedData } from './shipped';

const parameters: readonly Parameter[] = shippedData().bundle.parameters.flatMap((file) => file.parameters);

/** The names of the parameters that a rule does not hold for. */
function without(rule: (parameter: Parameter) => boolean): readonly string[] {
  return parameters.filter((one) => !rule(one)).map(({ name }) => name);
}

function choicesOf(parameter: Parameter): readonly Choice[] {
  return shippedCatalog().choices(parameter);
}

/** Words that only a craft's board or its script can give. */
const fromTheCraft = new Set(['ports', 'packs']);

describe('each parameter', () => {
  it('tells in sentences what it does, what it risks and how to prove it', () => {
    const isSentence = (text: string) => /^[A-Z0-9].*[.?]$/s.test(text);
    assert.deepEqual(
      without(({ summary, risk, prove }) => [summary, risk, prove].every(isSentence)),
      [],
    );
  });

  it('has a summary of 12 to 90 words', () => {
    const words = ({ summary }: Parameter) => summary.trim().split(/\s+/).length;
    assert.deepEqual(
      without((one) => words(one) >= 12 && words(one) <= 90),
      [],
    );
  });

  it('with a number or a flag tells what more of it changes, and what less', () => {
    const sloped = new Set(['quantity', 'count', 'flag', 'curve']);
    const both = (one: Parameter) => 'higher' in one && one.higher !== one.lower;
    assert.deepEqual(
      without((one) => !sloped.has(one.kind) || both(one)),
      [],
    );
  });

  it('with a number has a range and, inside it, what is usual', () => {
    assert.deepEqual(
      without((one) => one.kind !== 'quantity' || (one.range.length === 2 && one.usual.length === 2)),
      [],
    );
  });

  it('with words has two or more, each explained in words of its own', () => {
    const worded = parameters.filter(
      (one) =>
        (one.kind === 'word' || one.kind === 'words') &&
        !('permutationOf' in one) &&
        !fromTheCraft.has(one.choicesFrom ?? ''),
    );
    assert.ok(worded.length > 50, String(worded.length));
    for (const one of worded) {
      const summaries = choicesOf(one).map(({ summary }) => summary);
      assert.ok(summaries.length >= 2, one.name);
      assert.equal(new Set(summaries).size, summaries.length, one.name);
    }
  });

  it('names who is hurt wherever a choice of it has a risk of its own', () => {
    assert.deepEqual(
      without((one) => choicesOf(one).every(({ risk }) => risk === undefined) || one.hurts.length > 0),
      [],
    );
  });

  it('belongs with others: no parameter stands alone', () => {
    assert.deepEqual(
      without(({ name, related }) => related.length > 0 || name.endsWith('.note')),
      [],
    );
  });

  it('says where its facts come from, and whose default it takes', () => {
    assert.deepEqual(
      without(
        (one) => one.source.text.length >= 12 && (one.default === null || one.default.from.length >= 8),
      ),
      [],
    );
  });

  it('is called something by people, in small plain words', () => {
    const odd = parameters.flatMap(({ name, alsoCalled }) =>
      alsoCalled.filter((said) => /[_A-Z]{2}|_/.test(said)).map((said) => `${name}: ${said}`),
    );
    assert.deepEqual(odd, []);
  });

  it('on the bench is proved with the propellers off wherever the pack goes in', () => {
    const odd = parameters.filter(
      ({ prove }) =>
        /\b(plug in|plugged in|arm the craft|armed)\b/i.test(prove) && !/propellers? off/i.test(prove),
    );
    assert.deepEqual(
      odd
        .filter(({ prove }) => !/\b(fly|flight|flown|hover|field|landing|air|lap)\b/i.test(prove))
        .map(({ name, prove }) => `${name}: ${prove}`),
      [],
    );
  });
});
