import type { CurvePoint } from '../../../craft/value';
import { valueText } from '../../../craft/value-text';
import type { CraftView } from '../../../craft/view';
import { axisNames } from '../../../figures/axis-names';
import { parseQuantity } from '../../../units/quantity';
import { toBase, unitOf } from '../../../units/unit';
import type { CodeRule, RuleFinding, RuleFix } from '../../rule';

/** Where stick curves begin and end, and whether the gyro can follow. */
export const curveRules: readonly CodeRule[] = [
  {
    ids: [
      'tune/curve-off-centre',
      'tune/curve-ends-early',
      'tune/throttle-off-zero',
      'tune/throttle-ends-early',
    ],
    scope: 'pack',
    check(view, report) {
      for (const axis of [...axisNames, 'throttle']) {
        const ends = endsOf(view, axis);
        if (ends === null) continue;
        if (ends.first.y > 0) report(firstPoint(view, axis, ends.first));
        if (ends.last.x < almostAll) report(lastPoint(view, axis, ends.last));
      }
    },
  },
  {
    ids: ['tune/curve-beyond-gyro', 'tune/curve-near-gyro', 'tune/curve-beyond-limit'],
    scope: 'pack',
    check(view, report) {
      const full = fullScale(view);
      for (const axis of axisNames) {
        const fastest = endsOf(view, axis)?.last.y;
        const limit = view.quantity(`stick.${axis}.limit`);
        if (fastest === undefined) continue;
        const asked = limit === null ? fastest : Math.min(limit, fastest);
        if (full !== null && asked > roomShare * full) report(tooFast(view, axis, asked, full));
        if (limit !== null && limit < fastest) report(beyondLimit(view, axis, fastest, limit));
      }
    },
  },
];

const almostAll = 0.995;

/** Share of the gyro's full scale that a curve may use, so that an overshoot is still measured: our choice. */
const roomShare = 0.9;

function endsOf(
  view: CraftView,
  axis: string,
): { readonly first: CurvePoint; readonly last: CurvePoint } | null {
  const points = view.curve(`stick.${axis}.curve`);
  const [first, last] = [points?.[0], points?.at(-1)];
  return first === undefined || last === undefined ? null : { first, last };
}

/** What the script says, else what the board's gyro measures; null where nobody has described it. */
function fullScale(view: CraftView): number | null {
  if (view.isSet('gyro.full-scale')) return view.quantity('gyro.full-scale');
  return parseQuantity(view.hardware.gyro?.fullScale ?? '')?.value ?? null;
}

function firstPoint(view: CraftView, axis: string, { x, y }: CurvePoint): RuleFinding {
  const at = `stick.${axis}.curve`;
  const stick = view.amount(x, '%');
  const fixes = redrawn(view, axis, (points) =>
    points.map((one, index) => (index === 0 ? { x: 0, y: 0 } : one)),
  );
  if (axis === 'throttle') {
    const values = { stick, throttle: view.amount(y, '%') };
    return { id: 'tune/throttle-off-zero', at, values, fixes };
  }
  const values = { axis, stick, rate: view.amount(y, 'deg/s') };
  return { id: 'tune/curve-off-centre', at, values, fixes };
}

function lastPoint(view: CraftView, axis: string, { x, y }: CurvePoint): RuleFinding {
  const at = `stick.${axis}.curve`;
  const stick = view.amount(x, '%');
  const fixes = redrawn(view, axis, (points) => [...points.slice(0, -1), { x: 1, y }]);
  if (axis === 'throttle') {
    const values = { stick, throttle: view.amount(y, '%') };
    return { id: 'tune/throttle-ends-early', at, values, fixes };
  }
  return { id: 'tune/curve-ends-early', at, values: { axis, stick }, fixes };
}

function tooFast(view: CraftView, axis: string, asked: number, full: number): RuleFinding {
  return {
    id: asked >= full ? 'tune/curve-beyond-gyro' : 'tune/curve-near-gyro',
    at: `stick.${axis}.curve`,
    values: {
      axis,
      rate: view.amount(asked, 'deg/s'),
      full: view.amount(full, 'deg/s'),
      fair: view.amount(roomShare * full, 'deg/s'),
    },
    related: [{ at: 'gyro.full-scale', message: 'What the gyro measures.' }],
    fixes: slower(view, axis, full),
  };
}

/** The whole curve drawn lower, so that its shape stays; to 10 deg/s. */
function slower(view: CraftView, axis: string, full: number): readonly RuleFix[] {
  const ten = toBase(10, unitOf('deg/s'));
  const fair = Math.floor((roomShare * full) / ten) * ten;
  return redrawn(view, axis, (points) => {
    const share = fair / (points.at(-1)?.y ?? fair);
    return points.map(({ x, y }, index) => ({
      x,
      y: index === points.length - 1 ? fair : Math.round((share * y) / ten) * ten,
    }));
  });
}

/** The curve with its points as `draw` gives them. */
function redrawn(
  view: CraftView,
  axis: string,
  draw: (points: readonly CurvePoint[]) => readonly CurvePoint[],
): readonly RuleFix[] {
  const set = `stick.${axis}.curve`;
  const points = view.curve(set);
  const parameter = view.catalog.parameter(set)?.parameter;
  if (points === null || parameter === undefined) return [];
  const to = valueText({ kind: 'curve', points: draw(points) }, parameter);
  return [{ title: 'Write {to}', set, to, look: 'how the ends of the stick feel' }];
}

function beyondLimit(view: CraftView, axis: string, fastest: number, limit: number): RuleFinding {
  return {
    id: 'tune/curve-beyond-limit',
    at: `stick.${axis}.curve`,
    values: { axis, rate: view.amount(fastest, 'deg/s'), limit: view.amount(limit, 'deg/s') },
    related: [{ at: `stick.${axis}.limit`, message: 'The limit.' }],
  };
}
