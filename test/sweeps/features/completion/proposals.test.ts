import assert from 'node:assert/strict';
import type { KnownParameter } from '../../../../server/src/catalog/known-parameter';
import { holdsAnEnd } from '../../../../server/src/catalog/value-ends';
import { testCatalog } from '../../../support/catalog';
import { findingsIn } from '../../../support/findings';
import { offered, values } from '../../../support/offered';

/** The parameter on a line, for each member that its collection is known to have. */
function pathsOf({ name }: KnownParameter): readonly string[] {
  const open = /^(.*?)\.<[a-z]+>/.exec(name)?.[1];
  if (open === undefined) return [name];
  const isNumbered = testCatalog.collection(open)?.keys.kind === 'numbers';
  const members = isNumbered ? ['1'] : testCatalog.members(open).map((member) => member.name);
  return (members.length === 0 ? ['one'] : members)
    .map((member) => name.replace(/<[a-z]+>/, member))
    .filter((path) => testCatalog.parameter(path)?.name === name);
}

const numbers = [...testCatalog.parameters.values()].filter(({ parameter }) =>
  ['quantity', 'count', 'range', 'curve'].includes(parameter.kind),
);

const mustFix = (text: string) => findingsIn(text).filter(({ level }) => level === 'must-fix');

/** What a script that names a craft lacks as long as it says nothing else. */
const lacking = new Set(mustFix('craft.name = "Wren"').map(({ id }) => id));
const isPartial = (path: string, id: string) => path.startsWith('craft.') && lacking.has(id);

describe('proposals of values, for every parameter that takes numbers', () => {
  it('are at least one, or it says why there is none', () => {
    assert.ok(numbers.length > 200, String(numbers.length));
    for (const known of numbers) {
      const none = testCatalog.commonValues.get(known.name)?.none;
      for (const path of pathsOf(known))
        assert.ok(
          none !== undefined || values(path).length > 0,
          `${path} proposes nothing, and says no reason`,
        );
    }
  });

  it('are never an end of what is allowed or usual, unless the data says that it is common', () => {
    for (const known of numbers) {
      const row = testCatalog.commonValues.get(known.name);
      const common = new Set(row?.values?.filter(({ end }) => end === true).map(({ value }) => value));
      for (const path of pathsOf(known))
        for (const value of values(path))
          assert.ok(!holdsAnEnd(known, value) || common.has(value), `${path} = ${value}`);
    }
  });

  it('are each within its range, and bring no must-fix by themselves', () => {
    for (const known of numbers) {
      for (const path of pathsOf(known)) {
        for (const value of values(path)) {
          const wrong = mustFix(`${path} = ${value}\n`).filter(({ id }) => !isPartial(path, id));
          assert.deepEqual(
            wrong.map(({ id, message }) => `${path} = ${value}: ${id}: ${message}`),
            [],
          );
        }
      }
    }
  }).timeout(60_000);

  it('tell each why', () => {
    for (const known of numbers)
      for (const path of pathsOf(known))
        for (const { kind, label, detail } of offered(`${path} = |`))
          assert.ok(kind !== 'value' || detail !== '', `${path} = ${label}`);
  });
});
