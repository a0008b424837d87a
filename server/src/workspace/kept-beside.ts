import type { AcceptedBeside, KeptBeside, KeptChange } from '../board/kept/accepted';
import { nothingBeside } from '../board/kept/accepted';
import { settingKey } from '../board/listing/setting-key';
import { type FileSystem, whyUnreadable } from './file-system';

/** What a board's text is called whose file keeps what is said of it. */
const ending = '.board.json';

/** How the files are called that are kept beside a script or a board's text, after its own name. */
export const recordEndings: readonly string[] = ['.handed.json', '.flown.json', ending];

/** The file beside a board's text. */
export function besideFileOf(uri: string): string {
  return uri + ending;
}

/** The text that such a file is about; null for any other file. */
export function textOfBesideFile(uri: string): string | null {
  return uri.endsWith(ending) ? uri.slice(0, -ending.length) : null;
}

/** What the file beside a text says; nothing where there is none. */
export async function readBeside(fileSystem: FileSystem, uri: string): Promise<KeptBeside> {
  try {
    const text = await fileSystem.readText(besideFileOf(uri));
    if (text === null) return nothingBeside;
    const { besideIn } = await import('../additions/read-beside');
    return besideIn(text);
  } catch (error) {
    return { ...nothingBeside, fault: whyUnreadable(error) };
  }
}

/** The same with something changed. */
export function withChange(kept: KeptBeside, change: KeptChange): KeptBeside {
  const { board, withdraw, accept } = change;
  const others = kept.accepted.filter((one) => !isSame(one, withdraw) && !isSame(one, accept));
  return {
    ...kept,
    board: board ?? kept.board,
    accepted: accept === null ? others : [...others, accept],
  };
}

type AcceptedCheck = Omit<AcceptedBeside, 'reason'>;

function isSame({ setting, check }: AcceptedCheck, other: AcceptedCheck | null): boolean {
  return other !== null && check === other.check && settingKey(setting) === settingKey(other.setting);
}

/** As it stands in its file: an acceptance a line, so that it is read easily where it changed. */
export function keptText({ board, accepted }: KeptBeside): string {
  const parts = [
    '  "version": 1',
    ...(board === null ? [] : [`  "board": ${JSON.stringify(board)}`]),
    ...(accepted.length === 0
      ? []
      : [`  "accepted": [\n${accepted.map((one) => `    ${rowText(one)}`).join(',\n')}\n  ]`]),
  ];
  return `{\n${parts.join(',\n')}\n}\n`;
}

function rowText({ setting: { groups, name, occurrence, item }, check, reason }: AcceptedBeside): string {
  const row = {
    setting: [...groups, name],
    ...(occurrence === 1 ? {} : { occurrence }),
    ...(item === undefined ? {} : { value: item }),
    check,
    reason,
  };
  const members = Object.entries(row).map(([key, value]) => `"${key}": ${inOneLine(value)}`);
  return `{ ${members.join(', ')} }`;
}

function inOneLine(value: string | number | readonly string[]): string {
  return typeof value === 'object'
    ? `[${value.map((one) => JSON.stringify(one)).join(', ')}]`
    : JSON.stringify(value);
}
