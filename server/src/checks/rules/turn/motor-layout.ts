import { motorPlaces } from '../../../figures/layouts';
import type { CodeRule } from '../../rule';

/** Every motor of the layout stands in the order once. */
const orderPermutation: CodeRule = {
  ids: ['turn/order-no-permutation'],
  scope: 'craft',
  check(view, report) {
    const order = view.words('motor.order');
    const places = motorPlaces(view.word('craft.layout') ?? '');
    if (order === null || places === undefined) return;
    const missing = places.filter((place) => !order.includes(place));
    const foreign = order.filter((place) => !places.includes(place));
    if (missing.length === 0 && foreign.length === 0 && order.length === places.length) return;
    const values = {
      layout: view.shown('craft.layout'),
      motors: String(places.length),
      named: String(order.length),
      missing: missing.join(', '),
      foreign: foreign.join(', '),
    };
    const related = [{ at: 'craft.layout', message: `The layout has ${places.length} motors.` }];
    report({ id: 'turn/order-no-permutation', at: 'motor.order', values, related });
  },
};

export const motorLayoutRules: readonly CodeRule[] = [orderPermutation];
