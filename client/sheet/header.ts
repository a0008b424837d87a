import type { BuildSheet } from '../../server/src/sheet/build-sheet';
import { element } from './element';
import { send } from './host';

/** The craft's name, what it is, and the packs to pick from. */
export function header({ name, about, packs, packInView }: BuildSheet): HTMLElement {
  const buttons = packs.map((pack) =>
    element(
      'button',
      {
        type: 'button',
        'aria-pressed': String(pack.name === packInView),
        onclick: () => send({ kind: 'pack', pack: pack.name }),
      },
      pack.detail === '' ? pack.name : `${pack.name} · ${pack.detail}`,
    ),
  );
  const group = element('div', { class: 'packs', role: 'group', 'aria-label': 'Pack in view' }, ...buttons);
  return element(
    'header',
    {},
    element('h1', {}, name),
    about.length === 0 ? null : element('p', {}, about.join(' · ')),
    packs.length === 0 ? null : group,
  );
}
