import type { BuildSheet, SheetPart } from '../sheet/build-sheet';
import type { FigureTable, PackCell } from '../sheet/which-pack';
import { painted, type Terminal, visible } from './terminal';

/** The build sheet for people: part by part, with its short answer; figures pack by pack. */
export function sheetText(sheet: BuildSheet, terminal: Terminal): string {
  const { name, about, packInView, parts } = sheet;
  const of = packInView === null ? about : [...about, `pack ${packInView} in view`];
  const lines = [
    painted(visible(name), 'bold', terminal),
    visible(of.join(' · ')),
    ...parts.flatMap((part) => ['', partTitle(part, terminal), ...partLines(part).map(visible)]),
  ];
  return `${lines.join('\n')}\n`;
}

function partTitle({ title, answer }: SheetPart, terminal: Terminal): string {
  return `${painted(title, 'bold', terminal)} ${visible(answer)}`;
}

function partLines(part: SheetPart): readonly string[] {
  switch (part.id) {
    case 'can-it-fly':
      return [
        ...part.findings.map(
          ({ level, message, accepted }) => `  ${accepted === null ? level : 'accepted'}: ${message}`,
        ),
        ...(part.assumed.length === 0 ? [] : [`  Assumed: ${part.assumed.join('; ')}`]),
        `  ${part.caution}`,
      ];
    case 'wired-where':
      return [
        ...part.ports.flatMap(({ name, devices, hasConflict }) =>
          devices.length === 0
            ? []
            : [
                `  ${name}: ${devices.map((device) => device.name).join(', ')}${hasConflict ? ' (conflict)' : ''}`,
              ],
        ),
        ...part.rails.map(({ voltage, loads, hasConflict }) => {
          const fed = loads.length === 0 ? 'nothing' : loads.map((load) => load.name).join(', ');
          return `  ${voltage} feeds ${fed}${hasConflict ? ' (conflict)' : ''}`;
        }),
      ];
    case 'my-hands':
    case 'how-late':
    case 'which-pack':
    case 'who-sees-me':
      return [...figureLines(part), `  ${part.caution}`];
    case 'learned':
      return part.flights.map(
        ({ date, name, pack, note }) =>
          `  ${[date ?? name, pack, note].filter((word) => word !== null).join(', ')}`,
      );
  }
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
  return cell.span === null ? cell.text : `${cell.text} (${cell.span})`;
}
