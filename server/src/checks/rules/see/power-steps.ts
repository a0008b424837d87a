import type { CraftView } from '../../../craft/view';
import { type PowerStep, powerSteps, powerStepsInOrder } from '../../../figures/video-power';
import { listed } from '../../report/listed';
import type { CodeRule, RuleFix } from '../../rule';

/** What the video transmitter is asked for against the steps that it has. */
export const powerStepRules: readonly CodeRule[] = [
  {
    ids: ['see/power-between-steps'],
    scope: 'craft',
    check(view, report) {
      const steps = powerSteps(view);
      if (steps.length === 0) return;
      for (const [path, when] of asked) {
        const power = view.quantity(path);
        // Nothing at all is sent with the transmitter off, which takes no step.
        if (power === null || power === 0 || steps.some((step) => isSamePower(step.power, power))) continue;
        const below = steps.findLast((step) => step.power < power) ?? steps[0];
        report({
          id: 'see/power-between-steps',
          at: path,
          values: {
            power: view.shown(path),
            when,
            steps: listed(steps.map((step) => view.short(step.power, 'mW'))),
          },
          related: steps.map((step) => ({
            at: step.path,
            message: 'Step {number}.',
            values: { number: step.number },
          })),
          fixes: below === undefined ? [] : [askFor(view, path, below)],
        });
      }
    },
  },
  {
    ids: ['see/power-steps-fall'],
    scope: 'craft',
    check(view, report) {
      const steps = powerStepsInOrder(view);
      for (const [index, step] of steps.entries()) {
        const before = steps[index - 1];
        if (before === undefined || step.power > before.power) continue;
        report({
          id: 'see/power-steps-fall',
          at: step.path,
          values: {
            number: step.number,
            power: view.shown(step.path),
            before: before.number,
            lower: view.shown(before.path),
          },
          related: [{ at: before.path, message: 'Step {number}.', values: { number: before.number } }],
          fixes: [inRisingOrder(view, before, step)],
        });
      }
    },
  },
  {
    ids: ['see/power-while-locked'],
    scope: 'craft',
    check(view, report) {
      const power = view.quantity('video.power');
      const lowest = powerSteps(view).find((step) => step.power > 0);
      if (!view.isOn('video.locked') || power === null || lowest === undefined) return;
      if (power <= lowest.power * rounding) return;
      report({
        id: 'see/power-while-locked',
        at: 'video.power',
        values: { power: view.shown('video.power'), lowest: view.shown(lowest.path) },
        related: [
          { at: 'video.locked', message: 'It is locked.' },
          { at: lowest.path, message: 'Its lowest step.' },
        ],
      });
    },
  },
];

const asked = [
  ['video.power', 'in flight'],
  ['video.waiting-power', 'while waiting'],
] as const;

/** Whole decibels and round milliwatts of one step lie no further apart. */
const rounding = 1.02;

function isSamePower(one: number, other: number): boolean {
  return Math.max(one, other) <= Math.min(one, other) * rounding;
}

function askFor(view: CraftView, path: string, step: PowerStep): RuleFix {
  return {
    title: 'Ask for step {number}: {to}',
    values: { number: step.number },
    set: path,
    to: view.shown(step.path),
  };
}

/** Two steps change places; one that another says already goes. */
function inRisingOrder(view: CraftView, before: PowerStep, step: PowerStep): RuleFix {
  if (before.power === step.power)
    return { title: 'Take step {number} out', values: { number: step.number }, remove: [step.path] };
  return {
    title: 'Let the two change places',
    set: step.path,
    to: view.shown(before.path),
    also: [{ set: before.path, to: view.shown(step.path) }],
  };
}
