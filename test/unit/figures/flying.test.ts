import assert from 'node:assert/strict';
import fc from 'fast-check';
import { CraftView } from '../../../server/src/craft/view';
import { figureOf } from '../../../server/src/figures';
import type { Figure } from '../../../server/src/figures/figure';
import { flyingStyles, powerMultiple } from '../../../server/src/figures/flying-style';
import { withheldIn } from '../../../server/src/figures/withheld';
import { craftOf } from '../../support/findings';
import { plausibleCraft, scriptOf } from '../../support/plausible-craft';
import { wholeCraft, wholeCraftWith } from '../../support/whole-craft';

function figure(view: CraftView, id: string): Figure {
  const found = figureOf(view, id);
  assert.ok(found, id);
  return found;
}

describe('minutes as a craft is flown', () => {
  it('take the multiples of a hover’s power that flights showed (Race Against the Machine, data of 2023)', () => {
    assert.deepEqual(powerMultiple('gentle', 5), { likely: 1.1, low: 1, high: 1.2 });
    assert.deepEqual(powerMultiple('race', 7), { likely: 4.3, low: 2.9, high: 8.5 });
    const { low, high } = powerMultiple('freestyle', 7);
    assert.deepEqual([low, high], [2, 3]);
    // 4.3 × (3.5 / 7)^0.75
    assert.ok(Math.abs(powerMultiple('race', 3.5).likely - 2.5568) < 1e-4);
  });

  it('are the hover’s power times the multiple, from the pack’s own voltage under it', () => {
    const view = wholeCraftWith(['craft.flying = gentle']);
    const hover = figure(view, 'hover-power').likely;
    const power = figure(view, 'flying-power').likely;
    assert.ok(Math.abs(power - 1.1 * hover) < 1e-9 * hover);
    const current = figure(view, 'hover-current').likely;
    const minutes = figure(view, 'flying-minutes-to-landing').likely;
    // About a tenth: the pack sags more, and what the controllers lose goes with its voltage.
    const ratio = figure(view, 'minutes-to-landing').likely / minutes;
    assert.ok(ratio > 1.09 && ratio < 1.12, `${ratio} at ${current} A`);
  });

  it('are fewer, the harder it is flown, and fewer to the warning than to the landing', () => {
    const minutes = flyingStyles.map((style) => {
      const view = wholeCraftWith([`craft.flying = ${style}`]);
      const [landing, warning] = ['landing', 'warning'].map(
        (end) => figure(view, `flying-minutes-to-${end}`).likely,
      );
      assert.ok((warning ?? 0) < (landing ?? 0), style);
      return landing ?? 0;
    });
    const [gentle = 0, freestyle = 0, race = 0] = minutes;
    assert.ok(gentle > freestyle && freestyle >= race, minutes.join(' '));
  });

  it('follow from the purpose where the script does not say, and say so', () => {
    const byPurpose = figure(wholeCraftWith([]), 'flying-power');
    const said = figure(wholeCraftWith(['craft.flying = gentle']), 'flying-power');
    assert.equal(byPurpose.likely, said.likely);
    assert.ok(byPurpose.assumed.includes('flown gently, as craft.purpose = endurance lets expect'));
    assert.ok(!said.assumed.some((words) => words.includes('craft.purpose')));
  });

  it('are withheld, and ask how it is flown, where neither is known', () => {
    const craft = craftOf(wholeCraft.filter((line) => !line.startsWith('craft.purpose')).join('\n'));
    const withheld = withheldIn(new CraftView(craft, 'one'), new Set(['flying-minutes-to-landing']));
    assert.deepEqual(withheld[0]?.needs, ['craft.flying']);
  });

  it('never take more than motors and pack give, and keep to their spans, of five hundred plausible craft', () => {
    fc.assert(
      fc.property(plausibleCraft, fc.constantFrom(...flyingStyles), (craft, style) => {
        const view = new CraftView(craftOf(scriptOf(craft, `craft.flying = ${style}`)), 'one');
        const power = figureOf(view, 'flying-power');
        const minutes = figureOf(view, 'flying-minutes-to-landing');
        const hover = figureOf(view, 'hover-power');
        if (power === null || hover === null) return;
        const ratio = figure(view, 'thrust-to-weight').likely;
        assert.ok(power.low <= power.likely && power.likely <= power.high);
        // Of a craft that hovers at all the most is never less than a hover.
        assert.ok(power.likely <= hover.likely * Math.max(1, 8.5 * (ratio / 7) ** 0.75, 3));
        if (minutes === null) return;
        assert.ok(0 < minutes.low && minutes.low <= minutes.likely && minutes.likely <= minutes.high);
      }),
      { numRuns: 500, endOnFailure: true },
    );
  }).timeout(60_000);
});
