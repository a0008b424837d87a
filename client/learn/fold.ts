import { element } from '../page/element';

/** A button that opens what is folded, and folds it again. `toggled`: told each time. */
export function foldButton(text: string, toggled: (isOpen: boolean) => void): HTMLElement {
  let isOpen = false;
  const button = element('button', { type: 'button', class: 'fold', 'aria-expanded': 'false' }, text);
  button.addEventListener('click', () => {
    isOpen = !isOpen;
    button.setAttribute('aria-expanded', String(isOpen));
    toggled(isOpen);
  });
  return button;
}
