import type { BuildSheet, SheetPart } from '../../sheet/build-sheet';
import type { FigureTable, PackCell } from '../../sheet/which-pack';
import type { WiredWhere } from '../../sheet/wired-where';
import { painted, type Terminal } from '../terminal';
import { visible } from './visible';
import { wrapped } from './wrapped';

/** The build sheet for people: part by part, with its short answer; figures pack by pack. */
export function sheetText(sheet: BuildSheet, terminal: Terminal): string {
  const { name, about, packInView, parts } = sheet;
  const of = packInView === null ? about : [...about, `pack ${packInView} in view`];
  const lines = [
    painted(visible(name), 'bold', terminal),
    visible(of.join(' · ')),
    ...parts.flatMap((part) => ['', partTitle(part, terminal), ...partLines(part, terminal)]),
  ];
  return `${lines.join('\n')}\n`;
}

function partTitle({ title, answer }: SheetPart, terminal: Terminal): string {
  return `${painted(title, 'bold', terminal)} ${visible(answer)}`;
}

function partLines(part: SheetPart, terminal: Terminal): readonly string[] {
  const paragraph = (text: string) => wrapped(visible(text), terminal.width, { lead: '  ', indent: '    ' });
  switch (part.id) {
    case 'can-it-fly':
      return [
        ...(part.unchecked === null ? [] : [part.unchecked]),
        ...part.findings.map(
          ({ level, message, accepted }) => `${accepted === null ? level : 'accepted'}: ${message}`,
        ),
        ...(part.assumed.length === 0 ? [] : [`Assumed: ${part.assumed.join('; ')}`]),
        ...part.replaced,
        part.caution,
      ].map(paragraph);
    case 'wired-where':
      return wiringLines(part).map(paragraph);
    case 'my-hands':
    case 'how-late':
    case 'which-pack':
    case 'who-sees-me':
      return [...figureLines(part).map(visible), paragraph(part.caution)];
    case 'learned':
      return part.flights
        .map(({ date, name, pack, note }) =>
          [date ?? name, pack, note].filter((word) => word !== null).join(', '),
        )
        .map(paragraph);
  }
}

function wiringLines({ ports, rails }: WiredWhere): readonly string[] {
  const conflict = (hasConflict: boolean) => (hasConflict ? ' (conflict)' : '');
  const names = (things: readonly { readonly name: string }[]) => things.map(({ name }) => name).join(', ');
  return [
    ...ports
      .filter(({ devices }) => devices.length > 0)
      .map(({ name, devices, hasConflict }) => `${name}: ${names(devices)}${conflict(hasConflict)}`),
    ...rails.map(
      ({ voltage, loads, hasConflict }) =>
        `${voltage} feeds ${names(loads) || 'nothing'}${conflict(hasConflict)}`,
    ),
  ];
}

function figureLines({ columns, rows, shared }: FigureTable): readonly string[] {
  const table = [
    ...(rows.length === 0 ? [] : [['', ...columns]]),
    ...rows.map(({ title, cells }) => [title, ...cells.map(cellText)]),
    ...shared.map(({ title, cell }) => [title, cellText(cell)]),
  ];
  const widthOf = (column: number) => Math.max(...table.map((row) => row[column]?.length ?? 0));
  const widths = ['', ...columns].map((_, column) => widthOf(column));
  return table.map((row) =>
    `  ${row.map((text, column) => text.padEnd(widths[column] ?? 0)).join('  ')}`.trimEnd(),
  );
}

function cellText(cell: PackCell | null): string {
  if (cell === null) return '–';
  const place = cell.place === null ? '' : `, ${cell.place}`;
  return `${cell.span === null ? cell.text : `${cell.text} (${cell.span})`}${place}`;
}
