import type { BuildSheet, SheetPart } from '../../sheet/build-sheet';
import type { Narrowing } from '../../sheet/narrowing/narrowing';
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

/** What to measure, for each figure that would be surer by it. */
export function narrowingText(narrowing: readonly Narrowing[], terminal: Terminal): string {
  const title = painted('What would make it surer?', 'bold', terminal);
  const [pack] = narrowing.flatMap((one) => one.pack ?? []);
  const heading = pack === undefined ? title : `${title} ${visible(`with pack ${pack}`)}`;
  const lines = narrowing.map(({ text }) => sheetParagraph(text, terminal));
  const none = 'Nothing that you can measure makes a span much smaller.';
  return `${['', heading, ...(lines.length === 0 ? [`  ${none}`] : lines)].join('\n')}\n`;
}

function sheetParagraph(text: string, terminal: Terminal): string {
  return wrapped(visible(text), terminal.width, { lead: '  ', indent: '    ' });
}

function partTitle({ title, answer }: SheetPart, terminal: Terminal): string {
  return `${painted(title, 'bold', terminal)} ${visible(answer)}`;
}

function partLines(part: SheetPart, terminal: Terminal): readonly string[] {
  const paragraph = (text: string) => sheetParagraph(text, terminal);
  const item = (text: string) => wrapped(visible(text), terminal.width, { lead: '    ', indent: '      ' });
  switch (part.id) {
    case 'can-it-fly':
      return [
        ...(part.unchecked === null ? [] : [part.unchecked]),
        ...part.notKnown.map(({ text }) => text),
        ...part.findings.map(
          ({ level, message, accepted }) => `${accepted === null ? level : 'accepted'}: ${message}`,
        ),
      ]
        .map(paragraph)
        .concat(part.assumed.length === 0 ? [] : ['  Assumed:', ...part.assumed.map(item)])
        .concat([...part.replaced, part.caution].map(paragraph));
    case 'wired-where':
      return wiringLines(part).map(paragraph);
    case 'which-pack':
      return [...figureLines(part).map(visible), paragraph(part.caution)];
    case 'my-hands':
    case 'how-late':
    case 'stay-cool':
    case 'who-sees-me':
      return [...figureLines(part).map(visible), ...[...part.told, part.caution].map(paragraph)];
    case 'learned':
      return part.flights
        .flatMap(({ date, name, pack, facts, measured, heat, note, changed, damage }) => [
          [date ?? name, pack, note].filter((word) => word !== null).join(', '),
          facts.map(({ title, text }) => `${title} ${text}`).join(', '),
          ...measured,
          ...heat,
          changed === null ? '' : `changed before it: ${changed}`,
          damage === null ? '' : `damage: ${damage}`,
        ])
        .filter((text) => text !== '')
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

function figureLines({ columns, rows, shared, withheld }: FigureTable): readonly string[] {
  const table = [
    ...(rows.length === 0 ? [] : [['', ...columns]]),
    ...rows.map(({ title, cells }) => [title, ...cells.map(cellText)]),
    ...shared.map(({ title, cell }) => [title, cellText(cell)]),
    ...withheld.map(({ title }) => [title, 'not known yet']),
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
