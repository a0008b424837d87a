import assert from 'node:assert/strict';
import { productsInUse, thirdOrderProducts } from '../../server/src/physics/intermodulation';

const frequencies = (carriers: readonly number[]) =>
  [...new Set(thirdOrderProducts(carriers).map((product) => product.frequency))].sort((a, b) => a - b);

/** How close the nearest product of two carriers comes to a carrier. */
function nearestOfTwo(carriers: readonly number[]): number {
  const products = thirdOrderProducts(carriers).filter(({ added: [one, other] }) => one === other);
  const distances = carriers.flatMap((carrier) =>
    products.map(({ frequency }) => Math.abs(frequency - carrier)),
  );
  return Math.min(...distances);
}

// The two-signal and three-signal types of ITU-R SM.1134, worked out by hand.
describe('third-order products (ITU-R SM.1134, products of two and of three signals, from memory)', () => {
  it('two carriers at 5740 and 5760 MHz make 5720 and 5780', () => {
    assert.deepEqual(frequencies([5740, 5760]), [5720, 5780]);
  });

  it('three carriers make six of two and three of three', () => {
    const products = thirdOrderProducts([1, 10, 100]);
    assert.equal(products.length, 9);
    assert.deepEqual(
      products.map((product) => product.frequency).sort((a, b) => a - b),
      [2 - 100, 1 + 10 - 100, 20 - 100, 2 - 10, 20 - 1, 1 + 100 - 10, 100 + 10 - 1, 200 - 10, 200 - 1].sort(
        (a, b) => a - b,
      ),
    );
  });

  it('evenly spaced carriers fall on each other', () => {
    assert.equal(nearestOfTwo([5658, 5695, 5732, 5769, 5806, 5843]), 0);
    assert.equal(nearestOfTwo([5740, 5780, 5820, 5860]), 0);
  });

  it('uneven ones keep clear, pair by pair: 12 MHz and 37 MHz for these sets', () => {
    assert.equal(nearestOfTwo([5658, 5695, 5760, 5800, 5880, 5917]), 12);
    assert.equal(nearestOfTwo([5658, 5732, 5843, 5880]), 37);
  });

  it('three that differ can still hit where no pair does: 5658 + 5917 - 5880 = 5695', () => {
    assert.ok(frequencies([5658, 5880, 5917]).includes(5695));
    assert.ok(!frequencies([5658, 5917]).includes(5695));
  });

  it('names the carriers of each product', () => {
    const product = thirdOrderProducts([5800, 5917]).find(({ frequency }) => frequency === 5683);
    assert.deepEqual(product, { frequency: 5683, added: [0, 0], takenOff: 1 });
  });

  it('carriers at 0, 1, 4, 9 and 11 (a perfect ruler of five marks, W. C. Babcock 1953) keep clear of all of them', () => {
    const ruler = [0, 1, 4, 9, 11].map((mark) => 5700 + 10 * mark);
    assert.deepEqual(productsInUse(ruler, 9), { count: 0, nearest: 10 });
    // Evenly spaced: 2 × 10 − 0 = 20 and 2 × 10 − 20 = 0.
    assert.deepEqual(productsInUse([5700, 5710, 5720], 9), { count: 2, nearest: 0 });
  });
});
