import type { SheetPart } from '../../../server/src/sheet/build-sheet';
import { canItFly } from './can-it-fly';
import { whichPack } from './which-pack';
import { wiredWhere } from './wired-where';

/** What a part shows below its question. */
export function partContent(part: SheetPart): readonly HTMLElement[] {
  switch (part.id) {
    case 'can-it-fly':
      return canItFly(part);
    case 'wired-where':
      return wiredWhere(part);
    case 'which-pack':
      return whichPack(part);
  }
}
