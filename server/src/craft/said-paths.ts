import type { Catalog } from '../catalog/catalog';
import type { Script } from './script';

/** Which parameters the lines of a craft speak of at all. */
export interface SaidPaths {
  /** Those that some line sets for any pack; null where a misspelt name may mean any parameter. */
  readonly set: ReadonlySet<string> | null;
  /** Those that may hold something else with another pack in view; null: any. */
  readonly overlaid: ReadonlySet<string> | null;
}

/** Goes through every line of the scripts once: for crafts that are looked at as a whole. */
export function saidPathsIn(scripts: Iterable<Script>, catalog: Catalog): SaidPaths {
  const set = new Set<string>();
  const overlaid = new Set<string>();
  let isMisspelt = false;
  let isOverlayMisspelt = false;
  for (const script of scripts) {
    for (const { section, settingPath } of script.document.lines()) {
      if (settingPath === null) continue;
      const isKnown = catalog.parameter(settingPath) !== undefined;
      isMisspelt ||= !isKnown;
      set.add(settingPath);
      if (section.pack === null) continue;
      isOverlayMisspelt ||= !isKnown;
      overlaid.add(settingPath);
    }
  }
  return { set: isMisspelt ? null : set, overlaid: isOverlayMisspelt ? null : overlaid };
}
