import type { Target } from '../../../server/src/sheet/target';
import type { SheetRail } from '../../../server/src/sheet/wired-rails';
import type { SheetPort, WiredWhere } from '../../../server/src/sheet/wired-where';
import { drawing, element } from '../../page/element';
import { send } from '../extension-side';
import { figureText } from './figure-text';
import { canvas, shape, sized, words, wordsWidth } from './frame';

const row = 26;
const head = 26;
/** Below this many pixels there is no room for bars and currents. */
const narrow = 400;
/** Between a box and its words, and from a box to the board, in pixels. */
const [inset, lead] = [7, 15];
/** From the board to what hangs on its supplies. */
const branch = 21;

/**
 * The board with what hangs on its ports to the left, and what its supplies feed to the right; where the words of both
 * don't fit beside each other, one above the other.
 */
export function wiringDrawing({ board, ports, rails }: WiredWhere): HTMLElement {
  const used = ports.filter(({ devices }) => devices.length > 0);
  const name = board ?? 'board';
  return sized((width) => {
    const sides = sidesOf(name, used, rails, width);
    if (sides !== null) return drawn(name, used, rails, sides);
    const { onPorts, onBoard } = roomOf(name, used, rails);
    const left = Math.max(onPorts, width - onBoard);
    return element(
      'div',
      { class: 'stacked' },
      drawn(name, used, [], { left, right: left + onBoard, width: left + onBoard, isNarrow: true }),
      drawn(name, [], rails, { left: 0, right: onBoard, width, isNarrow: true }),
    );
  });
}

interface BoardSides {
  /** Left edge, and right edge, of the board, in pixels. */
  readonly left: number;
  readonly right: number;
  readonly width: number;
  readonly isNarrow: boolean;
}

/** Null where the words of both sides don't fit beside each other. */
function sidesOf(
  board: string,
  ports: readonly SheetPort[],
  rails: readonly SheetRail[],
  width: number,
): BoardSides | null {
  const { onPorts, onBoard, onRails } = roomOf(board, ports, rails);
  if (width >= narrow) {
    const left = Math.round(Math.max(onPorts, Math.min(200, width * 0.34)));
    return { left, right: left + Math.max(120, onBoard), width, isNarrow: false };
  }
  const most = width - onBoard - onRails;
  if (most < onPorts) return null;
  const left = Math.round(Math.min(most, Math.max(onPorts, width * 0.38)));
  return { left, right: left + onBoard, width, isNarrow: true };
}

/** Pixels that the words of each part take, with their boxes and wires. */
function roomOf(board: string, ports: readonly SheetPort[], rails: readonly SheetRail[]) {
  const longest = (texts: readonly string[]) => Math.ceil(Math.max(0, ...texts.map(wordsWidth)));
  const pins = longest(ports.map(({ name }) => name)) + longest(rails.map(({ voltage }) => voltage));
  const loads = longest(rails.flatMap((rail) => rail.loads.map(({ name }) => name)));
  return {
    onPorts: longest(ports.flatMap(({ devices }) => devices.map(({ name }) => name))) + 2 * inset + lead,
    onBoard: Math.max(pins + 2 * inset + 6, longest([board]) + 2 * inset),
    onRails: Math.max(longest(rails.map(amountText)), loads + 2 * inset) + branch,
  };
}

function amountText({ used, limit }: SheetRail): string {
  return limit === null ? figureText(used, 'A') : `${figureText(used, '')} of ${figureText(limit, 'A')}`;
}

function drawn(
  board: string,
  ports: readonly SheetPort[],
  rails: readonly SheetRail[],
  sides: BoardSides,
): SVGElement {
  const onPorts = ports.reduce((sum, { devices }) => sum + devices.length, 0);
  const onRails = rails.reduce((sum, { loads }) => sum + 1 + loads.length, 0);
  const height = head + row * Math.max(1, onPorts, onRails) + 4;
  return canvas(
    sides.width,
    height,
    shape('rect', {
      class: 'board',
      x: sides.left + 0.5,
      y: 0.5,
      width: sides.right - sides.left - 1,
      height: height - 1,
      rx: 6,
    }),
    words(board, { class: 'named', x: (sides.left + sides.right) / 2, y: 17, 'text-anchor': 'middle' }),
    ...portRows(ports, sides),
    ...railRows(rails, sides),
  );
}

