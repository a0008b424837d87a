import type { CraftView } from '../../../craft/view';
import {
  type ChainName,
  chains,
  kindOf,
  neededBy,
  type Stage,
  stagesOf,
} from '../../../figures/filter-stages';
import { halfRate } from '../../../physics/sampling';
import type { RuleFix, RuleLine } from '../../rule';

const look = 'the log of a hover, and how warm the motors are';

/** Where each part of a filter is usually set to begin with; Hz, or a plain count. */
const beginnings: Readonly<Record<ChainName, Readonly<Record<string, number>>>> = {
  gyro: { cutoff: 110, centre: 220, width: 70, from: 130, to: 420, tones: 1, count: 1 },
  derivative: { cutoff: 75, centre: 220, width: 70, from: 130, to: 420, tones: 1, count: 1 },
};

/** Lines for what a filter of its kind needs. */
export function missingParts(
  view: CraftView,
  { path, chain }: Stage,
  missing: readonly string[],
): readonly RuleFix[] {
  const lines = missing.map((part) => lineFor(view, chain, `${path}.${part}`, part));
  const [first, ...also] = lines;
  if (first === undefined) return [];
  const said = lines.map(({ to }, index) => `${missing[index]} ${to}`).join(', ');
  return [
    {
      title: `Write the missing ${also.length > 0 ? 'lines' : 'line'}: {said}`,
      values: { said },
      ...first,
      also,
    },
  ];
}

/** The kind that what is written belongs to, with what else it needs. */
export function kindFor(view: CraftView, path: string): readonly RuleFix[] {
  const chain: ChainName = path.startsWith('gyro.') ? 'gyro' : 'derivative';
  const parts = ['cutoff', 'centre', 'tones', 'count', 'from', 'width'];
  const set = parts.find((part) => view.isSet(`${path}.${part}`));
  const kind = kinds.get(set ?? '');
  if (kind === undefined) return [];
  const missing = (neededBy.get(kind) ?? []).filter((part) => view.isMissing(`${path}.${part}`));
  const also = missing.map((part) => lineFor(view, chain, `${path}.${part}`, part));
  return [
    {
      title: 'Write the missing kind: {to}',
      set: `${path}.kind`,
      to: kind,
      look: 'what it is to filter',
      also,
    },
  ];
}

const kinds: ReadonlyMap<string, string> = new Map([
  ['cutoff', 'butterworth'],
  ['centre', 'notch'],
  ['width', 'notch'],
  ['tones', 'follow-motors'],
  ['count', 'follow-noise'],
  ['from', 'follow-noise'],
]);

/** A low-pass in each of some chains that have none. */
export function filterOn(view: CraftView, ...offChains: readonly ChainName[]): readonly RuleFix[] {
  const lowpasses = offChains.map((chain) => lowpassIn(view, chain));
  const [first, ...also] = lowpasses.flatMap(({ lines }) => lines);
  if (first === undefined) return [];
  const cutoffs = lowpasses.map(({ cutoff }) => cutoff).join(' and at ');
  return [{ title: 'Filter it with a low-pass at {cutoffs}', values: { cutoffs }, ...first, also }];
}

/** The filter that is off comes on, else the first is written. */
function lowpassIn(view: CraftView, chain: ChainName) {
  const off = stagesOf(view, chain).find((stage) => kindOf(view, stage) === 'none');
  const path = off?.path ?? `${chain}.filter.1`;
  const kind: RuleLine = { set: `${path}.kind`, to: 'butterworth' };
  const cutoff = view.isSet(`${path}.cutoff`) ? [] : [lineFor(view, chain, `${path}.cutoff`, 'cutoff')];
  const isNone = view.word(`${chain}.chain`) === 'none';
  const inOrder = isNone ? [{ set: `${chain}.chain`, to: 'in-order' }] : [];
  const lines = [kind, ...cutoff, ...inOrder];
  return { lines, cutoff: view.written(`${path}.cutoff`) ?? cutoff[0]?.to ?? '' };
}

function lineFor(view: CraftView, chain: ChainName, set: string, part: string): RuleLine {
  const beginning = beginnings[chain][part] ?? 1;
  if (part === 'tones' || part === 'count') return { set, to: String(beginning), look };
  const rate = view.quantity(chains[chain]);
  const most = rate === null ? beginning : 0.4 * halfRate(rate);
  return { set, to: view.exact(Math.round(Math.min(beginning, most)), 'Hz'), look };
}
