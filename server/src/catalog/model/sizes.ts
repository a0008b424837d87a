import { quantityText, source } from './common';
import * as z from './plain-zod';

/** What is usual for craft of a size: what a script has as long as nobody has told or measured it. */
const craftSize = z.strictObject({
  title: z.string().check(z.minLength(3)),
  purpose: z.string(),
  /** Of the propeller: what such sizes are called by. */
  diameter: quantityText,
  pitch: quantityText,
  blades: z.int(),
  spacing: quantityText,
  /** Ready to fly, without a pack. */
  mass: quantityText,
  stator: z.tuple([quantityText, quantityText]),
  poles: z.int(),
  /** For the number of cells below. */
  kv: quantityText,
  cells: z.int(),
  chemistry: z.string(),
  capacity: quantityText,
  discharge: quantityText,
  /** One cell of the pack, with its share of lead and plug. */
  cellMass: quantityText,
});

/** `schemas/sizes.json` */
export const sizeFile = z.strictObject({ sizes: z.array(craftSize).check(z.minLength(1)), source });

export type CraftSize = z.infer<typeof craftSize>;