function portRows(ports: readonly SheetPort[], { left }: BoardSides): readonly SVGElement[] {
  let y = head + row / 2;
  return ports.flatMap(({ name, devices, hasConflict }) => {
    const first = y;
    const wire = hasConflict ? 'wire conflict' : 'wire';
    return [
      ...devices.flatMap((device) => {
        const at = y;
        y += row;
        const bend = at === first ? '' : `V${first}`;
        return [
          shape('path', { class: wire, d: `M${left - lead} ${at}H${left - 8}${bend}H${left}` }),
          box(device.target, device.name, { x: 0.5, y: at, width: left - lead - 1, textX: inset }),
        ];
      }),
      words(name, { class: hasConflict ? 'tick wrong' : 'tick', x: left + inset, y: first + 4 }),
    ];
  });
}

function railRows(
  rails: readonly SheetRail[],
  { right, width, isNarrow }: BoardSides,
): readonly SVGElement[] {
  let y = head + row / 2;
  return rails.flatMap((rail) => {
    const at = y;
    y += row;
    const from = right + 12;
    const to = Math.max(from + 20, width - 84);
    const isElsewhere = rail.isOnBoard === false && !isNarrow;
    const share = rail.limit === null || isNarrow ? null : Math.min(1, rail.used / rail.limit);
    return [
      words(rail.voltage, {
        class: rail.hasConflict ? 'tick wrong' : 'tick',
        x: right - inset,
        y: at + 4,
        'text-anchor': 'end',
      }),
      shape('path', { class: 'wire', d: `M${right} ${at}H${from}` }),
      ...(share === null
        ? [words(isElsewhere ? 'not from this board' : '', { class: 'tick', x: from + 2, y: at + 4 })]
        : usedShare(share, rail.hasConflict, { from, to, y: at })),
      words(amountText(rail), { class: 'tick', x: width - 1, y: at + 4, 'text-anchor': 'end' }),
      ...rail.loads.flatMap((load) => {
        const under = y;
        y += row;
        const current = load.current === null || isNarrow ? '' : ` ${figureText(load.current, 'A')}`;
        return [
          shape('path', {
            class: load.hasConflict ? 'wire conflict' : 'wire',
            d: `M${from} ${at + 5}V${under}H${from + 8}`,
          }),
          box(load.target, `${load.name}${current}`, {
            x: from + 8.5,
            y: under,
            width: width - from - 9,
            textX: from + 15,
          }),
        ];
      }),
    ];
  });
}

/** A bar that is filled as far as a rail's limit is used. */
function usedShare(
  share: number,
  hasConflict: boolean,
  { from, to, y }: { readonly from: number; readonly to: number; readonly y: number },
): readonly SVGElement[] {
  const bar = { x: from, y: y - 3, height: 6, rx: 3 };
  return [
    shape('rect', { class: 'track', ...bar, width: to - from }),
    shape('rect', { class: hasConflict ? 'filled wrong' : 'filled', ...bar, width: share * (to - from) }),
  ];
}

/** Where a named box stands: its left side, its middle, its width, and where its name begins. */
interface BoxPlace {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly textX: number;
}

function box(target: Target | null, name: string, { x, y, width, textX }: BoxPlace): SVGElement {
  return leading(
    target,
    shape('rect', { class: 'box', x, y: y - 10, width, height: 20, rx: 3 }),
    words(name, { class: 'named', x: textX, y: y + 4 }),
  );
}

/** To the mouse it leads to its line; keys have the list below. */
function leading(target: Target | null, ...children: readonly SVGElement[]): SVGElement {
  if (target === null) return drawing('g', {}, ...children);
  return drawing('g', { class: 'leads', onclick: () => send({ kind: 'go', target }) }, ...children);
}
