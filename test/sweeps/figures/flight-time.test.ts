import assert from 'node:assert/strict';
import fc from 'fast-check';
import { CraftView } from '../../../server/src/craft/view';
import { figureOf } from '../../../server/src/figures';
import { craftOf } from '../../support/findings';
import { plausibleCraft, scriptOf } from '../../support/plausible-craft';

const ids = [
  'minutes-to-landing',
  'minutes-to-warning',
  'minutes-to-landing-cold',
  'minutes-to-warning-cold',
] as const;

function minutesOf(text: string) {
  const view = new CraftView(craftOf(text), 'one');
  return (id: (typeof ids)[number]) => figureOf(view, id);
}

describe('minutes of two hundred plausible craft', () => {
  it('are never negative nor outside their span, shorter with a cold pack, longer with a bigger one or a smaller reserve', () => {
    let hovering = 0;
    fc.assert(
      fc.property(plausibleCraft, (craft) => {
        const text = scriptOf(craft);
        const [now, bigger, deeper] = [
          minutesOf(text),
          minutesOf(text.replace('2000 mAh', '2400 mAh')),
          minutesOf(`${text}\npower.charge-reserve = 10 %`),
        ];
        for (const id of ids) {
          const figure = now(id);
          if (figure === null) continue;
          hovering += 1;
          const { low, likely, high } = figure;
          assert.ok(0 < low && low <= likely && likely <= high, `${id}: ${low} ${likely} ${high}`);
          assert.ok((bigger(id)?.likely ?? 0) > likely, id);
        }
        const landing = now('minutes-to-landing')?.likely ?? 0;
        assert.ok((now('minutes-to-landing-cold')?.likely ?? 0) <= landing);
        assert.ok((deeper('minutes-to-landing')?.likely ?? 0) >= landing);
      }),
      { numRuns: 200 },
    );
    assert.ok(hovering > 200, `${hovering}`);
  }).timeout(60_000);
});
