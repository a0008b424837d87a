import assert from 'node:assert/strict';
import { bounded } from '../../../server/src/sheet/find/bounded';
import { movablesOf } from '../../../server/src/sheet/find/movable';
import { everyCombination, type Setup } from '../../../server/src/sheet/find/search';
import { TrialCraft } from '../../../server/src/sheet/find/trial';
import { type Wish, wishFor } from '../../../server/src/sheet/find/wish';
import { Work } from '../../../server/src/sheet/find/work';
import { findingsOf } from '../../support/findings';
import { demo, type demos, found, foundIn, toEnd } from '../../support/found-values';

describe('a plain grid over the same settings', () => {
  const cases: readonly (readonly [(typeof demos)[number], Partial<Wish>, number])[] = [
    ['sandmartin', { packs: ['cruise'] }, 12],
    ['wagtail', {}, 14],
    ['bittern', { holds: { toneLeft: -16, phaseMargin: 42, gainMargin: 2, minutes: null } }, 14],
    [
      'bittern',
      { moves: ['filters', 'gains'], holds: { toneLeft: -8, phaseMargin: 40, gainMargin: 3, minutes: null } },
      12,
    ],
  ];
  for (const [name, wanted, each] of cases)
    it(`never beats what is found for ${name} ${JSON.stringify(wanted)} by more than 2 %`, () => {
      const craft = demo(name);
      const wish = wishFor(craft, wanted);
      const answer = Object.keys(wanted).length === 0 ? foundIn(name) : found(craft, wanted);
      const findings = findingsOf(craft);
      const trial = new TrialCraft(craft);
      const { movables } = toEnd(bounded(trial, movablesOf(craft, wish), findings, findingsOf));
      const { space } = new Work(trial, wish, movables, findings, findingsOf, []);
      const held = everyCombination(space.sizes, each)
        .map((setup) => ({ setup, ...space.weigh(setup) }))
        .filter(({ missed }) => missed === 0);
      assert.ok(held.length > 50, `${held.length}`);
      const isSound = (setup: Setup) => space.isSound(setup);
      const by = (of: (one: (typeof held)[number]) => number, most = Number.POSITIVE_INFINITY) =>
        held
          .filter(({ delay }) => delay <= most)
          .sort((one, other) => of(one) - of(other))
          .find(({ setup }) => isSound(setup));
      const [least, quietest] = [by(({ delay }) => delay), by(({ noise }) => noise)];
      assert.ok(least !== undefined && quietest !== undefined);
      const point = (id: string) => answer.proposals.find((one) => one.id === id)?.point ?? assert.fail(id);
      assert.ok(point('least-delay').delay <= 1.02 * least.delay, `${least.delay}`);
      assert.ok(point('quietest').noise <= 1.02 * quietest.noise, `${quietest.noise}`);
      const middle = point('middle');
      const beside = by(({ noise }) => noise, middle.delay);
      assert.ok(beside === undefined || middle.noise <= 1.02 * beside.noise, `${beside?.noise}`);
    });
});
