import assert from 'node:assert/strict';
import { findingsIn } from '../../support/findings';
import { shippedCatalog } from './shipped';

/** A parameter's path with some member in each open part. */
function pathOf(name: string): string {
  const catalog = shippedCatalog();
  const words: string[] = [];
  for (const word of name.split('.')) {
    const members = catalog.members(words.join('.'));
    words.push(word.startsWith('<') ? (members[0]?.name ?? 'one') : word);
  }
  return words.join('.');
}

describe('a default', () => {
  const assumed = [...shippedCatalog().parameters.values()].filter(
    ({ parameter }) => parameter.default !== null,
  );

  it('is told for many parameters', () => assert.ok(assumed.length > 60, String(assumed.length)));

  for (const { name, parameter } of assumed) {
    const path = pathOf(name);
    const [section, key] = [path.slice(0, path.lastIndexOf('.')), path.slice(path.lastIndexOf('.') + 1)];
    const line = `${key} = ${parameter.default?.value}`;
    it(`passes its own checks, alone in its section: [${section}] ${line}`, () => {
      const found = findingsIn(`[${section}]\n${line}\n`).filter((one) => one.line === 1);
      assert.deepEqual(
        found.map(({ id, message }) => [id, message]),
        [],
      );
    });
  }
});
