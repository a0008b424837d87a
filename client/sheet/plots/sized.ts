import { element } from '../../page/element';

/** Draws for the width that there is, in pixels, and again whenever that changes. */
export function sized(draw: (width: number) => Node): HTMLElement {
  const frame = element('div', { class: 'drawn' });
  let drawnFor = 0;
  const observer = new ResizeObserver(([entry]) => {
    const width = Math.floor(entry?.contentRect.width ?? 0);
    if (width <= 0 || width === drawnFor) return;
    drawnFor = width;
    frame.replaceChildren(draw(width));
  });
  observer.observe(frame);
  return frame;
}
