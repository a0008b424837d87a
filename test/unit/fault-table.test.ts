import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { faultClasses, faultTable, unknownIds } from '../../server/build/fault-table';

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

  it('stand in the list for contributors; `npm run reference` makes it anew', () => {
    assert.ok(readFileSync(join(root, 'DEVELOPERS.md'), 'utf8').includes(faultTable(root)));
  });
});
