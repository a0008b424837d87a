import type { BoardSetting } from '../../src/catalog/model/board-text';
import type { Bundle } from '../../src/catalog/model/bundle';
import { code, plain, table } from './table';

type Board = Bundle['boards'][number];

/** What each board has, and its own words for the catalogue's parameters. */
export function boardSections({ boards }: Bundle): readonly string[] {
  return [`## Boards (${boards.length})`, ...boards.flatMap(boardSection)];
}

function boardSection(board: Board): readonly string[] {
  return [
    `### ${board.title} (${code(board.name)})`,
    board.summary,
    table(['part', 'what it is'], hardware(board)),
    table(['parameter', 'its name on the board', 'counted in', 'words'], words(board)),
  ];
}

function hardware(board: Board) {
  const { ports, motorOutputs, motorsAsPrinted, rails, gyro, packInput, log, overlay, sensors } = board;
  const rail = rails.map(({ name, voltage, currentLimit }) =>
    [name, voltage ?? 'as the pack', currentLimit === null ? '' : `up to ${currentLimit}`]
      .filter((part) => part !== '')
      .join(' '),
  );
  return [
    ['ports', ports.map(({ name }) => name).join(', ')],
    ['motor outputs', `${motorOutputs}`],
    ['motors as drawn', motorsAsPrinted === undefined ? 'not told' : motorsAsPrinted.join(', ')],
    ['supplies', rail.join('; ')],
    ['gyro', `${gyro.rates.join(', ')}; ${gyro.fullScale} in ${gyro.bits} bits`],
    ['pack', `up to ${packInput.mostCells} cells`],
    ['log', log === null ? 'none' : `${log.medium}, ${log.size}`],
    ['overlay', overlay ? 'yes' : 'no'],
    ['sensors', sensors.length === 0 ? 'none' : sensors.join(', ')],
  ];
}

function words({ names }: Board): readonly (readonly string[])[] {
  return names.flatMap(({ group, settings }) =>
    settings.map((setting) => [
      code(setting.parameter),
      setting.names.map((name) => plain(`${group}: ${name}`)).join(', '),
      plain(counted(setting)),
      Object.entries(setting.words ?? {})
        .map(([ours, theirs]) => plain(`${ours} = ${theirs}`))
        .join(', '),
    ]),
  );
}

function counted({ unit, scale, offset }: BoardSetting): string {
  return [
    unit ?? '',
    scale === undefined ? '' : `times ${scale}`,
    offset === undefined ? '' : `plus ${offset}`,
  ]
    .filter((part) => part !== '')
    .join(' ');
}
