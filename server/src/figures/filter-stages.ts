import { type CraftView, viewQuery } from '../craft/view';

/** What the filters of a chain work on, and the parameter that says how often they do. */
export const chains = {
  /** The measured turning rates: once for each sample. */
  gyro: 'gyro.rate',
  /** The derivative alone, behind the gyro's chain: once for each step of the loop. */
  derivative: 'control.rate',
} as const;

export type ChainName = keyof typeof chains;

/** The numbers that a filter may have: as many as the catalogue's collections take. */
export const filterNumbers: readonly number[] = Array.from({ length: 32 }, (_, index) => index + 1);

export const chainNames: readonly ChainName[] = ['gyro', 'derivative'];

/** One filter of a chain. */
export interface Stage {
  readonly chain: ChainName;
  readonly number: number;
  /** `gyro.filter.2` */
  readonly path: string;
  readonly rate: (typeof chains)[ChainName];
}

/** The filters of a chain in the order in which they work, whatever the order of the script's lines. */
export const stagesOf = viewQuery('stages', (view, chain: ChainName): readonly Stage[] => {
  // A line may call one as no filter can be called; that is reported where it stands.
  const numbers = view.members(`${chain}.filter`).map(Number).filter(Number.isInteger);
  return numbers.sort((one, other) => one - other).map((number) => stageAt(chain, number));
});

export function stageAt(chain: ChainName, number: number): Stage {
  return { chain, number, path: `${chain}.filter.${number}`, rate: chains[chain] };
}

export function allStages(view: CraftView): readonly Stage[] {
  return chainNames.flatMap((chain) => stagesOf(view, chain));
}

/** Those of both chains that are of one of some kinds. */
export function stagesOfKind(view: CraftView, ...kinds: readonly string[]): readonly Stage[] {
  return allStages(view).filter((stage) => kinds.includes(kindOf(view, stage) ?? ''));
}

/** Those of its own chain that work before a filter. */
export function stagesBefore(view: CraftView, { chain, number }: Stage): readonly Stage[] {
  return stagesOf(view, chain).filter((stage) => stage.number < number);
}

/** `butterworth`, `notch`; null where it is not said. */
export function kindOf(view: CraftView, { path }: Stage): string | null {
  return view.word(`${path}.kind`);
}

/** Whether the script says that nothing is filtered here: of the chain as a whole, or of each of its filters. */
export function isUnfiltered(view: CraftView, chain: ChainName): boolean {
  if (isSwitchedOff(view, chain)) return true;
  const stages = stagesOf(view, chain);
  return stages.length > 0 && stages.every((stage) => kindOf(view, stage) === 'none');
}

function isSwitchedOff(view: CraftView, chain: ChainName): boolean {
  const path = `${chain}.chain`;
  return view.isSet(path) && view.word(path) === 'none';
}

/** Whether the script says anything of a chain. Nothing said is not known, and not unfiltered. */
export function isSaid(view: CraftView, chain: ChainName): boolean {
  return isSwitchedOff(view, chain) || stagesOf(view, chain).length > 0;
}

/** Where a script says that nothing is filtered. */
export function unfilteredAt(view: CraftView, chain: ChainName): string {
  const [first] = stagesOf(view, chain);
  return first === undefined || isSwitchedOff(view, chain) ? `${chain}.chain` : `${first.path}.kind`;
}

/** The cutoff of a stage that lets the low end through, Hz; null for another kind and where it is unknown. */
export function lowpassCutoff(view: CraftView, stage: Stage): number | null {
  return isLowpass(kindOf(view, stage)) ? view.quantity(`${stage.path}.cutoff`) : null;
}

/** The one of some stages that lets the low end through and cuts lowest. */
export function lowestLowpass(
  view: CraftView,
  stages: readonly Stage[],
): { readonly stage: Stage; readonly cutoff: number } | null {
  const lowpasses = stages.flatMap((stage) => {
    const cutoff = lowpassCutoff(view, stage);
    return cutoff === null ? [] : [{ stage, cutoff }];
  });
  return lowpasses.sort((one, other) => one.cutoff - other.cutoff)[0] ?? null;
}

export function isLowpass(kind: string | null): boolean {
  return kind === 'first-order' || kind === 'butterworth';
}

/** What each kind needs beside itself. */
export const neededBy: ReadonlyMap<string, readonly string[]> = new Map([
  ['first-order', ['cutoff']],
  ['butterworth', ['cutoff']],
  ['notch', ['centre', 'width']],
  ['follow-motors', ['tones', 'from', 'width']],
  ['follow-noise', ['count', 'from', 'to', 'width']],
  ['none', []],
]);

/** What a kind can take beside what it needs. */
export const takenBy: ReadonlyMap<string, readonly string[]> = new Map([
  ['follow-motors', ['blade-tone']],
  ['follow-noise', ['interval']],
]);

/** Every setting of a filter but its kind. */
export const filterSettings: readonly string[] = [
  ...new Set([...neededBy.values(), ...takenBy.values()].flat()),
];
