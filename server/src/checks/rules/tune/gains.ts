import type { CraftView } from '../../../craft/view';
import { type AxisName, axisNames } from '../../../figures/axis-names';
import { lowestLowpass, stagesOf } from '../../../figures/filter-stages';
import type { CodeRule, RuleFinding } from '../../rule';

/** Gains of one axis against each other, and of roll against pitch. */
export const gainRules: readonly CodeRule[] = [
  {
    ids: ['tune/no-proportional', 'tune/derivative-heavy', 'tune/derivative-late', 'tune/integral-heavy'],
    scope: 'pack',
    check(view, report) {
      for (const axis of axisNames) {
        const gains = gainsOf(view, axis);
        if (gains === null) continue;
        const found =
          gains.proportional === 0
            ? [noProportional(view, gains)]
            : [derivativeFinding(view, gains), integralFinding(view, gains)];
        for (const finding of found) if (finding !== null) report(finding);
      }
    },
  },
  {
    ids: ['tune/roll-pitch-apart'],
    scope: 'pack',
    check(view, report) {
      const roll = view.quantity('control.roll.proportional');
      const pitch = view.quantity('control.pitch.proportional');
      if (roll === null || pitch === null || roll <= 0 || pitch <= 0) return;
      const ratio = Math.max(roll / pitch, pitch / roll);
      if (ratio <= mostApart) return;
      report({
        id: 'tune/roll-pitch-apart',
        at: 'control.pitch.proportional',
        values: {
          roll: view.shown('control.roll.proportional'),
          pitch: view.shown('control.pitch.proportional'),
          times: `a factor of ${view.short(ratio, '')}`,
        },
        related: [{ at: 'control.roll.proportional', message: 'The gain of roll.' }],
      });
    },
  },
];

/** Seconds of derivative over proportional: small craft have a few milliseconds, large ones up to twenty. */
const mostDerivativeTime = 0.05;
/** Integral over proportional, a second: above it the integral overtakes within 40 ms. */
const mostIntegralRate = 25;
const mostApart = 3;

interface WrittenGains {
  readonly axis: string;
  readonly proportional: number;
  readonly integral: number | null;
  readonly derivative: number | null;
}

function gainsOf(view: CraftView, axis: string): WrittenGains | null {
  const proportional = view.quantity(`control.${axis}.proportional`);
  if (proportional === null || proportional < 0) return null;
  const integral = view.quantity(`control.${axis}.integral`);
  return { axis, proportional, integral, derivative: view.quantity(`control.${axis}.derivative`) };
}

function noProportional(view: CraftView, { axis, integral, derivative }: WrittenGains): RuleFinding | null {
  if ((integral ?? 0) === 0 && (derivative ?? 0) === 0) return null;
  const part = (name: string) => view.shown(`control.${axis}.${name}`);
  return {
    id: 'tune/no-proportional',
    at: `control.${axis}.proportional`,
    values: {
      axis,
      proportional: part('proportional'),
      integral: part('integral'),
      derivative: part('derivative'),
    },
  };
}

function derivativeFinding(
  view: CraftView,
  { axis, proportional, derivative }: WrittenGains,
): RuleFinding | null {
  if (derivative === null || derivative <= 0) return null;
  const time = derivative / proportional;
  if (time > mostDerivativeTime) {
    return {
      id: 'tune/derivative-heavy',
      at: `control.${axis}.derivative`,
      values: {
        axis,
        ratio: view.amount(time, 'ms'),
        usual: '2 ms to 20 ms',
        most: `${view.short(mostDerivativeTime * proportional, '%/(deg/s^2)')} at most`,
      },
      related: [{ at: `control.${axis}.proportional`, message: 'The proportional gain.' }],
    };
  }
  const corner = 1 / (2 * Math.PI * time);
  const lowest = lowestLowpass(view, stagesOf(view, 'derivative'));
  if (lowest === null || lowest.cutoff > corner) return null;
  return {
    id: 'tune/derivative-late',
    at: `control.${axis}.derivative`,
    values: { axis, corner: view.amount(corner, 'Hz'), cutoff: view.amount(lowest.cutoff, 'Hz') },
    related: [{ at: `${lowest.stage.path}.cutoff`, message: 'The cutoff.' }],
  };
}

function integralFinding(
  view: CraftView,
  { axis, proportional, integral }: WrittenGains,
): RuleFinding | null {
  if (integral === null || integral / proportional <= mostIntegralRate) return null;
  return {
    id: 'tune/integral-heavy',
    at: `control.${axis}.integral`,
    values: {
      axis,
      ratio: view.amount(integral / proportional, ''),
      time: view.amount(proportional / integral, 'ms'),
      most: `${view.short(mostIntegralRate * proportional, '%/deg')} at most`,
    },
    related: [{ at: `control.${axis}.proportional`, message: 'The proportional gain.' }],
  };
}

/** Whether a line sets one of the gains that hold an axis. */
export function isGainSet(view: CraftView, axis: AxisName): boolean {
  return ['proportional', 'integral', 'derivative'].some((gain) => view.isSet(`control.${axis}.${gain}`));
}
