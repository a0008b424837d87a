import type { Catalog } from '../catalog/catalog';
import { inputKeys } from './keys';
import { membershipsIn } from './memberships';

/** What changes with a key of a script besides the key itself. */
export function* widerInputs(key: string, catalog: Catalog): Iterable<string> {
  if (inputKeys.isSetting(key)) {
    const path = inputKeys.pathIn(key);
    // What holds for all packs holds only as long as no line says otherwise for one of them.
    if (inputKeys.isForOnePack(key)) yield inputKeys.setting(path);
    for (const member of membershipsIn(path, catalog)) yield inputKeys.ofMany(path, member);
  } else if (inputKeys.isSection(key)) {
    for (const { collection } of membershipsIn(inputKeys.sectionIn(key), catalog))
      yield inputKeys.headers(collection);
  }
}
