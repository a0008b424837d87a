import type { Bundle } from './model/bundle';

/** The data of `schemas/` as JSON, or the name of the file that holds it: put in and checked by the build. */
declare const PROPSOFF_CATALOG: string;

/**
 * The data that ships with Propsoff. Only a built bundle has it; tests compile their own. `read`: gives the
 * JSON of a file, where the build put in a name.
 */
export function builtInBundle(read: (text: string) => string = (text) => text): Bundle {
  return JSON.parse(read(PROPSOFF_CATALOG)) as Bundle;
}
