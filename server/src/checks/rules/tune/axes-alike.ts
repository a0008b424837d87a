import type { CraftView } from '../../../craft/view';
import { figureOf } from '../../../figures';
import { axisNames } from '../../../figures/axis-names';
import { toBase, unitOf } from '../../../units/unit';
import { listed } from '../../report/listed';
import type { CodeRule, RuleFix } from '../../rule';
import { isGainSet } from './gains';

/** What is said of one axis and not of another, or said very differently. */
export const axesAlikeRules: readonly CodeRule[] = [
  oneLacks('tune/axis-gains-missing', (axis) => `control.${axis}.proportional`),
  oneLacks('tune/curve-missing', (axis) => `stick.${axis}.curve`),
  {
    ids: ['tune/gains-missing'],
    scope: 'craft',
    whole: true,
    check(view, report) {
      if (!view.isSet('control.rate') || axisNames.some((axis) => isGainSet(view, axis))) return;
      if (view.isMissing('control.roll.proportional'))
        report({ id: 'tune/gains-missing', at: 'control.rate' });
    },
  },
  {
    ids: ['tune/roll-pitch-rates-apart'],
    scope: 'craft',
    check(view, report) {
      const [roll, pitch] = ['roll', 'pitch'].map((axis) => figureOf(view, `${axis}-end-rate`)?.likely ?? 0);
      if (!roll || !pitch || Math.max(roll / pitch, pitch / roll) <= mostApart) return;
      report({
        id: 'tune/roll-pitch-rates-apart',
        at: 'stick.pitch.curve',
        values: {
          roll: view.amount(toBase(roll, perSecond), 'deg/s'),
          pitch: view.amount(toBase(pitch, perSecond), 'deg/s'),
        },
        related: [{ at: 'stick.roll.curve', message: 'The curve of roll.' }],
      });
    },
  },
];

const perSecond = unitOf('deg/s');

/** Full rates of roll and pitch that differ by more than this are a slip more often than meant. A choice of ours. */
const mostApart = 2;

/** The same as the axis that has it: a place to begin. */
function copied(view: CraftView, from: string, paths: readonly string[]): readonly RuleFix[] {
  const to = view.written(from);
  const [first, ...also] = paths.map((set) => ({
    set,
    to: to ?? '',
    look: 'how this axis feels in a hover',
  }));
  if (to === null || first === undefined) return [];
  return [
    {
      title: `Write the missing ${also.length > 0 ? 'lines' : 'line'}: as {from}`,
      values: { from },
      ...first,
      also,
    },
  ];
}

/** A setting that one axis has and another lacks: the board then keeps what it had for that one. */
function oneLacks(id: string, pathOf: (axis: string) => string): CodeRule {
  return {
    ids: [id],
    scope: 'craft',
    whole: true,
    check(view: CraftView, report) {
      const has = axisNames.find((axis) => view.isSet(pathOf(axis)));
      const lacking = axisNames.filter((axis) => view.isMissing(pathOf(axis)));
      if (has === undefined || lacking.length === 0) return;
      const paths = listed(lacking.map(pathOf));
      const fixes = copied(view, pathOf(has), lacking.map(pathOf));
      report({ id, at: pathOf(has), values: { has, lacking: listed(lacking), paths }, fixes });
    },
  };
}
