import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { faultClasses, faultClassesPage, unknownIds } from '../../server/build/fault-classes';

const root = join(__dirname, '../..');

describe('the faults that other tools have had', () => {
  const classes = faultClasses(root);

  it('are many', () => assert.ok(classes.length > 70));

  it('each have a test whose title names them', () => {
    assert.deepEqual(
      classes.filter(({ tests }) => tests.length === 0).map(({ id, what }) => `${id}: ${what}`),
      [],
    );
  });

  it('are named by no other id', () => assert.deepEqual(unknownIds(root), []));

  it('stand on their page; `npm run reference` makes it anew', () => {
    assert.equal(readFileSync(join(root, 'test/FAULT-CLASSES.md'), 'utf8'), faultClassesPage(root));
  });
});
