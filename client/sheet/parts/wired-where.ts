import type { SheetPort, SheetRail, WiredWhere } from '../../../server/src/sheet/wired-where';
import { drawing, element } from '../element';
import { lineLink } from '../link';

export function wiredWhere({ board, ports, rails }: WiredWhere): readonly HTMLElement[] {
  if (board === null) {
    return [element('p', { class: 'aside' }, 'Name the board to see its ports: profile under [board].')];
  }
  return [
    element('h3', {}, `Ports of ${board}`),
    element('ul', { class: 'ports' }, ...ports.map(portRow)),
    element('h3', {}, 'Supplies'),
    element('ul', { class: 'rails' }, ...rails.map(railRow)),
  ];
}

function portRow({ name, devices, sharedWith, hasConflict }: SheetPort): HTMLElement {
  const links = devices.map((device) =>
    device.target === null
      ? element('span', {}, device.name)
      : lineLink(device.target, `${device.name} on ${name}`, device.name),
  );
  const free = element(
    'span',
    { class: 'free' },
    sharedWith === null ? 'free' : `free, shared with ${sharedWith}`,
  );
  return element(
    'li',
    { class: hasConflict ? 'port conflict' : 'port' },
    element('span', { class: 'pin' }, name),
    element('span', { class: devices.length > 0 ? 'wire used' : 'wire', 'aria-hidden': 'true' }),
    element(
      'span',
      { class: 'devices' },
      ...(links.length === 0 ? [free] : links),
      hasConflict ? element('b', {}, 'conflict') : null,
    ),
  );
}

function railRow({ name, voltage, used, limit, loads }: SheetRail): HTMLElement {
  const amount = limit === null ? `${round(used)} A` : `${round(used)} of ${round(limit)} A`;
  const names = loads.map((load) =>
    load.current === null ? `${load.name} (current not set)` : `${load.name} ${round(load.current)} A`,
  );
  return element(
    'li',
    { class: limit !== null && used > limit ? 'rail conflict' : 'rail' },
    element('span', { class: 'pin' }, voltage === 'pack' ? name : voltage),
    limit === null ? element('span', {}) : bar(used / limit, `${voltage}: ${amount}`),
    element('span', { class: 'amount' }, amount),
    names.length === 0 ? null : element('span', { class: 'aside loads' }, names.join(', ')),
  );
}

/** How much of a supply is taken. */
function bar(share: number, label: string): SVGElement {
  const width = Math.min(1, Math.max(0, share)) * 100;
  return drawing(
    'svg',
    { viewBox: '0 0 100 8', class: 'bar', role: 'img', 'aria-label': label, preserveAspectRatio: 'none' },
    drawing('rect', { class: 'track', x: '0', y: '0', width: '100', height: '8' }),
    drawing('rect', { class: 'filled', x: '0', y: '0', width: String(width), height: '8' }),
  );
}

function round(ampere: number): string {
  return String(Number(ampere.toPrecision(3)));
}
