import type { PackCell, PackRow, WhichPack } from '../../../server/src/sheet/which-pack';
import { element } from '../element';
import { lineLink } from '../link';

export function whichPack({ columns, rows, caution }: WhichPack): readonly HTMLElement[] {
  if (columns.length === 0) {
    return [
      element(
        'p',
        { class: 'aside' },
        'Name a pack to see what it does: [pack.sprint] with chemistry, cells and capacity.',
      ),
    ];
  }
  const head = element(
    'tr',
    {},
    element('td', {}),
    ...columns.map((name) => element('th', { scope: 'col' }, name)),
  );
  const table = element('table', {}, element('thead', {}, head), element('tbody', {}, ...rows.map(row)));
  return [
    element(
      'div',
      { class: 'scroller', tabindex: '0', role: 'region', 'aria-label': 'Packs side by side' },
      table,
    ),
    element('p', { class: 'aside' }, caution),
  ];
}

function row({ title, cells }: PackRow): HTMLElement {
  return element('tr', {}, element('th', { scope: 'row' }, title), ...cells.map((one) => cell(title, one)));
}

function cell(title: string, one: PackCell | null): HTMLElement {
  if (one === null) return element('td', { class: 'none' }, '–');
  const { text, target, figure } = one;
  const shown = target === null ? element('span', {}, text) : lineLink(target, `${title} ${text}`, text);
  const span = figure === null || figure.low === figure.high ? null : element('small', {}, spanText(figure));
  const made = element('td', {}, shown, span);
  if (figure !== null) made.title = figure.why;
  return made;
}

function spanText({ low, high }: { low: number; high: number }): string {
  return ` ${Number(low.toPrecision(3))}–${Number(high.toPrecision(3))}`;
}
