import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { CraftView } from '../../../server/src/craft/view';
import { figureOf } from '../../../server/src/figures';
import { craftOf } from '../../support/findings';

const club = { 'club-habits.craft': readFileSync('test/demo/club-habits.craft', 'utf8') };
const bittern = readFileSync('test/demo/bittern.craft', 'utf8');

function thrustOf(blades: number) {
  const text = bittern.replace('blades   = 2', `blades   = ${blades}`);
  const figure = figureOf(new CraftView(craftOf(text, club), 'errand'), 'hover-speed');
  assert.ok(figure);
  return figure;
}

describe('the number of blades', () => {
  it('counts from one to eight: the more there are, the slower they turn in the hover', () => {
    const speeds = [1, 2, 3, 4, 5, 6, 7, 8].map((blades) => thrustOf(blades).likely);
    for (const [index, speed] of speeds.entries())
      assert.ok(index === 0 || speed < (speeds[index - 1] ?? 0), `${speeds.join(' ')}`);
  });

  it('is told as carried on where nobody has measured so many, or so few', () => {
    for (const blades of [1, 7, 8])
      assert.match(thrustOf(blades).assumed.join('; '), /carried on from two to four/, `${blades}`);
    assert.doesNotMatch(thrustOf(3).assumed.join('; '), /carried on/);
  });
});
