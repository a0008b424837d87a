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
    const to = `[${inOrder(order, places).join(', ')}]`;
    const fixes = [{ title: 'Write {to}', set: 'motor.order', to, look: 'which motor each output turns' }];
    report({ id: 'turn/order-no-permutation', at: 'motor.order', values, related, fixes });
  },
};

/** The order that is there, with what is missing in place of what does not belong, and the rest behind. */
function inOrder(order: readonly string[], places: readonly string[]): readonly string[] {
  const missing = places.filter((place) => !order.includes(place));
  const kept = order.flatMap((place, index) => {
    const isRight = places.includes(place) && order.indexOf(place) === index;
    return isRight ? [place] : missing.splice(0, 1);
  });
  return [...kept, ...missing];
}

export const motorLayoutRules: readonly CodeRule[] = [orderPermutation];
