import type { KeptBeside } from '../board/kept/accepted';
import type { BoardLayer } from '../board/layer/layer';
import type { LayerReader } from '../board/layer/layer-reader';
import type { TextOrigin } from '../board/layer/profile-of-text';
import { boardReading } from '../board/layer/reading';

/** What is included and ends otherwise is a board's text. */
export function isScriptUri(uri: string): boolean {
  return uri.endsWith('.craft');
}

/** A board's text that is open: read again after each edit. */
export class OpenBoardText {
  private readonly reader: LayerReader;
  readonly layer: BoardLayer;

  constructor(text: string, origin: TextOrigin, kept: KeptBeside, before?: OpenBoardText) {
    this.reader = before?.reader ?? readerOf(text, origin, kept);
    if (before !== undefined && before.layer.kept !== kept) this.reader.keep(kept);
    this.layer = this.reader.read(text);
  }
}

function readerOf(text: string, origin: TextOrigin, kept: KeptBeside): LayerReader {
  const { LayerReader, profileOfText } = boardReading();
  return new LayerReader(origin.catalog, profileOfText(text, origin), kept);
}
