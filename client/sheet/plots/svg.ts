import { drawing } from '../../page/element';

type Where = Readonly<Record<string, string | number>>;

/** A drawing as wide as its place, told in words elsewhere. */
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

function texts(where: Where): Record<string, string> {
  return Object.fromEntries(Object.entries(where).map(([name, value]) => [name, String(value)]));
}
