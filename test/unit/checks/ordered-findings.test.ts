import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import type { Finding, Pieces } from '../../../server/src/checks/finding';
import { inScriptOrder } from '../../../server/src/checks/order';
import { OrderedFindings } from '../../../server/src/checks/ordered-findings';
import { ScriptOrder } from '../../../server/src/checks/script-order';
import { craftOf, findingsOf } from '../../support/findings';

const text = Array.from({ length: 1200 }, (_, index) => `wobble-${index} = ${index} = 2`).join('\n');
const pool = findingsOf(craftOf(text));

/** What comes at once, and what goes: stretches, so that some places get crowded. */
const stretch = fc.record({ from: fc.nat(pool.length - 1), length: fc.nat(24) });
const step = fc.record({ gone: stretch, come: stretch });

function within({ from, length }: { readonly from: number; readonly length: number }): readonly Finding[] {
  return pool.slice(from, from + length);
}

describe('findings that are kept in order', () => {
  it('are those that sorting gives, whatever comes and goes', () => {
    fc.assert(
      fc.property(fc.nat(pool.length), fc.array(step, { maxLength: 40 }), (count, steps) => {
        const ordered = new OrderedFindings();
        let wanted = inScriptOrder(pool.slice(0, count));
        assert.deepEqual(ids(ordered.changed(new Set(), pool.slice(0, count).toReversed())), ids(wanted));
        for (const { gone, come } of steps) {
          const leaving = new Set(within(gone).filter((finding) => wanted.includes(finding)));
          const fresh = within(come).filter((finding) => !wanted.includes(finding));
          wanted = inScriptOrder([...wanted.filter((finding) => !leaving.has(finding)), ...fresh]);
          assert.deepEqual(ids(ordered.changed(leaving, fresh)), ids(wanted));
        }
      }),
      { numRuns: 40 },
    );
  });

  it('stand behind those that came before them to the same place', () => {
    const [first, ...others] = pool;
    assert.ok(first);
    const twins = [1, 2, 3].map(() => ({ ...first }));
    const ordered = new OrderedFindings();
    ordered.changed(new Set(), pool);
    for (const twin of twins) ordered.changed(new Set(), [twin]);
    const found = ordered.changed(new Set([others[0] as Finding]), []);
    for (const [index, finding] of [first, ...twins, others[1]].entries())
      assert.equal(found[index], finding);
  });

  it('stay in a list that was given, whatever comes later', () => {
    const ordered = new OrderedFindings();
    const before = ordered.changed(new Set(), pool.slice(10));
    const copy = [...before];
    ordered.changed(new Set(before.slice(100, 104)), pool.slice(0, 10));
    assert.deepEqual(ids(before), ids(copy));
    assert.equal(ordered.changed(new Set(), []).length, pool.length - 4);
  });
});

describe('findings in groups of pieces', () => {
  it('are in order after groups and pieces came, went, changed and moved', () => {
    const pieces = Array.from({ length: 100 }, (_, index) => pool.slice(index * 12, index * 12 + 12));
    const list = fc.shuffledSubarray(pieces);
    const sizes = fc.array(fc.integer({ min: 1, max: 20 }), { minLength: 1, maxLength: 8 });
    const turn = fc.record({ list, sizes, changed: fc.array(fc.nat(99)) });
    fc.assert(
      fc.property(fc.array(turn, { maxLength: 8 }), (turns) => {
        const order = new ScriptOrder();
        const known = new Map<string, Pieces>();
        for (const { list: wanted, sizes: lengths, changed } of turns) {
          // A piece that has changed is another list with some of the same findings.
          const now = wanted.map((one, at) => (changed.includes(at) ? one.slice(changed.length) : one));
          const groups = grouped(now, lengths).map((group) => {
            // A group that was made before is the same list again.
            const key = ids(group.flat()).join();
            const same = known.get(key) ?? group;
            known.set(key, same);
            return same;
          });
          assert.deepEqual(ids(order.of(groups)), ids(inScriptOrder(now.flat())));
        }
      }),
    );
  });
});

/** Groups of these lengths in turn. */
function grouped(pieces: Pieces, lengths: readonly number[]): readonly Pieces[] {
  const groups: Pieces[] = [];
  for (let from = 0; from < pieces.length; ) {
    const length = lengths[groups.length % lengths.length] ?? 1;
    groups.push(pieces.slice(from, from + length));
    from += length;
  }
  return groups;
}

function ids(findings: readonly Finding[]): readonly number[] {
  return findings.map(({ place }) => place.script.lineNumber(place.line));
}
