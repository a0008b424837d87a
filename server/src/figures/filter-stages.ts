import type { CraftView } from '../craft/view';

/** A low-pass, a notch or a set of notches, and the parameter that says how often it works. */
export interface Stage {
  /** `gyro.lowpass`, `derivative.notch.1` */
  readonly path: string;
  readonly rate: 'gyro.rate' | 'control.rate';
}

/** The derivative is filtered once for each step of the loop, the gyro once for each sample. */
export const lowpasses: readonly Stage[] = [
  { path: 'gyro.lowpass', rate: 'gyro.rate' },
  { path: 'gyro.second-lowpass', rate: 'gyro.rate' },
  { path: 'derivative.lowpass', rate: 'control.rate' },
  { path: 'derivative.second-lowpass', rate: 'control.rate' },
];

/** Notches that move with the motors' tones. */
export const followers: readonly Stage[] = [
  { path: 'gyro.tones', rate: 'gyro.rate' },
  { path: 'gyro.tracker', rate: 'gyro.rate' },
];

export function notches(view: CraftView): readonly Stage[] {
  const of = (group: 'gyro' | 'derivative', rate: Stage['rate']) =>
    view.members(`${group}.notch`).map((number) => ({ path: `${group}.notch.${number}`, rate }));
  return [...of('gyro', 'gyro.rate'), ...of('derivative', 'control.rate')];
}

/** The cutoff of a low-pass that is on, Hz; null where it is off or unknown. */
export function workingCutoff(view: CraftView, path: string): number | null {
  const shape = view.word(`${path}.shape`);
  return shape === null || shape === 'off' ? null : view.quantity(`${path}.cutoff`);
}

/** Whether nothing at all filters the gyro, as far as the script says so itself. */
export function isGyroUnfiltered(view: CraftView): boolean {
  return (
    view.word('gyro.lowpass.shape') === 'off' &&
    view.word('gyro.second-lowpass.shape') === 'off' &&
    view.members('gyro.notch').length === 0 &&
    view.count('gyro.tracker.count') === 0 &&
    view.count('gyro.tones.harmonics') === 0
  );
}

/** Whether nothing filters the derivative beyond what the gyro's filters do. */
export function isDerivativeUnfiltered(view: CraftView): boolean {
  return (
    view.word('derivative.lowpass.shape') === 'off' &&
    view.word('derivative.second-lowpass.shape') === 'off' &&
    view.members('derivative.notch').length === 0
  );
}
