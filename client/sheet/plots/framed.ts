import { element } from '../../page/element';

interface Caption {
  readonly title: string;
  /** Beside the title. */
  readonly beside?: HTMLElement;
}

/** A plot with its title above it. */
export function framed({ title, beside }: Caption, ...inside: readonly HTMLElement[]): HTMLElement {
  const caption = element('figcaption', {}, element('h3', {}, title), beside ?? null);
  return element('figure', { class: 'plot' }, caption, ...inside);
}

/** What it comes to in all, beside a plot's title. */
export function total(text: string): HTMLElement {
  return element('span', { class: 'total' }, text);
}
