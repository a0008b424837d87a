import { boardTextHalf } from './board-text';
import { nameText, prose, quantityText, source } from './common';
import * as z from './plain-zod';

const port = z.strictObject({
  name: nameText,
  directions: z.array(z.enum(['in', 'out'])).min(1),
  /** Whether the port can read (in) or write (out) an inverted signal. */
  invertedIn: z.boolean(),
  invertedOut: z.boolean(),
  /** What else uses the port's pins, if anything: "USB set-up". */
  sharedWith: z.string().optional(),
});

const rail = z.strictObject({
  name: nameText,
  /** null: as the pack delivers. */
  voltage: quantityText.nullable(),
  /** null: as much as the pack and the leads bear. */
  currentLimit: quantityText.nullable(),
});

/** A board profile: what the board has, and how it writes its settings. */
export const board = z.strictObject({
  name: nameText,
  title: z.string(),
  summary: prose,
  ports: z.array(port).min(1),
  /** Clock that the ports divide by whole numbers to get their line speeds, where the maker tells. */
  serialClock: quantityText.optional(),
  motorOutputs: z.number().int().positive(),
  rails: z.array(rail).min(1),
  gyro: z.strictObject({
    rates: z.array(quantityText).min(1),
    fullScale: quantityText,
    bits: z.number().int().positive(),
  }),
  packInput: z.strictObject({
    dividerUpper: quantityText,
    dividerLower: quantityText,
    reference: quantityText,
    mostCells: z.number().int().positive(),
    currentShunt: z.boolean(),
  }),
  /** null: the board keeps no log. */
  log: z.strictObject({ medium: nameText, size: quantityText }).nullable(),
  overlay: z.boolean(),
  sensors: z.array(z.enum(['barometer', 'compass'])),
  ...boardTextHalf,
  source,
});

/** A serial link between the board and a device. */
export const link = z.strictObject({
  name: nameText,
  title: z.string(),
  summary: prose,
  uses: z.array(z.enum(['receiver', 'telemetry', 'position', 'video', 'esc'])).min(1),
  baud: quantityText,
  dataBits: z.number().int(),
  parity: z.enum(['none', 'even', 'odd']),
  stopBits: z.number().int(),
  inverted: z.boolean(),
  /** Whether the link talks both ways on its port, one way into the board, or one way out of it. */
  directions: z.enum(['in', 'out', 'both']),
  supply: z.array(quantityText),
  /** Bytes of the usual frame. */
  frameBytes: z.number().int().positive(),
  frameInterval: quantityText,
  channels: z.number().int().optional(),
  source,
});

/** A way to tell a speed controller how fast to turn. */
export const signal = z.strictObject({
  name: nameText,
  title: z.string(),
  summary: prose,
  kind: z.enum(['digital', 'pulse']),
  /** digital: bits a frame and bits a second. */
  frameBits: z.number().int().optional(),
  bitRate: quantityText.optional(),
  /** digital: pause needed after a frame. */
  gap: quantityText.optional(),
  /** digital, with speed feedback: turn-around and bits of the answer, its rate relative to the command's. */
  answer: z
    .strictObject({ turnAround: quantityText, bits: z.number().int(), rateRatio: z.number().positive() })
    .optional(),
  /** pulse: shortest and longest. */
  shortest: quantityText.optional(),
  longest: quantityText.optional(),
  source,
});

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
  risk: prose,
  source,
});

export const gauge = z.strictObject({
  name: nameText,
  /** The trade's number. */
  number: z.number().int(),
  diameter: quantityText,
  /** At 20 degC, a metre. */
  resistance: quantityText,
  /** Lasting current in a short lead of a model craft. */
  usualCurrent: quantityText,
  source,
});

export const grid = z.strictObject({
  name: nameText,
  title: z.string(),
  summary: prose,
  columns: z.number().int().positive(),
  rows: z.number().int().positive(),
  source,
});

export const videoBand = z.strictObject({
  name: nameText,
  title: z.string(),
  summary: prose,
  /** MHz, channel 1 first. */
  channels: z.array(quantityText).min(1),
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
  source,
});

export const region = z.strictObject({
  name: nameText,
  title: z.string(),
  summary: prose,
  permits: z.array(permit).min(1),
});

/** A propeller that was measured standing still; see `physics/propeller.ts` for the coefficients. */
export const measuredPropeller = z.strictObject({
  diameter: quantityText,
  pitch: quantityText,
  blades: z.number().int().min(2),
  thrustCoefficient: z.number().positive(),
  powerCoefficient: z.number().positive(),
});

export const hardwareFiles = {
  links: z.strictObject({ links: z.array(link).min(1) }),
  signals: z.strictObject({ signals: z.array(signal).min(1) }),
  chemistries: z.strictObject({ chemistries: z.array(chemistry).min(1) }),
  gauges: z.strictObject({ gauges: z.array(gauge).min(1) }),
  grids: z.strictObject({ grids: z.array(grid).min(1) }),
  videoBands: z.strictObject({ bands: z.array(videoBand).min(1) }),
  regions: z.strictObject({ regions: z.array(region).min(1) }),
  propellers: z.strictObject({ propellers: z.array(measuredPropeller).min(1), source }),
};

export type Board = z.infer<typeof board>;
export type Port = Board['ports'][number];
export type Link = z.infer<typeof link>;
export type Signal = z.infer<typeof signal>;
export type Chemistry = z.infer<typeof chemistry>;
export type Gauge = z.infer<typeof gauge>;
export type Grid = z.infer<typeof grid>;
export type VideoBand = z.infer<typeof videoBand>;
export type MeasuredPropeller = z.infer<typeof measuredPropeller>;
export type Region = z.infer<typeof region>;
