import { quantityText } from './common';
import * as z from './plain-zod';

/** What a column holds: a channel, the clock or parts of its counts. */
const channelName = z
  .string()
  .check(
    z.regex(
      /^(?:time|time-parts|throttle|voltage|current|frames|(?:unfiltered-)?gyro\.(?:roll|pitch|yaw)|wanted\.(?:roll|pitch|yaw)|(?:motor|speed)\.[1-9]\d?)$/,
    ),
  );

const number = z.number();

/** What one column holds and how its numbers count. */
const layoutColumn = z.strictObject({
  heading: z.string().check(z.maxLength(500), z.describe('As the file prints it, or "column 3".')),
  channel: z
    .optional(channelName)
    .check(
      z.describe('What it holds: time, gyro.roll, motor.1, voltage, …; left out for what nobody asks for.'),
    ),
  unit: z
    .optional(z.string())
    .check(z.describe('The unit of its numbers, as scripts write it: deg/s, us, mV.')),
  scale: z
    .optional(number.check(z.positive()))
    .check(z.describe('How many of the unit one count is; left out for one.')),
  zero: z.optional(number).check(z.describe('What the logger writes for nothing, or for a motor at idle.')),
  full: z.optional(number).check(z.describe('What it writes for full: of motors and throttle alone.')),
  reversed: z
    .optional(z.boolean())
    .check(z.describe('Whether its sign is the other one: more is right, nose up, clockwise.')),
});

/** `recordings/<name>.json`: what the columns of one logger hold, as a pilot has confirmed it. */
export const recordingLayout = z.strictObject({
  $schema: z.optional(z.string()),
  version: z.literal(1),
  rate: z
    .optional(quantityText)
    .check(z.describe('Rows a second, "1000 Hz", of a logger that writes no time.')),
  columns: z.array(layoutColumn).check(z.minLength(1), z.maxLength(2000)),
});

export type RecordingLayout = z.infer<typeof recordingLayout>;
export type LayoutColumn = z.infer<typeof layoutColumn>;
