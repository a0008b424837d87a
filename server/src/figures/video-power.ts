import type { CraftView } from '../craft/view';

/** One of the powers that a video transmitter can send with. */
export interface PowerStep {
  readonly number: string;
  readonly path: string;
  /** In watts. */
  readonly power: number;
}

/** By their numbers. */
export function powerStepsInOrder(view: CraftView): readonly PowerStep[] {
  return view
    .members('video.power-steps')
    .flatMap((number) => {
      const path = `video.power-steps.${number}`;
      const power = view.quantity(path);
      return power === null ? [] : [{ number, path, power }];
    })
    .sort((one, other) => Number(one.number) - Number(other.number));
}

/** The lowest first, whatever their numbers are. */
export function powerSteps(view: CraftView): readonly PowerStep[] {
  return [...powerStepsInOrder(view)].sort((one, other) => one.power - other.power);
}

/** What a video transmitter sends with. */
export interface SentPower {
  /** In watts, above nothing. */
  readonly power: number;
  readonly assumed: readonly string[];
}

/** What is asked for, but while the transmitter is locked no more than its lowest step; null where nobody says. */
export function sentPower(view: CraftView): SentPower | null {
  const power = view.quantity('video.power');
  if (power === null || power <= 0) return null;
  const lowest = view.isOn('video.locked') ? powerSteps(view).find((step) => step.power > 0) : undefined;
  if (lowest === undefined || power <= lowest.power) return { power, assumed: [] };
  return { power: lowest.power, assumed: [`locked at its lowest step, ${view.shown(lowest.path)}`] };
}
