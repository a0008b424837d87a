import type { SheetLoad, SheetRail } from '../../../server/src/sheet/wired-rails';
import type { SheetPort, WiredWhere } from '../../../server/src/sheet/wired-where';
import { drawing, element } from '../../page/element';
import { fold } from '../fold';
import { valueLink } from '../link';
import { wiringDrawing } from '../plots/wiring';

/** The wiring as a drawing, and the same as a list. */
export function wiredWhere(part: WiredWhere): readonly HTMLElement[] {
  const { ports, rails } = part;
  const board = part.board ?? 'the board';
  const used = ports.filter(({ devices }) => devices.length > 0);
  const free = ports.filter(({ devices }) => devices.length === 0);
  const list = element(
    'div',
    { class: 'wiring' },
    element(
      'ul',
      { class: 'ports', 'aria-label': `Ports of ${board} in use` },
      ...(used.length === 0 ? [element('li', { class: 'none' }, 'No port in use')] : used.map(portRow)),
    ),
    element('ul', { class: 'rails', 'aria-label': `Supplies of ${board}` }, ...rails.map(railRow)),
  );
  return [
    element('figure', { class: 'plot' }, wiringDrawing(part)),
    element('p', { class: 'aside' }, part.hasAllPorts ? freeText(free) : undescribed(part.board)),
    fold(
      { id: 'wiring-list', name: 'more', isOpenAtFirst: false },
      [element('span', {}, 'As a list')],
      [list],
    ),
  ];
}

/** Which ports are free is known only where somebody has described them all. */
function undescribed(board: string | null): string {
  return board === null
    ? 'Name the board to see which ports are free: profile under [board].'
    : `Which ports are free is not known: nobody has described those of ${board}.`;
}

function freeText(free: readonly SheetPort[]): string {
  if (free.length === 0) return 'No port is free.';
  const names = free.map(({ name, sharedWith }) => (sharedWith === null ? name : `${name} (${sharedWith})`));
  return `Free: ${names.join(', ')}`;
}

function portRow({ name, devices, hasConflict }: SheetPort): HTMLElement {
  return element(
    'li',
    { class: hasConflict ? 'port conflict' : 'port' },
    element(
      'span',
      { class: 'devices' },
      ...devices.map((device) => valueLink(device.target, `${device.name} on ${name}`, device.name)),
    ),
    element('span', { class: 'wire', 'aria-hidden': 'true' }),
    element('span', { class: 'pin' }, name, hasConflict ? conflict() : null),
  );
}

function railRow({ voltage, isOnBoard, used, limit, loads, hasConflict }: SheetRail): HTMLElement {
  const amount = limit === null ? `${round(used)} A` : `${round(used)} of ${round(limit)} A`;
  return element(
    'li',
    { class: hasConflict ? 'rail conflict' : 'rail' },
    element('span', { class: 'pin' }, voltage),
    limit === null
      ? element('span', { class: 'aside' }, isOnBoard === false ? 'not from this board' : '')
      : bar(used / limit),
    element('span', { class: 'amount' }, isOnBoard === true || used > 0 ? amount : ''),
    element('span', { class: 'loads' }, hasConflict ? conflict() : null, ...loads.flatMap(loadText)),
  );
}

function loadText(load: SheetLoad, index: number): readonly (string | HTMLElement)[] {
  const current = load.current === null ? ' (current not set)' : ` ${round(load.current)} A`;
  return [index === 0 ? '' : ', ', valueLink(load.target, `Supply of the ${load.name}`, load.name), current];
}

function conflict(): HTMLElement {
  return element('b', {}, ' conflict ');
}

/** How much of a supply is taken; the numbers beside it say the same. */
function bar(share: number): SVGElement {
  const width = Math.min(1, Math.max(0, share)) * 100;
  return drawing(
    'svg',
    { viewBox: '0 0 100 8', class: 'bar', 'aria-hidden': 'true', preserveAspectRatio: 'none' },
    drawing('rect', { class: 'track', x: '0', y: '0', width: '100', height: '8' }),
    drawing('rect', { class: 'filled', x: '0', y: '0', width: String(width), height: '8' }),
  );
}

function round(ampere: number): string {
  return String(Number(ampere.toPrecision(3)));
}
