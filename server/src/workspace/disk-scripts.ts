import { type BoardLayer, scriptTextOf } from '../board/layer/layer';
import { boardReading } from '../board/layer/reading';
import type { Catalog } from '../catalog/catalog';
import { fileName } from '../craft/include-path';
import type { Included } from '../craft/layers';
import { Script } from '../craft/script';
import type { StatementCache } from '../language/statement-cache';
import { uncapitalised } from '../units/capitals';
import { isScriptUri } from './board-texts';
import {
  type FileSystem,
  isBinary,
  longestScript,
  TooLongFile,
  whyUnreadable,
  withoutMark,
} from './file-system';
import { readBeside } from './kept-beside';

/** A file that is being read. */
interface FileReading {
  readonly done: Promise<void>;
  /** Whether a craft waits for it. */
  isAwaited: boolean;
}

/** Scripts and boards' texts that are included but not open: read once, kept until the disk says otherwise. */
export class DiskScripts {
  private readonly held = new Map<string, Included>();
  /** Of the boards' texts among them, what they say. */
  private readonly layers = new Map<string, BoardLayer>();
  private readonly reading = new Map<string, FileReading>();

  constructor(
    private readonly catalog: Catalog,
    private readonly fileSystem: FileSystem,
    private readonly statements: StatementCache,
    private readonly onRead: (uri: string) => void,
  ) {}

  /** What is known of a file now; reading starts when nothing is. */
  open(uri: string): Included {
    const held = this.held.get(uri);
    if (held !== undefined) return held;
    this.readingOf(uri).isAwaited = true;
    return { kind: 'pending' };
  }

  isHeld(uri: string): boolean {
    return this.held.has(uri);
  }

  /** Reads a file that nobody may have asked for yet: nobody is told when it is there. */
  async load(uri: string): Promise<Included> {
    for (;;) {
      const held = this.held.get(uri);
      if (held !== undefined) return held;
      await this.readingOf(uri).done;
    }
  }

  /** Whether a file that was read says something else by now; what it said is forgotten then. */
  async isOutdated(uri: string): Promise<boolean> {
    const before = this.held.get(uri);
    if (before === undefined) return false;
    const isSame = await this.saysTheSame(uri, before);
    if (this.held.get(uri) !== before || isSame) return false;
    this.forget(uri);
    return true;
  }

  /** A script is not parsed for that: its text tells. */
  private async saysTheSame(uri: string, before: Included): Promise<boolean> {
    if (before.kind === 'script' && !before.script.isBoardText) {
      const text = await this.fileSystem.readText(uri).catch(() => null);
      return text !== null && withoutMark(text) === before.script.document.text();
    }
    const now = await this.included(uri);
    if (before.kind !== 'script' || now.kind !== 'script') return before.kind === now.kind;
    return before.script.document.text() === now.script.document.text();
  }

  /** A script that has been read. */
  script(uri: string): Script | undefined {
    const held = this.held.get(uri);
    return held?.kind === 'script' ? held.script : undefined;
  }

  /** Every script that has been read. */
  scripts(): readonly Script[] {
    return [...this.held.values()].flatMap((one) => (one.kind === 'script' ? one.script : []));
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

  private readingOf(uri: string): FileReading {
    const known = this.reading.get(uri);
    if (known !== undefined) return known;
    const reading: FileReading = {
      isAwaited: false,
      done: this.included(uri).then((read) => this.take(uri, reading, read)),
    };
    this.reading.set(uri, reading);
    return reading;
  }

  private take(uri: string, reading: FileReading, included: Included): void {
    // What was forgotten meanwhile is old.
    if (this.reading.get(uri) !== reading) return;
    this.reading.delete(uri);
    this.held.set(uri, included);
    if (reading.isAwaited) this.onRead(uri);
  }

  private async included(uri: string): Promise<Included> {
    try {
      const text = await this.fileSystem.readText(uri);
      if (text === null) return { kind: 'missing' };
      if (isBinary(text)) return { kind: 'refused', why: 'it is not a text' };
      if (!isScriptUri(uri)) return await this.boardText(uri, withoutMark(text));
      if (text.length > longestScript)
        return { kind: 'too-long', why: 'it is too long for a settings script' };
      return { kind: 'script', script: new Script(uri, withoutMark(text), this.catalog, this.statements) };
    } catch (error) {
      const kind = error instanceof TooLongFile ? 'too-long' : 'refused';
      return { kind, why: whyUnreadable(error) };
    }
  }

  private async boardText(uri: string, text: string): Promise<Included> {
    const kept = await readBeside(this.fileSystem, uri);
    const origin = { catalog: this.catalog, fileName: fileName(uri), picked: kept.board };
    const layer = boardReading().readLayer(text, origin, kept);
    const refused = refusedText(layer);
    if (refused !== null) return refused;
    this.layers.set(uri, layer);
    return {
      kind: 'script',
      script: new Script(uri, scriptTextOf(layer), this.catalog, this.statements, true),
    };
  }
}

/** What an include of a text leads to that holds more than is read; null for any other. */
export function refusedText({ refused }: BoardLayer): Included | null {
  if (refused === null) return null;
  return { kind: 'too-long', why: uncapitalised(refused).replace(/\.$/, '') };
}
