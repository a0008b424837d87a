import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { proofsOf, proofsPage } from '../../server/build/proofs';

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

  it('stand on their page; `npm run reference` makes it anew', () => {
    assert.equal(readFileSync(join(root, 'test/reference/PROOFS.md'), 'utf8'), proofsPage(root));
  });
});
