import { type BoardLayer, scriptTextOf } from '../board/layer/layer';
import { boardReading } from '../board/layer/reading';
import type { Catalog } from '../catalog/catalog';
import { fileName } from '../craft/include-path';
import type { Included } from '../craft/layers';
import { Script } from '../craft/script';
import type { StatementCache } from '../language/statement-cache';
import { isScriptUri, pickedBoard } from './board-texts';
import {
  type FileSystem,
  isBinary,
  longestScript,
  TooLongFile,
  whyUnreadable,
  withoutMark,
} from './file-system';

/** Scripts and boards' texts that are included but not open: read once, kept until the disk says otherwise. */
export class Library {
  private readonly held = new Map<string, Included>();
  /** Of the boards' texts among them, what they say. */
  private readonly layers = new Map<string, BoardLayer>();
  private readonly reading = new Map<string, Promise<void>>();

  constructor(
    private readonly catalog: Catalog,
    private readonly fileSystem: FileSystem,
    private readonly said: StatementCache,
    private readonly onRead: (uri: string) => void,
  ) {}

  /** What is known of a file now; reading starts when nothing is. */
  open(uri: string): Included {
    const held = this.held.get(uri);
    if (held !== undefined) return held;
    if (!this.reading.has(uri)) this.reading.set(uri, this.read(uri));
    return { kind: 'pending' };
  }

  /** A script that has been read. */
  script(uri: string): Script | undefined {
    const held = this.held.get(uri);
    return held?.kind === 'script' ? held.script : undefined;
  }

  /** What a board's text says that has been read. */
  layer(uri: string): BoardLayer | undefined {
    return this.layers.get(uri);
  }

  /** The files in a folder that are included or were looked for. */
  below(folder: string): readonly string[] {
    return [...this.held.keys(), ...this.reading.keys()].filter((uri) => uri.startsWith(`${folder}/`));
  }

  /** False when nothing was known of the file: then no craft counts on it. */
  forget(uri: string): boolean {
    const wasHeld = this.held.delete(uri);
    this.layers.delete(uri);
    const wasRead = this.reading.delete(uri); // an answer that is still on its way is old, and dropped when it comes
    return wasHeld || wasRead;
  }

  private async read(uri: string): Promise<void> {
    // Let `open` note the promise first: it tells a current answer from an old one.
    await Promise.resolve();
    const mine = this.reading.get(uri);
    const included = await this.included(uri);
    if (this.reading.get(uri) !== mine) return;
    this.reading.delete(uri);
    this.held.set(uri, included);
    this.onRead(uri);
  }

  private async included(uri: string): Promise<Included> {
    try {
      const text = await this.fileSystem.readText(uri);
      if (text === null) return { kind: 'missing' };
      if (isBinary(text)) return { kind: 'refused', why: 'it is not a text' };
      if (!isScriptUri(uri)) return await this.boardText(uri, withoutMark(text));
      if (text.length > longestScript)
        return { kind: 'too-long', why: 'it is too long for a settings script' };
      return { kind: 'script', script: new Script(uri, withoutMark(text), this.catalog, this.said) };
    } catch (error) {
      const kind = error instanceof TooLongFile ? 'too-long' : 'refused';
      return { kind, why: whyUnreadable(error) };
    }
  }

  private async boardText(uri: string, text: string): Promise<Included> {
    const picked = await pickedBoard(this.fileSystem, uri);
    const layer = boardReading().readLayer(text, { catalog: this.catalog, fileName: fileName(uri), picked });
    const refused = refusedText(layer);
    if (refused !== null) return refused;
    this.layers.set(uri, layer);
    return { kind: 'script', script: new Script(uri, scriptTextOf(layer), this.catalog, this.said, true) };
  }
}

/** What an include of a text leads to that holds more than is read; null for any other. */
export function refusedText({ refused }: BoardLayer): Included | null {
  if (refused === null) return null;
  return { kind: 'too-long', why: refused.charAt(0).toLowerCase() + refused.slice(1).replace(/\.$/, '') };
}
