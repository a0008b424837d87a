import { element } from '../page/element';
import { readState, writeState } from './extension-side';
import { hold, kept } from './kept';

export interface Fold {
  /** Unique on the page. */
  readonly id: string;
  readonly name: string;
  readonly isOpenAtFirst: boolean;
}

/** Something that can be folded away; it stands as the pilot left it, whatever it holds by now. */
export function fold(
  plan: Fold,
  summary: readonly HTMLElement[],
  content: readonly HTMLElement[],
): HTMLElement {
  const made = kept(`fold ${plan.id}`, plan.name, () => emptyFold(plan));
  const [head, inside] = made.children;
  if (head !== undefined) hold(head, summary);
  if (inside !== undefined) hold(inside, content);
  return made;
}

function emptyFold({ id, name, isOpenAtFirst }: Fold): HTMLElement {
  const isOpen = readState().toggled.includes(id) ? !isOpenAtFirst : isOpenAtFirst;
  const made = element(
    'details',
    { id, class: name, open: isOpen },
    element('summary', {}),
    element('div', { class: 'inside' }),
  );
  made.addEventListener('toggle', () => remember(id, made.open !== isOpenAtFirst));
  return made;
}

function remember(id: string, isToggled: boolean): void {
  const others = readState().toggled.filter((one) => one !== id);
  writeState({ toggled: isToggled ? [...others, id] : others });
}
