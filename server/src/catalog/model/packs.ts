import { quantityText, source } from './common';
import * as z from './plain-zod';

const share = z.number().check(z.positive());

/** What is likely, and the span that holds it nine times of ten: all of one kind. */
const spread = z.strictObject({ low: share, likely: share, high: share });

/** Of one cell of 1 Ah, with factors down and up. */
const packKind = z.strictObject({ resistance: quantityText, low: share, high: share });

const coldRow = z.strictObject({
  temperature: quantityText,
  low: share,
  likely: share,
  high: share,
});

/** What is known of packs beside what their chemistry says. */
export const packFile = z.strictObject({
  /** Packs for full throttle, packs for range, and packs of which nobody says which they are. */
  kinds: z.strictObject({ quick: packKind, lasting: packKind, either: packKind }),
  /** A pack that may be emptied faster than this is one for full throttle. */
  quickRating: quantityText,
  kindsSource: source,
  /** How many times the resistance of the first second a pack has after ten: what it flies with. */
  inFlight: spread,
  inFlightSource: source,
  /** A pack gives so much of its printed charge. */
  charge: z.strictObject({ low: share, high: share }),
  /** A charger's figure of its resistance is off by this factor at most. */
  charger: share,
  chargeSource: source,
  cold: z.strictObject({
    /** From here up a pack is as it is known. */
    asKnown: quantityText,
    /** How cold a cold pack is where a script doesn't say. */
    usual: quantityText,
    /** By which resistance rises with the cold, kJ/mol. */
    activation: spread,
    /** Shares of its charge that a pack gives, from the coldest up. */
    charge: z.array(coldRow).check(z.minLength(2)),
  }),
  coldSource: source,
});

export type PackFile = z.infer<typeof packFile>;
export type PackKind = keyof PackFile['kinds'];
