import type { DelayStack } from '../../../server/src/sheet/plots/plot';
import { element } from '../../page/element';
import { figureText } from './figure-text';
import { canvas, framed, shape, sized, total } from './frame';

const height = 16;

/** Waits end to end; the list below says the same in words. */
export function delayStack({ title, waits }: DelayStack): HTMLElement {
  const whole = waits.reduce((sum, { milliseconds }) => sum + milliseconds, 0);
  return framed(
    { title, beside: total(figureText(whole, 'ms')) },
    sized((width) => canvas(width, height, ...pieces(waits, width / whole))),
    element('ul', { class: 'legend' }, ...waits.map(row)),
  );
}

function pieces(waits: DelayStack['waits'], scale: number): readonly SVGElement[] {
  let from = 0;
  return waits.map(({ milliseconds }, index) => {
    const width = Math.max(1, milliseconds * scale - 1);
    const piece = shape('rect', {
      class: `piece piece-${index % 2}`,
      x: from,
      y: 1,
      width,
      height: height - 2,
    });
    from += milliseconds * scale;
    return piece;
  });
}

function row({ name, milliseconds }: DelayStack['waits'][number]): HTMLElement {
  return element('li', {}, `${name} ${figureText(milliseconds, 'ms')}`);
}
