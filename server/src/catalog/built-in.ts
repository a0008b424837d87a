import type { Bundle } from './model/bundle';

/** The name of the file that holds the data of `schemas/`, which the build has checked. */
declare const PROPSOFF_CATALOG: string;

/** The data that ships with Propsoff. Only a built bundle has it; tests compile their own. `read`: gives a file's text. */
export function builtInBundle(read: (name: string) => string): Bundle {
  return JSON.parse(read(PROPSOFF_CATALOG)) as Bundle;
}
