import type { Region } from '../../../catalog/model/hardware';
import type { CraftView } from '../../../craft/view';
import { parseQuantity } from '../../../units/quantity';
import { listed } from '../../report/listed';

/** A band that is open to this pilot; Hz, and W of radiated power. */
export interface Permit {
  readonly from: number;
  readonly to: number;
  readonly limit: number;
  readonly licence: 'none' | 'amateur';
  /** What is not known for sure about it; null: nothing. */
  readonly unsure: string | null;
}

/** The region that stands for every country without a list of its own. */
export const unlisted = 'elsewhere';

/** What the region opens with the pilot's licence; null where the region is not known. */
export function permits(view: CraftView): readonly Permit[] | null {
  const region = view.catalog.region(view.word('rules.region') ?? '');
  const licence = view.word('rules.licence');
  return region === undefined || licence === null ? null : permitsIn(region, licence);
}

/** What a region opens with a licence, or with none. */
export function permitsIn(region: Region, licence: string): readonly Permit[] {
  return region.permits
    .filter((permit) => permit.licence === 'none' || permit.licence === licence)
    .flatMap((permit) => {
      const [from, to, limit] = [permit.from, permit.to, permit.limit].map(
        (text) => parseQuantity(text)?.value,
      );
      if (from === undefined || to === undefined || limit === undefined) return [];
      return [{ from, to, limit, licence: permit.licence, unsure: permit.unsure ?? null }];
    });
}

interface Carrier {
  readonly frequency: number;
  readonly halfWidth: number;
}

export function isCentreIn({ from, to }: Permit, { frequency }: Carrier): boolean {
  return frequency >= from && frequency <= to;
}

export function isWholeIn({ from, to }: Permit, { frequency, halfWidth }: Carrier): boolean {
  return frequency - halfWidth >= from && frequency + halfWidth <= to;
}

/** Whether any part of the picture lies in it. */
export function isTouchedBy({ from, to }: Permit, { frequency, halfWidth }: Carrier): boolean {
  return frequency + halfWidth > from && frequency - halfWidth < to;
}

/** Follows "the rules open". */
export function licenceText(view: CraftView): string {
  const licence = view.word('rules.licence');
  return licence === 'none' || licence === null ? 'without a licence' : `with an ${licence} licence`;
}

/** "5725 MHz to 5875 MHz": the bands near a frequency, or all where none is. */
export function bandsText(view: CraftView, open: readonly Permit[], frequency: number): string {
  const near = open.filter(({ from, to }) => frequency > from / 1.3 && frequency < to * 1.3);
  const shown = near.length === 0 ? open : near;
  return listed(shown.map(({ from, to }) => `${view.exact(from, 'MHz')} to ${view.exact(to, 'MHz')}`));
}
