import { element } from '../page/element';

/** Figures whose reason stands open. */
const asked = new Set<string>();

/** A figure's title, and the row below it that says on demand how it comes about: it is drawn when it is asked for. */
export function withReason(
  figure: string,
  title: string,
  columns: number,
  draw: () => readonly (HTMLElement | null)[],
): { readonly button: HTMLElement; readonly row: HTMLElement } {
  const place = element('td', { colspan: String(columns) });
  const row = element('tr', { class: 'why', id: `${figure}-why` }, place);
  const button = element(
    'button',
    {
      type: 'button',
      class: 'title',
      title: 'Why?',
      'aria-controls': row.id,
      onclick: () => {
        if (!asked.delete(figure)) asked.add(figure);
        show();
      },
    },
    title,
  );
  const show = () => {
    const isAsked = asked.has(figure);
    row.hidden = !isAsked;
    button.setAttribute('aria-expanded', String(isAsked));
    place.replaceChildren(...(isAsked ? draw() : []).flatMap((one) => one ?? []));
  };
  show();
  return { button, row };
}
