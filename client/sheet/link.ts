import type { Target } from '../../server/src/sheet/target';
import { element } from '../page/element';
import { lineWords } from '../page/words';
import { send } from './extension-side';
import { placeMark } from './lit';

let home = '';

/** Of which script the sheet is: of other files the name is said. */
export function linksAreFor(uri: string): void {
  home = uri;
}

/** Leads to a line of the script, and says which. */
export function lineLink(target: Target): HTMLElement {
  const words = lineWords(target, home);
  return leading(target, 'link', `go to ${words}`, words);
}

/** A value that leads to the line it comes from: plain to read, a link to the mouse and to keys. */
export function valueLink(target: Target | null, about: string, text: string): HTMLElement {
  if (target === null) return element('span', {}, text);
  return leading(target, 'value', `${about}: go to ${lineWords(target, home)}`, text);
}

function leading(target: Target, name: string, label: string, text: string): HTMLElement {
  return element(
    'button',
    {
      type: 'button',
      class: name,
      'data-at': placeMark(target),
      'aria-label': label,
      title: name === 'value' ? capitalised(lineWords(target, home)) : false,
      onclick: () => send({ kind: 'go', target }),
    },
    text,
  );
}

/** A file's name stays as it is. */
function capitalised(words: string): string {
  return words.replace(/^line /, 'Line ');
}
