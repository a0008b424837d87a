import type { SheetPart } from '../../../server/src/sheet/build-sheet';
import { element } from '../../page/element';
import { send } from '../extension-side';
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
      return figureTable(part);
    case 'who-sees-me':
      return [...figureTable(part), channelsButton()];
    case 'which-pack':
      return whichPack(part);
    case 'learned':
      return learned(part);
  }
}

/** Where several fly together, each needs a channel of its own. */
function channelsButton(): HTMLElement {
  const find = () => send({ kind: 'find-channels' });
  const button = element('button', { type: 'button', onclick: find }, 'Find Video Channels');
  return element('p', { class: 'levers' }, 'For everybody who flies: ', button);
}
