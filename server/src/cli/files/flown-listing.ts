import type { Confirmation, Confirmed } from '../../board/learn/said';
import type { Listing } from '../../board/listing/listing';
import type { Catalog } from '../../catalog/catalog';
import type { Learned } from '../../features/board/learning';
import type { FamilyMeasured } from '../../features/board/measured-counts';

/** A listing with what is said and proposed of it. */
export interface KnownListing {
  readonly listing: Listing;
  readonly understood: Learned;
  readonly confirmed: Confirmed;
  readonly catalog: Catalog;
}

/** What a recording says of the gains of a listing, with what it was read from. */
export interface MeasuredListing {
  readonly families: readonly FamilyMeasured[];
  /** Why nothing was measured, as sentences; null where something was. */
  readonly why: string | null;
  /** `dusk.csv`, or which of its flights. */
  readonly flown: string;
  readonly craft: string;
}

/** What is confirmed once the listing is what was flown: in the place of a part that a setting only plays. */
export function withFlown(confirmed: Confirmed, families: readonly FamilyMeasured[]): Confirmed {
  const settings = new Map(confirmed.settings);
  for (const { numbers } of families)
    for (const { key, means, row } of numbers) {
      const said = settings.get(key);
      const isSaid = said?.some((one) => one.isRole !== true && one.counted !== undefined) === true;
      if (row?.counts === undefined || isSaid) continue;
      const { unit, scale } = row.counts;
      const counted = { ...(unit === undefined ? {} : { unit }), ...(scale === undefined ? {} : { scale }) };
      settings.set(key, [{ means, counted } satisfies Confirmation]);
    }
  return { ...confirmed, settings };
}
