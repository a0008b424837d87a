import type { Stated } from '../../board/listing/listing';
import { rowOfOwn } from '../../board/profile/own-rows';
import type { BoardSetting } from '../../catalog/model/board-profile';
import { inputKeys } from '../../craft/keys';
import { code, escaped } from '../markdown';
import type { Snapshot } from '../snapshot';

/** What a board's listing says beside one of its settings. */
export interface StatedBeside {
  readonly low: string | null;
  readonly high: string | null;
  readonly words: readonly string[];
  readonly assumed: string | null;
  readonly unit: string | null;
  readonly remark: string | null;
}

/** The same from a profile, which was made of a listing, and from the text at hand. */
export function statedBeside(
  row: BoardSetting | undefined,
  stated: Omit<Stated, 'at'> | null | undefined,
): StatedBeside {
  return {
    low: row?.range?.[0] ?? stated?.range?.low ?? null,
    high: row?.range?.[1] ?? stated?.range?.high ?? null,
    words: row?.words ?? stated?.words ?? [],
    assumed: row?.default ?? stated?.default ?? null,
    unit: row?.unit ?? stated?.unit ?? null,
    remark: row?.remark ?? stated?.remark ?? null,
  };
}

/** What is stated of a setting that a craft has under `own`: by the board's text that it includes, and by its board. */
export function statedOfOwn({ craft, layer }: Snapshot, path: string): StatedBeside {
  const board = craft.board();
  const row = board === undefined ? undefined : rowOfOwn(board, path)?.row.setting;
  const [text] = craft
    .lines(inputKeys.setting(path))
    .flatMap(({ script, line }) => layer(script.uri)?.settings[script.lineNumber(line)] ?? []);
  return statedBeside(row, text?.stated);
}

/** So many words are named. */
const mostWords = 20;

/** What is stated, as a paragraph; null where nothing is. */
export function statedText({ low, high, words, assumed, unit, remark }: StatedBeside): string | null {
  const told = [
    ...(low === null || high === null ? [] : [`- ${code(low)} to ${code(high)}`]),
    ...(words.length === 0 ? [] : [`- one of ${listed(words)}`]),
    ...(assumed === null ? [] : [`- its default is ${code(assumed)}`]),
    ...(unit === null ? [] : [`- in ${escaped(unit)}`]),
    ...(remark === null ? [] : [`- “${escaped(remark)}”`]),
  ];
  return told.length === 0 ? null : ['The board’s own listing says:', ...told].join('\n');
}

function listed(words: readonly string[]): string {
  const more = words.length - mostWords;
  const shown = words.slice(0, mostWords).map(code).join(', ');
  return more > 0 ? `${shown} and ${more} more` : shown;
}
