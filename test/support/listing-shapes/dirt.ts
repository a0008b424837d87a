import { blankLine, literal, otherLine } from './lines';
import type { Line, Piece } from './listing';
import { Lot } from './lot';

/** What a session leaves around and between the lines of a listing. */
export const dirtKinds = [
  'prompts',
  'colour',
  'pager',
  'overwrite',
  'stamps',
  'counters',
  'mark',
  'crlf',
  'mixed ends',
  'old ends',
  'trailing',
  'banner',
  'greeting',
] as const;

export type DirtKind = (typeof dirtKinds)[number];

const rivals: readonly (readonly DirtKind[])[] = [
  ['crlf', 'mixed ends', 'old ends'],
  ['stamps', 'counters'],
  ['pager', 'overwrite'],
  // A line end alone and an overwritten line are the same character.
  ['old ends', 'overwrite'],
];

/** What of it can stand together. */
export function together(dirt: readonly DirtKind[], spared: readonly DirtKind[]): readonly DirtKind[] {
  const kept: DirtKind[] = [];
  for (const kind of dirt) {
    const isRival = rivals.some((some) => some.includes(kind) && some.some((other) => kept.includes(other)));
    if (!spared.includes(kind) && !kept.includes(kind) && !isRival) kept.push(kind);
  }
  return kept;
}

type Soil = (lines: readonly Line[], lot: Lot) => readonly Line[];

function before(line: Line, text: string): Line {
  return { ...line, pieces: [literal(text), ...line.pieces] };
}

function behind(line: Line, text: string): Line {
  return { ...line, pieces: [...line.pieces, literal(text)] };
}

export const escapeCode = '\u001b';

/** Names in one colour, values with their units in another. */
function coloured(pieces: readonly Piece[]): readonly Piece[] {
  return pieces.flatMap((piece, index) => {
    if (piece.of === null || piece.text === '') return [piece];
    const { field } = piece.of;
    const hasUnit = pieces[index + 1]?.of?.field === 'unit';
    return [
      ...(field === 'unit' ? [] : [literal(`${escapeCode}[${field === 'name' ? '36' : '1;33'}m`)]),
      piece,
      ...(hasUnit ? [] : [literal(`${escapeCode}[0m`)]),
    ];
  });
}

/** So many lines to a screen. */
const screen = (lines: readonly Line[]) => Math.max(3, Math.min(24, Math.floor(lines.length / 3)));

const two = (number: number) => String(number).padStart(2, '0');

function clock(seconds: number): string {
  return [seconds / 3600, (seconds / 60) % 60, seconds % 60].map((part) => two(Math.floor(part))).join(':');
}

const stampForms: readonly ((second: number) => string)[] = [
  (second) => `[${clock(second)}] `,
  (second) => `${clock(second)}.${String((second * 37) % 1000).padStart(3, '0')} `,
  (second) => `2031-05-07T${clock(second)}Z `,
  (second) =>
    `[${String(second % 5000).padStart(5)}.${String((second * 7919) % 1_000_000).padStart(6, '0')}] `,
];

const counterForms: readonly ((number: number) => string)[] = [
  (number) => `${String(number).padStart(4)}: `,
  (number) => `${String(number).padStart(4)}| `,
  (number) => `${String(number).padStart(4, '0')} `,
  (number) => `${String(number).padStart(6)}\t`,
];

const soils: Readonly<Partial<Record<DirtKind, Soil>>> = {
  banner(lines, lot) {
    const count = lines.filter(({ kind }) => kind === 'setting').length;
    const [first, last] = lot.one([
      ['~~~ dipper, all that it holds ~~~', '~~~ that was all ~~~'],
      [`${count} settings follow`, `end of settings (${count})`],
      ['==================', '=================='],
    ] as const);
    return [otherLine(first), ...lines, otherLine(last)];
  },
  greeting: (lines, lot) => [
    otherLine(lot.one(['Dipper board, second of its kind', 'dipper awake'])),
    otherLine(lot.one(['built in the spring of 2031', 'type help for more'])),
    ...lot.one([[], [blankLine]]),
    ...lines,
  ],
  colour: (lines) => lines.map((line) => ({ ...line, pieces: coloured(line.pieces) })),
  trailing: (lines, lot) => lines.map((line) => behind(line, lot.one(['', ' ', '   ', '\t']))),
  stamps(lines, lot) {
    const form = lot.one(stampForms);
    const start = 30_000 + lot.whole(9000);
    return lines.map((line, index) => before(line, form(start + Math.floor(index / 3))));
  },
  counters(lines, lot) {
    const form = lot.one(counterForms);
    return lines.map((line, index) => before(line, form(index + 1)));
  },
  pager(lines, lot) {
    const shown = lot.one(['-- more --', '--- press a key ---', '<more>']);
    const size = screen(lines);
    return lines.flatMap((line, index) =>
      index > 0 && index % size === 0 ? [otherLine(shown), line] : [line],
    );
  },
  overwrite(lines, lot) {
    const shown = lot.one(['-- more --', '(space for more)']);
    const wiped = `${shown}\r${' '.repeat(shown.length)}\r`;
    const size = screen(lines);
    return lines.map((line, index) => (index > 0 && index % size === 0 ? before(line, wiped) : line));
  },
  prompts(lines, lot) {
    const prompt = lot.one(['dipper> ', '[dipper] $ ', 'dipper # ', '>> ']);
    const asked = lot.one(['settings', 'list all', 'everything']);
    return [otherLine(prompt + asked), ...lines, otherLine(prompt)];
  },
};

/** What is printed first lies innermost. */
const order: readonly DirtKind[] = [
  'greeting',
  'banner',
  'colour',
  'trailing',
  'stamps',
  'counters',
  'pager',
  'overwrite',
  'prompts',
];

export function soiled(lines: readonly Line[], dirt: readonly DirtKind[], seed: number): readonly Line[] {
  const lot = new Lot(seed);
  return order
    .filter((kind) => dirt.includes(kind))
    .reduce((left, kind) => soils[kind]?.(left, lot) ?? left, lines);
}

/** The end of each line. */
export function lineEnd(dirt: readonly DirtKind[], index: number): string {
  if (dirt.includes('crlf')) return '\r\n';
  if (dirt.includes('old ends')) return '\r';
  return dirt.includes('mixed ends') && index % 3 === 1 ? '\r\n' : '\n';
}
