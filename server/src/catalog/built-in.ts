import type { Bundle } from './model/bundle';

/** The data of `schemas/` as JSON, put in by the build. Checked there, so it is not checked again here. */
declare const PROPSOFF_CATALOG: string;

/** The data that ships with Propsoff. Only a built bundle has it; tests compile their own. */
export function builtInBundle(): Bundle {
  return JSON.parse(PROPSOFF_CATALOG) as Bundle;
}
