import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { CraftView } from '../../../server/src/craft/view';
import { figureOf, figureSources } from '../../../server/src/figures';
import type { Figure } from '../../../server/src/figures/figure';
import { craftOf } from '../../support/findings';
import { formulaValue, unitSize } from '../../support/formula';
import { wholeCraftWith } from '../../support/whole-craft';

const scripts = Object.fromEntries(
  ['test/demo', 'client/starters'].flatMap((folder) =>
    readdirSync(folder)
      .filter((name) => name.endsWith('.craft'))
      .map((name) => [name, readFileSync(`${folder}/${name}`, 'utf8')]),
  ),
);

/** The three demo craft and the starters with every pack, and a craft that has everything, in some variants. */
const views: readonly (readonly [name: string, view: () => CraftView])[] = [
  ...Object.entries(scripts).flatMap(([name, text]) => {
    const craft = craftOf(text, scripts);
    return craft.packs().map((pack) => [`${name} with ${pack}`, () => new CraftView(craft, pack)] as const);
  }),
  ...[
    [],
    ['motor.idle-speed = 2000 rpm', 'gyro.rate = 1.25 kHz', 'gyro.filter.1.kind = first-order'],
    ['esc.drive.brake = off', 'video.frequency = 5790 MHz', 'gyro.chain = none'],
    ['esc.signal = servo-pulse', 'motor.thrust-shape = 0 % -> 0 %, 50 % -> 71 %, 100 % -> 100 %'],
  ].map(
    (lines) => [['a craft that has everything', ...lines].join(', '), () => wholeCraftWith(lines)] as const,
  ),
];

/** The digital filters that a text names, as functions of z⁻¹ = e^(−jω); from the textbook, not from our code. */
interface Section {
  readonly b: readonly [number, number, number];
  readonly a: readonly [number, number, number];
}

/** Bilinear transform of the low-pass of first order, of the Butterworth of second order, and of a notch. */
function section(kind: string, at: number, width: number, rate: number): Section {
  const warped = Math.tan((Math.PI * at) / rate);
  if (kind === 'first-order') return { b: [warped, warped, 0], a: [1 + warped, warped - 1, 0] };
  if (kind === 'second-order') {
    const square = warped ** 2;
    const middle = Math.SQRT2 * warped;
    return { b: [square, 2 * square, square], a: [1 + middle + square, 2 * square - 2, 1 - middle + square] };
  }
  const wide = Math.tan((Math.PI * width) / rate);
  const turn = -2 * Math.cos((2 * Math.PI * at) / rate);
  return { b: [1, turn, 1], a: [1 + wide, turn, 1 - wide] };
}

const sectionText =
  /(?:(\d+) × )?(?:(first-order|second-order) low-pass|notch of ([\d.]+) Hz) at ([\d.]+) Hz/g;

function sectionsIn(text: string, rate: number): readonly Section[] {
  return [...text.matchAll(sectionText)].flatMap(([, count = '1', kind = 'notch', width = '0', at = '0']) =>
    Array.from({ length: Number(count) }, () => section(kind, Number(at), Number(width), rate)),
  );
}

function response({ b, a }: Section, frequency: number, rate: number) {
  const turn = (2 * Math.PI * frequency) / rate;
  const value = (c: readonly number[]) => ({
    re: c.reduce((sum, one, n) => sum + one * Math.cos(n * turn), 0),
    im: c.reduce((sum, one, n) => sum - one * Math.sin(n * turn), 0),
  });
  const [above, below] = [value(b), value(a)];
  return {
    gain: Math.hypot(above.re, above.im) / Math.hypot(below.re, below.im),
    phase: Math.atan2(above.im, above.re) - Math.atan2(below.im, below.re),
  };
}

/** Group delay in ms by a small difference of the phase. */
function delayOf(sections: readonly Section[], frequency: number, rate: number): number {
  const step = 1e-3;
  const slope = sections.reduce((sum, one) => {
    const [left, right] = [-step, step].map((by) => response(one, frequency + by, rate).phase);
    return sum + ((right ?? 0) - (left ?? 0)) / (2 * step);
  }, 0);
  return (-1e3 * slope) / (2 * Math.PI);
}

function decibels(sections: readonly Section[], frequency: number, rate: number): number {
  return sections.reduce((sum, one) => sum + 20 * Math.log10(response(one, frequency, rate).gain), 0);
}

/** What the reason says that the figure is, in the figure's unit; null where it names no numbers. */
function said({ id, unit, why }: Figure, view: CraftView): number | null {
  const rate = view.quantity(id.startsWith('derivative-filter') ? 'control.rate' : 'gyro.rate') ?? 0;
  const delayed = /^group delay at ([\d.]+) Hz: (.+)$/.exec(why);
  if (delayed !== null) return delayOf(sectionsIn(delayed[2] ?? '', rate), Number(delayed[1]), rate);
  const beside = /^gain ([\d.]+) % beside ([\d.]+) Hz: (.+)$/.exec(why);
  if (beside !== null) {
    const sections = sectionsIn(beside[3] ?? '', rate);
    const [share, tone] = [Number(beside[1]) / 100, Number(beside[2])];
    return Math.max(...[1 - share, 1 + share].map((by) => decibels(sections, by * tone, rate)));
  }
  if (why.startsWith('nothing filters')) return 0;
  if (!/\d/.test(why)) return null;
  const value = why.split(' + ').every((part) => /: [\d.]+ \w+$/.test(part))
    ? why.split(' + ').reduce((sum, part) => sum + formulaValue(part.slice(part.lastIndexOf(': ') + 2)), 0)
    : formulaValue(why.split(', ')[0] ?? '');
  return unit === 'dB'
    ? value
    : value / (unitSize(unit === '' ? '%' : unit) ?? Number.NaN) / (unit === '' ? 100 : 1);
}

/** Figures of the loop are told with other places beside their own: `at 90 % of the usable output: 42.8 deg`. */
const ofLoop = /^(roll|pitch|yaw)-(swings|crossover|phase-margin|gain-margin|overshoot|noise-gain)$/;

describe('the reason of a figure comes to the figure: its numbers, put into what it names', () => {
  const reasons = new Map<string, number>();
  for (const [name, viewOf] of views) {
    it(`of ${name}`, () => {
      const view = viewOf();
      for (const { id } of figureSources) {
        const figure = ofLoop.test(id) ? null : figureOf(view, id);
        if (figure === null) continue;
        const value = said(figure, view);
        if (value === null) continue;
        reasons.set(id, (reasons.get(id) ?? 0) + 1);
        const [, formula, comesTo] = /told (.+) = ([\d.]+ %)$/.exec(figure.why) ?? [];
        if (formula !== undefined && comesTo !== undefined)
          assert.ok(Math.abs(formulaValue(formula) / formulaValue(comesTo) - 1) < 0.003, figure.why);
        const allowed = Math.max(0.006 * Math.abs(figure.likely), figure.unit === 'dB' ? 0.15 : 0);
        assert.ok(
          Math.abs(value - figure.likely) <= allowed,
          `${id}: ${figure.likely} ${figure.unit}, and ${figure.why} is ${value}`,
        );
      }
    });
  }

  it('and nearly every figure has one that can be reckoned', () =>
    assert.ok(reasons.size > 55, `${reasons.size}`));
});
