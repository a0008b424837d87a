import assert from 'node:assert/strict';
import { type Proof, prove } from './prove';
import { quantities } from './quantities';
import { tableOf } from './score';

const flights = 200;
/** Of the flights that excite a quantity, it is told in this share at least. */
const leastTold = 0.7;
/** Of spans that hold the truth nine times of ten, so many may miss it: 30 of 200. */
const mostOutside = 0.15;
/** A span is as wide as its tolerance to either side; a little more is chance. */
const widest = 2.1;
/** With fewer flights a share says little. */
const usualFewest = 20;

describe(`${flights} simulated flights, each read from its bytes and told of`, () => {
  let proof: Proof;

  before(async function () {
    this.timeout(600_000);
    proof = await prove({ from: 1, count: flights });
    console.log(tableOf(proof.scores));
  });

  for (const [at, { name, fewest = usualFewest }] of quantities.entries())
    it(`${name}: told where it is excited, with a span that is narrow and holds the truth`, () => {
      const { excited, told, outside, span } = proof.scores[at]!;
      assert.ok(excited >= fewest, `excited in ${excited}`);
      assert.ok(told >= leastTold * excited, `told in ${told} of ${excited}`);
      assert.ok(outside <= mostOutside * told, `outside in ${outside} of ${told}`);
      assert.ok(span <= widest, `a span of ${span} tolerances`);
    });

  it('calls little standing that does not stand', () => {
    const { told, mistaken } = proof.standing;
    assert.ok(told >= usualFewest && mistaken <= 0.1 * told, `${mistaken} of ${told}`);
  });
});
