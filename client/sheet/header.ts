import type { BuildSheet, PackLabel } from '../../server/src/sheet/build-sheet';
import { element } from '../page/element';
import { send } from './extension-side';

/** The craft's name, what it is, and the packs to pick from. */
export function header({ name, about, readAs, packs, packInView }: Omit<BuildSheet, 'parts'>): HTMLElement {
  const group = element(
    'div',
    { class: 'packs', role: 'group', 'aria-label': 'Pack in view' },
    ...packs.map((pack) => packButton(pack, pack.name === packInView)),
  );
  return element(
    'header',
    {},
    element('h1', {}, name),
    about.length === 0 ? null : element('p', {}, about.join(' · ')),
    packs.length === 0 ? null : group,
    readAs === 'whole' ? findButton() : null,
    ...packs.flatMap(refusalText),
  );
}

/** What to set is asked on a page of its own. */
function findButton(): HTMLElement {
  const find = () => send({ kind: 'find-value' });
  return element('p', {}, element('button', { type: 'button', onclick: find }, 'Find a Value'));
}

/** Greyed packs say why. */
function refusalText({ name, refusal }: PackLabel): readonly HTMLElement[] {
  return refusal === null ? [] : [element('p', { id: `refused-${name}` }, refusal)];
}

function packButton({ name, detail, refusal }: PackLabel, isInView: boolean): HTMLElement {
  return element(
    'button',
    {
      type: 'button',
      class: refusal === null ? false : 'refused',
      'aria-pressed': String(isInView),
      'aria-describedby': refusal === null ? false : `refused-${name}`,
      onclick: () => send({ kind: 'pack', pack: name }),
    },
    name,
    detail === '' ? null : element('span', { class: 'detail' }, ` ${detail}`),
  );
}
