import type { Bundle } from './model/bundle';

/** The data of `schemas/` as JSON, packed or as it is, put in by the build and checked there. */
declare const PROPSOFF_CATALOG: string;

/**
 * The data that ships with Propsoff. Only a built bundle has it; tests compile their own. `read`: makes JSON of
 * what the build put in, where that is packed.
 */
export function builtInBundle(read: (text: string) => string = (text) => text): Bundle {
  return JSON.parse(read(PROPSOFF_CATALOG)) as Bundle;
}
