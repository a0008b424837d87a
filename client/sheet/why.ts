import { element } from '../page/element';

/** Figures whose reason stands open. */
const asked = new Set<string>();

export function isAsked(figure: string): boolean {
  return asked.has(figure);
}

/** A figure's title, which shows or hides how it comes about. */
export function whyButton(figure: string, title: string, reason: HTMLElement): HTMLElement {
  const button = element(
    'button',
    {
      type: 'button',
      class: 'title',
      title: 'Why?',
      'aria-expanded': String(isAsked(figure)),
      'aria-controls': reason.id,
      onclick: () => {
        if (!asked.delete(figure)) asked.add(figure);
        reason.hidden = !isAsked(figure);
        button.setAttribute('aria-expanded', String(isAsked(figure)));
      },
    },
    title,
  );
  return button;
}
