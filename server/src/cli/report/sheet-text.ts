import type { BuildSheet, SheetPart } from '../../sheet/build-sheet';
import { recordingQuestions } from '../../sheet/compare/recording-questions';
import type { Narrowing } from '../../sheet/narrowing/narrowing';
import type { FigureTable, PackCell } from '../../sheet/which-pack';
import type { WiredWhere } from '../../sheet/wired-where';
import type { SheetRecorded } from '../files/sheet-recorded';
import { painted, type Terminal } from '../terminal';
import { axisRowLines } from './recording-axes-text';
import { visible } from './visible';
import { brokenLine, wrapped } from './wrapped';

/**
 * The build sheet for people: part by part, with its short answer; figures pack by pack. `recorded`: what a flight measured,
 * below the figures that estimate the same, and axis by axis at the end.
 */
export function sheetText(
  sheet: BuildSheet,
  terminal: Terminal,
  recorded: SheetRecorded | null = null,
): string {
  const { name, about, packInView, parts } = sheet;
  const of = packInView === null ? about : [...about, `pack ${packInView} in view`];
  const lines = [
    painted(visible(name), 'bold', terminal),
    visible(of.join(' · ')),
    ...parts.flatMap((part) => ['', partTitle(part, terminal), ...partLines(part, terminal, recorded)]),
    ...(recorded === null ? [] : ['', ...recordedLines(recorded, terminal)]),
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

function partLines(part: SheetPart, terminal: Terminal, recorded: SheetRecorded | null): readonly string[] {
  const paragraph = (text: string) => sheetParagraph(text, terminal);
  // Once they are read nobody has to be told how.
  const hint = recorded === null ? ': --recorded reads the last of them' : '';
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
      return [...figureLines(part, recorded).map(visible), paragraph(part.caution)];
    case 'my-hands':
    case 'how-late':
    case 'stay-cool':
    case 'who-sees-me':
      return [...figureLines(part, recorded).map(visible), ...[...part.told, part.caution].map(paragraph)];
    case 'learned':
      return part.flights
        .flatMap(({ date, name, pack, facts, measured, heat, note, changed, damage, recording }) => [
          [date ?? name, pack, note].filter((word) => word !== null).join(', '),
          facts.map(({ title, text }) => `${title} ${text}`).join(', '),
          ...measured,
          ...heat,
          changed === null ? '' : `changed before it: ${changed}`,
          damage === null ? '' : `damage: ${damage}`,
          recording === null ? '' : `recorded in ${recording.path}${hint}`,
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

function figureLines(
  { columns, rows, shared, withheld }: FigureTable,
  recorded: SheetRecorded | null,
): readonly string[] {
  // Below the name of one pack it would seem to be of that one.
  const ofAll = rows.length > 0 && columns.length > 1 ? ' with every pack' : '';
  const table = [
    ...(rows.length === 0 ? [] : [{ id: '', texts: ['', ...columns] }]),
    ...rows.map(({ id, title, cells }) => ({ id, texts: [title, ...cells.map(cellText)] })),
    ...shared.map(({ id, title, cell }) => ({ id, texts: [title, `${cellText(cell)}${ofAll}`] })),
    ...withheld.map(({ id, title }) => ({ id, texts: [title, 'not known yet'] })),
  ];
  const widthOf = (column: number) =>
    Math.max(...table.map(({ texts }) => (column === texts.length - 1 ? 0 : (texts[column]?.length ?? 0))));
  const widths = ['', ...columns].map((_, column) => widthOf(column));
  return table.flatMap(({ id, texts }) => [
    `  ${texts.map((text, column) => text.padEnd(widths[column] ?? 0)).join('  ')}`.trimEnd(),
    ...(recorded?.answers ?? []).flatMap(({ figure, text }) =>
      figure === id ? [`    measured on ${flownWhen(recorded)}: ${text}`] : [],
    ),
  ]);
}

/** `2026-05-14, sprint` */
function flownWhen(recorded: SheetRecorded | null): string {
  const when = recorded?.date ?? recorded?.flight.replaceAll('-', ' ');
  return [when, recorded?.pack].filter((word) => word != null).join(', ');
}

/** What the axes did in flight beside what the script lets expect, by the pilot's questions. */
function recordedLines(recorded: SheetRecorded, terminal: Terminal): readonly string[] {
  const { recording, isSimulated, rows, basis, why } = recorded;
  const told = (['follow', 'late', 'gains'] as const).flatMap((question) => {
    const lines = axisRowLines(rows.filter((row) => row.question === question));
    return lines.length === 0
      ? []
      : [`  ${recordingQuestions[question]}`, ...lines.map((line) => `  ${line}`)];
  });
  const read = `Read from ${recording}${isSimulated ? '; simulated: nobody flew it' : ''}.`;
  const rests = basis === null ? `Not told: ${why ?? ''}` : `Rests on ${basis}.`;
  return [
    painted(`What was measured on ${visible(flownWhen(recorded))}, beside the script?`, 'bold', terminal),
    sheetParagraph(`${read} ${rests}`, terminal),
    ...told.map((line) => brokenLine(line, terminal)),
  ];
}

function cellText(cell: PackCell | null): string {
  if (cell === null) return '–';
  const place = cell.place === null ? '' : `, ${cell.place}`;
  return `${cell.span === null ? cell.text : `${cell.text} (${cell.span})`}${place}`;
}
