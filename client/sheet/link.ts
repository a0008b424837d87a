import type { Target } from '../../server/src/sheet/target';
import { element } from '../page/element';
import { send } from './extension-side';
import { placeMark } from './lit';

/** Leads to a line of the script, and says which. */
export function lineLink(target: Target): HTMLElement {
  return leading(target, 'link', `go to line ${target.line + 1}`, `line ${target.line + 1}`);
}

/** A value that leads to the line it comes from: plain to read, a link to the mouse and to keys. */
export function valueLink(target: Target | null, about: string, text: string): HTMLElement {
  if (target === null) return element('span', {}, text);
  return leading(target, 'value', `${about}: go to line ${target.line + 1}`, text);
}

function leading(target: Target, name: string, label: string, text: string): HTMLElement {
  return element(
    'button',
    {
      type: 'button',
      class: name,
      'data-at': placeMark(target),
      'aria-label': label,
      title: name === 'value' ? `Line ${target.line + 1}` : false,
      onclick: () => send({ kind: 'go', target }),
    },
    text,
  );
}
