import { nameText, quantityText } from './common';
import * as z from './plain-zod';

/** Of everything but its name, what is left out is not known. */
const port = z.strictObject({
  name: nameText,
  directions: z.optional(z.array(z.enum(['in', 'out'])).check(z.minLength(1))),
  invertedIn: z
    .optional(z.boolean())
    .check(z.describe('Whether it reads a signal that is turned upside down.')),
  invertedOut: z
    .optional(z.boolean())
    .check(z.describe('Whether it sends a signal that is turned upside down.')),
  sharedWith: z
    .optional(z.string())
    .check(z.describe('What else uses the pins of the port, if anything: "USB set-up".')),
});

const rail = z.strictObject({
  name: nameText,
  voltage: z.optional(z.nullable(quantityText)).check(z.describe('null: as the pack delivers.')),
  currentLimit: z
    .optional(z.nullable(quantityText))
    .check(z.describe('null: as much as the pack and the leads bear.')),
});

const gyro = z.strictObject({
  rates: z.optional(z.array(quantityText).check(z.minLength(1))),
  fullScale: z.optional(quantityText),
  bits: z.optional(z.int().check(z.positive())),
});

const packInput = z.strictObject({
  dividerUpper: z.optional(quantityText),
  dividerLower: z.optional(quantityText),
  reference: z.optional(quantityText),
  mostCells: z.optional(z.int().check(z.positive())),
  currentShunt: z.optional(z.boolean()).check(z.describe('Whether the board has an input for a shunt.')),
});

const log = z.strictObject({ medium: nameText, size: z.optional(quantityText) });

/** What a board has. A part that is left out is not known: nothing is said of it, and what needs it waits. */
export const hardware = z.strictObject({
  ports: z.optional(z.array(port).check(z.minLength(1))),
  serialClock: z
    .optional(quantityText)
    .check(
      z.describe(
        'Clock that the ports divide by whole numbers to get their line speeds, where the maker tells.',
      ),
    ),
  motorOutputs: z.optional(z.int().check(z.positive())),
  motorsAsPrinted: z
    .optional(z.array(nameText).check(z.minLength(1)))
    .check(
      z.describe(
        'Which motor stands at which output in the drawing that comes with the board, output one first.',
      ),
    ),
  rails: z.optional(z.array(rail).check(z.minLength(1))),
  gyro: z.optional(gyro),
  packInput: z.optional(packInput),
  log: z.optional(z.nullable(log)).check(z.describe('null: the board keeps no log.')),
  overlay: z.optional(z.boolean()),
  sensors: z.optional(z.array(z.enum(['barometer', 'compass']))).check(z.describe('Beside the gyro.')),
});

export type Hardware = z.infer<typeof hardware>;
export type Port = z.infer<typeof port>;
