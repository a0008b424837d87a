import { drawing, element } from '../../page/element';

interface Caption {
  readonly title: string;
  /** Beside the title. */
  readonly beside?: HTMLElement;
}

/** A plot with its title above it. */
export function framed({ title, beside }: Caption, ...inside: readonly HTMLElement[]): HTMLElement {
  const caption = element('figcaption', {}, element('h3', {}, title), beside ?? null);
  return element('figure', { class: 'plot' }, caption, ...inside);
}

/** What it comes to in all, beside a plot's title. */
export function total(text: string): HTMLElement {
  return element('span', { class: 'total' }, text);
}

/** Pixels. Plots have words beside them: what is narrower shows them smaller. */
const leastWidth = 240;

/** Draws for the width that there is, in pixels, and again whenever that changes. */
export function sized(draw: (width: number) => Node): HTMLElement {
  const frame = element('div', { class: 'drawn' });
  let drawnFor = 0;
  const observer = new ResizeObserver(([entry]) => {
    const width = Math.floor(entry?.contentRect.width ?? 0);
    if (width <= 0 || width === drawnFor) return;
    drawnFor = width;
    frame.replaceChildren(draw(Math.max(leastWidth, width)));
  });
  observer.observe(frame);
  return frame;
}

type Where = Readonly<Record<string, string | number>>;

/** A drawing as wide as its place, described in words elsewhere. */
export function canvas(width: number, height: number, ...children: readonly (Node | null)[]): SVGElement {
  const size = { width: String(width), height: String(height), viewBox: `0 0 ${width} ${height}` };
  return drawing('svg', { ...size, 'aria-hidden': 'true' }, ...children);
}

export function shape(tag: 'line' | 'rect' | 'path' | 'circle' | 'g', where: Where): SVGElement {
  return drawing(tag, texts(where));
}

export function words(text: string, where: Where): SVGElement {
  return drawing('text', texts(where), text);
}

let ruler: CanvasRenderingContext2D | null = null;

/** Pixels that words of a drawing take; about, where they can't be measured. */
export function wordsWidth(text: string): number {
  ruler ??= document.createElement('canvas').getContext('2d');
  if (ruler === null) return text.length * 6.5;
  ruler.font = `11px ${getComputedStyle(document.body).fontFamily}`;
  return ruler.measureText(text).width;
}

function texts(where: Where): Record<string, string> {
  return Object.fromEntries(Object.entries(where).map(([name, value]) => [name, String(value)]));
}
