import { nameText, prose, quantityText, source } from './common';
import * as z from './plain-zod';

/** A serial link between the board and a device. */
export const link = z.strictObject({
  name: nameText,
  title: z.string(),
  summary: prose,
  uses: z.array(z.enum(['receiver', 'telemetry', 'position', 'video', 'esc'])).check(z.minLength(1)),
  baud: quantityText,
  dataBits: z.int(),
  parity: z.enum(['none', 'even', 'odd']),
  stopBits: z.int(),
  inverted: z.boolean(),
  /** Whether the link talks both ways on its port, one way into the board, or one way out of it. */
  directions: z.enum(['in', 'out', 'both']),
  supply: z.array(quantityText),
  /** Bytes of the usual frame. */
  frameBytes: z.int().check(z.positive()),
  frameInterval: quantityText,
  channels: z.optional(z.int()),
  source,
});

/** A way to tell a speed controller how fast to turn. */
export const signal = z.strictObject({
  name: nameText,
  title: z.string(),
  summary: prose,
  kind: z.enum(['digital', 'pulse']),
  /** digital: bits a frame and bits a second. */
  frameBits: z.optional(z.int()),
  bitRate: z.optional(quantityText),
  /** digital: pause needed after a frame. */
  gap: z.optional(quantityText),
  /** digital, with speed feedback: turn-around and bits of the answer, its rate relative to the command's. */
  answer: z.optional(
    z.strictObject({ turnAround: quantityText, bits: z.int(), rateRatio: z.number().check(z.positive()) }),
  ),
  /** pulse: shortest and longest. */
  shortest: z.optional(quantityText),
  longest: z.optional(quantityText),
  source,
});

const restPoint = z.strictObject({ charge: quantityText, voltage: quantityText });

export const chemistry = z.strictObject({
  name: nameText,
  title: z.string(),
  summary: prose,
  full: quantityText,
  nominal: quantityText,
  warn: quantityText,
  land: quantityText,
  storage: quantityText,
  empty: quantityText,
  /** What a cell shows that has rested, by the charge that it holds: from empty to full. */
  atRest: z.optional(z.array(restPoint).check(z.minLength(2))),
  risk: prose,
  source,
});

export const gauge = z.strictObject({
  name: nameText,
  /** The trade's number. */
  number: z.int(),
  diameter: quantityText,
  /** At 20 degC, a metre. */
  resistance: quantityText,
  /** Continuous current in a short lead of a model craft. */
  usualCurrent: quantityText,
  source,
});

export const grid = z.strictObject({
  name: nameText,
  title: z.string(),
  summary: prose,
  columns: z.int().check(z.positive()),
  rows: z.int().check(z.positive()),
  source,
});

export const videoBand = z.strictObject({
  name: nameText,
  title: z.string(),
  summary: prose,
  /** MHz, channel 1 first. */
  channels: z.array(quantityText).check(z.minLength(1)),
  /** Width taken on either side of the centre. */
  halfWidth: quantityText,
  source,
});

const permit = z.strictObject({
  from: quantityText,
  to: quantityText,
  /** Highest e.i.r.p. */
  limit: quantityText,
  licence: z.enum(['none', 'amateur']),
  text: prose,
  /** What is not known for sure about this row: told to whoever sends here. */
  unsure: z.optional(prose),
  source,
});

export const region = z.strictObject({
  name: nameText,
  title: z.string(),
  summary: prose,
  permits: z.array(permit).check(z.minLength(1)),
});

/** A propeller that was measured standing still; see `physics/propeller.ts` for the coefficients. */
export const measuredPropeller = z.strictObject({
  /** A number for the makers' shapes: those with one number are of one make. */
  make: z.int().check(z.positive()),
  diameter: quantityText,
  pitch: quantityText,
  blades: z.int().check(z.gte(2)),
  thrustCoefficient: z.number().check(z.positive()),
  powerCoefficient: z.number().check(z.positive()),
});

export const hardwareFiles = {
  links: z.strictObject({ links: z.array(link).check(z.minLength(1)) }),
  signals: z.strictObject({ signals: z.array(signal).check(z.minLength(1)) }),
  chemistries: z.strictObject({ chemistries: z.array(chemistry).check(z.minLength(1)) }),
  gauges: z.strictObject({ gauges: z.array(gauge).check(z.minLength(1)) }),
  grids: z.strictObject({ grids: z.array(grid).check(z.minLength(1)) }),
  videoBands: z.strictObject({ bands: z.array(videoBand).check(z.minLength(1)) }),
  regions: z.strictObject({ regions: z.array(region).check(z.minLength(1)) }),
  propellers: z.strictObject({ propellers: z.array(measuredPropeller).check(z.minLength(1)), source }),
};

export type Link = z.infer<typeof link>;
export type Signal = z.infer<typeof signal>;
export type Chemistry = z.infer<typeof chemistry>;
export type Gauge = z.infer<typeof gauge>;
export type Grid = z.infer<typeof grid>;
export type VideoBand = z.infer<typeof videoBand>;
export type MeasuredPropeller = z.infer<typeof measuredPropeller>;
export type Region = z.infer<typeof region>;
