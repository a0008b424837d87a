import type { SheetPart } from '../../../server/src/sheet/build-sheet';
import { canItFly } from './can-it-fly';
import { learned } from './learned';
import { figureTable, whichPack } from './which-pack';
import { wiredWhere } from './wired-where';

/** What a part shows below its question. */
export function partContent(part: SheetPart): readonly HTMLElement[] {
  switch (part.id) {
    case 'can-it-fly':
      return canItFly(part);
    case 'wired-where':
      return wiredWhere(part);
    case 'my-hands':
    case 'how-late':
    case 'stay-cool':
    case 'who-sees-me':
      return figureTable(part);
    case 'which-pack':
      return whichPack(part);
    case 'learned':
      return learned(part);
  }
}
