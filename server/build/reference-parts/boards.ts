import { gather } from '../../src/board/meaning/meanings';
import { rowsOf } from '../../src/board/profile/profile';
import { titleOf } from '../../src/catalog/board-title';
import type { Hardware } from '../../src/catalog/model/board-hardware';
import type { BoardProfile, BoardSetting } from '../../src/catalog/model/board-profile';
import type { Bundle } from '../../src/catalog/model/bundle';
import { code, plain, table } from './table';

/** What each board has, and its own words for the catalogue's parameters. */
export function boardSections({ boards }: Bundle): readonly string[] {
  return [`## Boards (${boards.length})`, ...boards.flatMap(boardSection)];
}

function boardSection(board: BoardProfile): readonly string[] {
  const own = board.settings.filter(({ means }) => means === undefined);
  return [
    `### ${titleOf(board)} (${code(board.name)})`,
    ...(board.summary === undefined ? [] : [board.summary]),
    table(['part', 'what it is'], hardware(board)),
    table(['parameter', 'its name on the board', 'counted in', 'words'], meanings(board)),
    table(['setting of the board’s own', 'what it takes', 'what the board says of it'], own.map(ownRow)),
  ];
}

function hardware({ hardware: known = {} }: BoardProfile) {
  const { ports, rails, gyro, packInput, log, overlay, sensors } = known;
  const told = <T>(part: T | undefined, text: (part: T) => string) =>
    part === undefined ? 'not told' : text(part);
  return [
    ['ports', told(ports, (all) => all.map(({ name }) => name).join(', '))],
    ['motor outputs', told(known.motorOutputs, String)],
    ['motors as drawn', told(known.motorsAsPrinted, (all) => all.join(', '))],
    ['supplies', told(rails, (all) => all.map(railText).join('; '))],
    ['gyro', told(gyro, gyroText)],
    ['pack', told(packInput?.mostCells, (cells) => `up to ${cells} cells`)],
    ['log', told(log, (one) => (one === null ? 'none' : `${one.medium}, ${one.size ?? 'size not told'}`))],
    ['overlay', told(overlay, (has) => (has ? 'yes' : 'no'))],
    ['sensors', told(sensors, (all) => (all.length === 0 ? 'none' : all.join(', ')))],
  ];
}

function railText({ name, voltage, currentLimit }: NonNullable<Hardware['rails']>[number]): string {
  const volts = voltage === null ? 'as the pack' : (voltage ?? 'voltage not told');
  return [name, volts, ...(currentLimit == null ? [] : [`up to ${currentLimit}`])].join(' ');
}

function gyroText({ rates, fullScale, bits }: NonNullable<Hardware['gyro']>): string {
  const rate = rates?.join(', ') ?? 'rates not told';
  return `${rate}; ${fullScale ?? 'full scale not told'} in ${bits ?? 'an untold number of'} bits`;
}

function meanings(board: BoardProfile): readonly (readonly string[])[] {
  return gather(rowsOf(board)).map(({ means, parts }) => [
    code(means),
    parts.map(({ setting }) => plain(nameText(setting))).join(', '),
    plain(counted(parts[0]?.setting.counts)),
    Object.entries(parts[0]?.setting.spelled ?? {})
      .map(([ours, theirs]) => plain(`${ours} = ${theirs}`))
      .join(', '),
  ]);
}

function ownRow(row: BoardSetting): readonly string[] {
  const { range, words, unit, remark = '' } = row;
  const taken = [range?.join(' to '), words?.join(', '), unit].filter((part) => part !== undefined);
  return [plain(nameText(row)), plain(taken.join(' ')), plain(remark)];
}

function nameText({ group = [], name }: BoardSetting): string {
  return [...[group].flat(), name].join(': ');
}

function counted({ unit, scale, offset }: BoardSetting['counts'] = {}): string {
  return [
    unit ?? '',
    scale === undefined ? '' : `times ${scale}`,
    offset === undefined ? '' : `plus ${offset}`,
  ]
    .filter((part) => part !== '')
    .join(' ');
}
