import type { Catalog } from '../catalog/catalog';
import { inputKeys } from './keys';
import type { Script } from './script';

/** Which parameters may hold something else with another pack in view. */
export interface Overlaid {
  has(path: string): boolean;
}

const none: Overlaid = new Set();

/** The parameters that lines of some scripts set for one pack only. Goes through every line of a script with overlays. */
export function overlaidIn(scripts: Iterable<Script>, catalog: Catalog): Overlaid {
  const paths = new Set<string>();
  for (const script of scripts) {
    if (!script.has(inputKeys.overlay)) continue;
    for (const { section, settingPath } of script.document.lines()) {
      if (section.pack === null || settingPath === null) continue;
      // A misspelt name may mean any parameter.
      if (catalog.parameter(settingPath) === undefined) return { has: () => true };
      paths.add(settingPath);
    }
  }
  return paths.size === 0 ? none : paths;
}
