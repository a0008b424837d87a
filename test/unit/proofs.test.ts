import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { proofsList, proofsOf } from '../../server/build/proofs';

const root = join(__dirname, '../..');

describe('the proofs of the numbers', () => {
  const proofs = proofsOf(root);

  it('cover every function that computes something', () => {
    const bare = proofs.flatMap(({ file, unproved }) => unproved.map((name) => `${file}: ${name}`));
    // Arithmetic of complex numbers is proved by what is computed with it.
    assert.deepEqual(
      bare.filter((one) => !one.startsWith('complex.ts')),
      [],
    );
  });

  it('name their sources', () => {
    assert.deepEqual(
      proofs.filter(({ proofs: titles }) => titles.length === 0).map(({ file }) => file),
      [],
    );
  });

  it('stand in the list for contributors; `npm run reference` makes it anew', () => {
    assert.ok(readFileSync(join(root, 'DEVELOPERS.md'), 'utf8').includes(proofsList(root)));
  });
});
