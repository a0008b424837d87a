import type { CraftView } from '../../../craft/view';
import { stagesOfKind } from '../../../figures/filter-stages';
import { notchEdges, notchQuality } from '../../../physics/notch';
import type { CodeRule, RuleFinding } from '../../rule';

/** How wide fixed notches are, and whether two cut the same. */
export const notchRules: readonly CodeRule[] = [
  {
    ids: ['tune/notch-wide', 'tune/notch-narrow'],
    scope: 'pack',
    check(view, report) {
      for (const notch of knownNotches(view)) {
        const quality = notchQuality(notch.centre, notch.width);
        if (quality <= leastQuality) report(tooWide(view, notch));
        else if (quality > mostQuality) report(tooNarrow(view, notch));
      }
    },
  },
  {
    ids: ['tune/notches-overlap'],
    scope: 'pack',
    check(view, report) {
      const all = knownNotches(view);
      for (const [index, one] of all.entries()) {
        for (const other of all.slice(index + 1)) {
          const finding = overlap(view, one, other);
          if (finding !== null) report(finding);
        }
      }
    },
  },
];

/** At a quality of 1 the lower edge lies at 62 % of the centre; above 20 a change of speed by 3 % is past it. */
const leastQuality = 1;
const mostQuality = 20;

interface Notch {
  readonly path: string;
  readonly centre: number;
  readonly width: number;
}

function knownNotches(view: CraftView): readonly Notch[] {
  return stagesOfKind(view, 'notch').flatMap(({ path }) => {
    const centre = view.quantity(`${path}.centre`);
    const width = view.quantity(`${path}.width`);
    return centre === null || width === null || centre <= 0 || width <= 0 ? [] : [{ path, centre, width }];
  });
}

function tooWide(view: CraftView, notch: Notch): RuleFinding {
  const most = view.amount(notch.centre / 2, 'Hz');
  return { id: 'tune/notch-wide', at: `${notch.path}.width`, values: { ...edgesOf(view, notch), most } };
}

function tooNarrow(view: CraftView, notch: Notch): RuleFinding {
  const values = {
    ...edgesOf(view, notch),
    share: view.amount(notch.width / notch.centre / 2, '%'),
    least: view.amount(notch.centre / mostQuality, 'Hz'),
  };
  return { id: 'tune/notch-narrow', at: `${notch.path}.width`, values };
}

function edgesOf(view: CraftView, { centre, width }: Notch) {
  const { low, high } = notchEdges(centre, width);
  return {
    centre: view.amount(centre, 'Hz'),
    width: view.amount(width, 'Hz'),
    low: view.amount(low, 'Hz'),
    high: view.amount(high, 'Hz'),
  };
}

/** Notches of the gyro and of the derivative are different chains: only those of one chain are compared. */
function overlap(view: CraftView, one: Notch, other: Notch): RuleFinding | null {
  if (one.path.split('.')[0] !== other.path.split('.')[0]) return null;
  const [first, second] = [notchEdges(one.centre, one.width), notchEdges(other.centre, other.width)];
  const low = Math.max(first.low, second.low);
  const high = Math.min(first.high, second.high);
  if (low >= high) return null;
  return {
    id: 'tune/notches-overlap',
    at: `${other.path}.centre`,
    values: {
      one: view.amount(one.centre, 'Hz'),
      other: view.amount(other.centre, 'Hz'),
      low: view.amount(low, 'Hz'),
      high: view.amount(high, 'Hz'),
    },
    related: [{ at: `${one.path}.centre`, message: 'The other notch.' }],
  };
}
