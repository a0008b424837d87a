import type { Target } from '../../server/src/sheet/target';
import { element } from './element';
import { send } from './host';

/** Leads to a line of the script. `about` says to a screen reader what the line is about. */
export function lineLink(target: Target, about: string, text = `line ${target.line + 1}`): HTMLElement {
  return element(
    'button',
    {
      type: 'button',
      class: 'link',
      'aria-label': `${about}: go to line ${target.line + 1}`,
      onclick: () => send({ kind: 'go', target }),
    },
    text,
  );
}
