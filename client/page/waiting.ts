import { element } from './element';

/** What a page tells until it has its first answer; it is seen only where that takes long, as on a slow drive. */
export function waiting(): HTMLElement {
  return element('p', { class: 'aside waiting' }, 'The script and what it includes are being read…');
}
