import { element } from '../page/element';

/** Wide tables scroll in their own frame, by keys too. */
export function scroller(label: string, table: HTMLElement): HTMLElement {
  return element('div', { class: 'scroller', tabindex: '0', role: 'region', 'aria-label': label }, table);
}
