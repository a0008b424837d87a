import { type KeptBeside, nothingBeside } from '../board/kept/accepted';
import { type BoardLayer, scriptTextOf } from '../board/layer/layer';
import { boardReading } from '../board/layer/reading';
import type { Catalog } from '../catalog/catalog';
import { fileName } from '../craft/include-path';
import type { DocumentEdit } from '../language/document';
import { OpenBoardText } from './board-texts';
import type { FileSystem } from './file-system';
import { readBeside } from './kept-beside';

/** What a board's text needs of the workspace that it is open in. */
export interface WorkspaceOfBoardTexts {
  readonly fileSystem: FileSystem;
  readonly catalog: () => Catalog;
  /** The text of an open script is read otherwise than before, by another board's profile. */
  readonly readAgain: (key: string, edits: readonly DocumentEdit[]) => void;
  /** What is kept beside a text has been looked up. */
  readonly lookedUp: () => void;
}

/** The boards' texts among the open scripts, by canonical URI: whose each is, what it says, and what is kept beside it. */
export class OpenBoardTexts {
  private readonly texts = new Map<string, OpenBoardText>();
  /** Which boards the pilot picked. */
  private readonly picked = new Map<string, string | null>();
  private readonly kept = new Map<string, KeptBeside>();
  /** Those of which it is being looked up what is kept beside them. */
  private readonly lookups = new Map<string, Promise<void>>();

  constructor(private readonly workspace: WorkspaceOfBoardTexts) {}

  has(key: string): boolean {
    return this.texts.has(key);
  }

  layer(key: string): BoardLayer | undefined {
    return this.texts.get(key)?.layer;
  }

  get isLooking(): boolean {
    return this.lookups.size > 0;
  }

  /** Takes a text in and gives the script that it comes to. `board`: whose text it is, where that is known. */
  open(key: string, text: string, board: string | undefined): string {
    if (board !== undefined) this.picked.set(key, board);
    this.lookUpBeside(key);
    return this.read(key, text);
  }

  /** Takes in an open text as it is now, and gives what changes of its script; undefined when it is not open. */
  change(key: string, text: string): readonly DocumentEdit[] | undefined {
    const before = this.texts.get(key);
    if (before === undefined) return undefined;
    return this.readInstead(
      key,
      before,
      new OpenBoardText(text, this.originOf(key), this.keptOf(key), before),
    );
  }

  /** The pilot says whose text it is. */
  pick(key: string, board: string | null): void {
    this.picked.set(key, board);
    const before = this.texts.get(key);
    if (before !== undefined)
      this.readAgain(key, before, new OpenBoardText(before.layer.text, this.originOf(key), this.keptOf(key)));
  }

  /** By what is known now; gives its script, undefined for what is no board's text. */
  readAnew(key: string): string | undefined {
    const before = this.texts.get(key);
    return before === undefined ? undefined : this.read(key, before.layer.text);
  }

  /** The file beside a text came, went or changed; false when the text is not open. */
  besideChanged(key: string): boolean {
    if (!this.texts.has(key)) return false;
    this.lookUpBeside(key);
    return true;
  }

  /** What was opened as a board's text is a script now. */
  leave(key: string): void {
    this.texts.delete(key);
  }

  /** Nothing is known any more of what is closed. */
  close(key: string): void {
    for (const map of [this.texts, this.picked, this.kept, this.lookups]) map.delete(key);
  }

  /** Whether a text may have a profile that is still being read. */
  awaitsProfile(key: string, layer: BoardLayer): boolean {
    return boardReading().awaitsProfile(layer, this.originOf(key));
  }

  private read(key: string, text: string): string {
    const read = new OpenBoardText(text, this.originOf(key), this.keptOf(key));
    this.texts.set(key, read);
    return scriptTextOf(read.layer);
  }

  private readAgain(key: string, before: OpenBoardText, after: OpenBoardText): void {
    this.workspace.readAgain(key, this.readInstead(key, before, after));
  }

  private readInstead(key: string, before: OpenBoardText, after: OpenBoardText): readonly DocumentEdit[] {
    this.texts.set(key, after);
    return boardReading().scriptEdits(before.layer, after.layer);
  }

  private originOf(key: string) {
    const picked = this.picked.get(key) ?? this.keptOf(key).board;
    return { catalog: this.workspace.catalog(), fileName: fileName(key), picked };
  }

  private keptOf(key: string): KeptBeside {
    return this.kept.get(key) ?? nothingBeside;
  }

  /** Looks for the file beside a text that says whose it is, and what of its risks is accepted. */
  private lookUpBeside(key: string): void {
    const look = readBeside(this.workspace.fileSystem, key).then((kept) => {
      // What was closed or asked anew meanwhile is old.
      if (this.lookups.get(key) !== look) return;
      this.lookups.delete(key);
      this.keep(key, kept);
      this.workspace.lookedUp();
    });
    this.lookups.set(key, look);
  }

  private keep(key: string, kept: KeptBeside): void {
    const before = this.texts.get(key);
    if (before === undefined || JSON.stringify(kept) === JSON.stringify(this.keptOf(key))) return;
    const isOther = kept.board !== null && kept.board !== this.keptOf(key).board;
    this.kept.set(key, kept);
    if (isOther) this.picked.delete(key);
    const origin = this.originOf(key);
    // By the same profile, what the text was when it was opened still counts.
    const isSame = !isOther || origin.picked === before.layer.profile?.name;
    this.readAgain(
      key,
      before,
      new OpenBoardText(before.layer.text, origin, kept, isSame ? before : undefined),
    );
  }
}
