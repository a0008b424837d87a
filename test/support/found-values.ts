import { readFileSync } from 'node:fs';
import type { Craft } from '../../server/src/craft/craft';
import type { FoundValues } from '../../server/src/sheet/find/answer';
import { find } from '../../server/src/sheet/find/find';
import { type Wish, wishFor } from '../../server/src/sheet/find/wish';
import { craftOf, findingsOf } from './findings';

export const club = { 'club-habits.craft': readFileSync('test/demo/club-habits.craft', 'utf8') };
export const demo = (name: string) => craftOf(readFileSync(`test/demo/${name}.craft`, 'utf8'), club);
export const demos = ['sandmartin', 'bittern', 'wagtail'] as const;

export function toEnd<T>(work: Generator<unknown, T>): T {
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
  }
}

export function found(craft: Craft, wanted: Partial<Wish> = {}): FoundValues {
  return toEnd(find(craft, wishFor(craft, wanted), findingsOf(craft), findingsOf));
}

/** Each is found once for all tests. */
const known = new Map<string, FoundValues>();

export function foundIn(name: (typeof demos)[number]): FoundValues {
  const answer = known.get(name) ?? found(demo(name));
  known.set(name, answer);
  return answer;
}
