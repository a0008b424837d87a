import { element } from '../page/element';
import { readState, writeState } from './extension-side';

export interface Fold {
  /** Unique on the page. */
  readonly id: string;
  readonly name: string;
  readonly isOpenAtFirst: boolean;
}

/** Something that can be folded away; it stands as the pilot left it, also when it is drawn again. */
export function fold(
  { id, name, isOpenAtFirst }: Fold,
  summary: readonly HTMLElement[],
  content: readonly Node[],
): HTMLDetailsElement {
  const isOpen = readState().toggled.includes(id) ? !isOpenAtFirst : isOpenAtFirst;
  const made = element(
    'details',
    { id, class: name, open: isOpen },
    element('summary', {}, ...summary),
    element('div', { class: 'inside' }, ...content),
  );
  made.addEventListener('toggle', () => remember(id, made.open !== isOpenAtFirst));
  return made;
}

function remember(id: string, isToggled: boolean): void {
  const others = readState().toggled.filter((one) => one !== id);
  writeState({ toggled: isToggled ? [...others, id] : others });
}
