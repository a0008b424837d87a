import type { BoardLayer } from '../board/layer/layer';
import type { LayerReader } from '../board/layer/layer-reader';
import type { TextOrigin } from '../board/layer/profile-of-text';
import { boardReading } from '../board/layer/reading';
import type { FileSystem } from './file-system';

/** What is included and ends otherwise is a board's text. */
export function isScriptUri(uri: string): boolean {
  return uri.endsWith('.craft');
}

/** What a board's text is called whose file says by its name which text it is of. */
const choiceEnding = '.board.json';

/** The file beside a board's text that says which board it is of. */
function choiceFileOf(uri: string): string {
  return uri + choiceEnding;
}

/** The text that such a file is about; null for any other file. */
export function textOfChoiceFile(uri: string): string | null {
  return uri.endsWith(choiceEnding) ? uri.slice(0, -choiceEnding.length) : null;
}

/** The board that the file beside a text names; null where there is none that can be read. */
export async function pickedBoard(fileSystem: FileSystem, uri: string): Promise<string | null> {
  const text = await fileSystem.readText(choiceFileOf(uri)).catch(() => null);
  if (text === null || text.length > longestChoice) return null;
  return boardIn(text);
}

const longestChoice = 10_000;

function boardIn(text: string): string | null {
  try {
    const said: unknown = JSON.parse(text);
    const hasBoard = typeof said === 'object' && said !== null && 'board' in said;
    return hasBoard && typeof said.board === 'string' ? said.board : null;
  } catch {
    return null;
  }
}

/** A board's text that is open: read again after each edit. */
export class OpenBoardText {
  private readonly reader: LayerReader;
  readonly layer: BoardLayer;

  constructor(text: string, origin: TextOrigin, before?: OpenBoardText) {
    this.reader = before?.reader ?? readerOf(text, origin);
    this.layer = this.reader.read(text);
  }
}

function readerOf(text: string, origin: TextOrigin): LayerReader {
  const { LayerReader, profileOfText } = boardReading();
  return new LayerReader(origin.catalog, profileOfText(text, origin));
}
