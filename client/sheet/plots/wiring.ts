import type { Target } from '../../../server/src/sheet/target';
import type { SheetRail } from '../../../server/src/sheet/wired-rails';
import type { SheetPort, WiredWhere } from '../../../server/src/sheet/wired-where';
import { drawing } from '../../page/element';
import { send } from '../extension-side';
import { figureText } from './figure-text';
import { canvas, shape, sized, words } from './frame';

const row = 26;
const head = 26;
/** Below this many pixels there is no room for bars and currents. */
const narrow = 400;

/** The board with what hangs on its ports to the left, and what its supplies feed to the right. */
export function wiringDrawing({ board, ports, rails }: WiredWhere): HTMLElement {
  const used = ports.filter(({ devices }) => devices.length > 0);
  return sized((width) => drawn(board ?? 'board', used, rails, width));
}

interface BoardSides {
  /** Left edge, and right edge, of the board, in pixels. */
  readonly left: number;
  readonly right: number;
  readonly width: number;
  readonly isNarrow: boolean;
}

function sidesOf(width: number): BoardSides {
  const isNarrow = width < narrow;
  const left = Math.round(isNarrow ? width * 0.38 : Math.min(200, width * 0.34));
  return { left, right: left + (isNarrow ? 88 : 120), width, isNarrow };
}

function drawn(
  board: string,
  ports: readonly SheetPort[],
  rails: readonly SheetRail[],
  width: number,
): SVGElement {
  const sides = sidesOf(width);
  const onPorts = ports.reduce((sum, { devices }) => sum + devices.length, 0);
  const onRails = rails.reduce((sum, { loads }) => sum + 1 + loads.length, 0);
  const height = head + row * Math.max(1, onPorts, onRails) + 4;
  return canvas(
    width,
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
          shape('path', { class: wire, d: `M${left - 22} ${at}H${left - 10}${bend}H${left}` }),
          leading(
            device.target,
            shape('rect', { class: 'box', x: 0.5, y: at - 10, width: left - 23, height: 20, rx: 3 }),
            words(device.name, { class: 'named', x: 7, y: at + 4 }),
          ),
        ];
      }),
      words(name, { class: hasConflict ? 'tick wrong' : 'tick', x: left + 7, y: first + 4 }),
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
    const amount =
      rail.limit === null
        ? figureText(rail.used, 'A')
        : `${figureText(rail.used, '')} of ${figureText(rail.limit, 'A')}`;
    const share = rail.limit === null || isNarrow ? null : Math.min(1, rail.used / rail.limit);
    return [
      words(rail.voltage, {
        class: rail.hasConflict ? 'tick wrong' : 'tick',
        x: right - 7,
        y: at + 4,
        'text-anchor': 'end',
      }),
      shape('path', { class: 'wire', d: `M${right} ${at}H${from}` }),
      ...(share === null
        ? [
            words(rail.isOnBoard === false && !isNarrow ? 'not from this board' : '', {
              class: 'tick',
              x: from + 2,
              y: at + 4,
            }),
          ]
        : [
            shape('rect', { class: 'track', x: from, y: at - 3, width: to - from, height: 6, rx: 3 }),
            shape('rect', {
              class: rail.hasConflict ? 'filled wrong' : 'filled',
              x: from,
              y: at - 3,
              width: share * (to - from),
              height: 6,
              rx: 3,
            }),
          ]),
      words(amount, { class: 'tick', x: width - 1, y: at + 4, 'text-anchor': 'end' }),
      ...rail.loads.flatMap((load) => {
        const under = y;
        y += row;
        const current = load.current === null || isNarrow ? '' : ` ${figureText(load.current, 'A')}`;
        return [
          shape('path', {
            class: load.hasConflict ? 'wire conflict' : 'wire',
            d: `M${from} ${at + 5}V${under}H${from + 8}`,
          }),
          leading(
            load.target,
            shape('rect', {
              class: 'box',
              x: from + 8.5,
              y: under - 10,
              width: width - from - 9,
              height: 20,
              rx: 3,
            }),
            words(`${load.name}${current}`, { class: 'named', x: from + 15, y: under + 4 }),
          ),
        ];
      }),
    ];
  });
}

/** To the mouse it leads to its line; keys have the list below. */
function leading(target: Target | null, ...children: readonly SVGElement[]): SVGElement {
  if (target === null) return drawing('g', {}, ...children);
  return drawing('g', { class: 'leads', onclick: () => send({ kind: 'go', target }) }, ...children);
}
