import type { OverlayPicture } from '../../../server/src/sheet/plots/plot';
import { element } from '../../page/element';
import { valueLink } from '../link';
import { asTable } from './as-table';
import { canvas, framed, shape, sized, total, words } from './frame';

/** As wide as is worth looking at, in pixels. */
const widest = 420;

/** The character grid over an empty picture. */
export function overlayPicture(plot: OverlayPicture): HTMLElement {
  const { id, title, columns, rows, elements } = plot;
  const table = elements.map(({ title: name, sample, row, column, target }) => [
    name,
    valueLink(target, name, `${row}, ${column}`),
    sample,
  ]);
  return framed(
    { title, beside: total(`${rows} rows of ${columns}`) },
    sized((width) => drawn(plot, Math.min(widest, width))),
    element(
      'p',
      { class: 'aside' },
      'Voltages, current and throttle are this craft’s in the hover with a full pack; the rest is invented.',
    ),
    asTable(id, title, ['Element', 'Row, column', 'Example'], table),
  );
}

function drawn({ columns, rows, elements }: OverlayPicture, width: number): SVGElement {
  const height = Math.round((width * 3) / 4);
  const cell = { width: width / columns, height: height / rows };
  return canvas(
    width,
    height,
    shape('rect', { class: 'picture', x: 0.5, y: 0.5, width: width - 1, height: height - 1, rx: 3 }),
    ...elements.flatMap(({ sample, row, column }) =>
      [...sample].map((character, index) =>
        words(character, {
          class: 'character',
          x: (column + index + 0.5) * cell.width,
          y: (row + 0.5) * cell.height + 5,
          'text-anchor': 'middle',
        }),
      ),
    ),
  );
}
