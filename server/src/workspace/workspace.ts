import type { KeptBeside } from '../board/kept/accepted';
import type { BoardLayer } from '../board/layer/layer';
import type { Catalog } from '../catalog/catalog';
import type { OnFault } from '../checks/checker';
import type { Finding } from '../checks/report/finding';
import { Craft } from '../craft/craft';
import { type CraftKey, inputKeys } from '../craft/keys';
import { Script } from '../craft/script';
import type { DocumentEdit } from '../language/document';
import { StatementCache } from '../language/statement-cache';
import { AwaitedFiles } from './awaited-files';
import { canonicalUri } from './canonical-uri';
import { ClosedScripts, type WorkspaceOfClosedScripts } from './closed-scripts';
import { CraftFindings } from './craft-findings';
import { DiskScripts } from './disk-scripts';
import { type FileSystem, withoutMark } from './file-system';
import { FolderScripts } from './folder-scripts';
import { includeSourceOf } from './include-sources';
import { Includers } from './includers';
import { readBeside, textOfBesideFile } from './kept-beside';
import { OpenBoardTexts, type WorkspaceOfBoardTexts } from './open-board-texts';
import { type OpenScript, OpenScripts } from './open-scripts';

export interface WorkspaceOptions {
  readonly catalog: Catalog;
  readonly fileSystem: FileSystem;
  /** Told the URIs of open scripts whose findings may have changed through something other than their own edit. */
  readonly onAffected?: (uris: readonly string[]) => void;
  readonly onFault?: OnFault;
}

/**
 * All scripts that are open, what they include, and the crafts they make. Every change comes in here and
 * goes on to exactly the crafts that it concerns.
 */
export class Workspace {
  private readonly open: OpenScripts;
  /** Shared by all scripts: they hold many equal lines. */
  private readonly statements = new StatementCache();
  private catalogInUse: Catalog;
  private onDisk: DiskScripts;
  private crafts: CraftFindings;
  private readonly includers: Includers;
  private readonly folderScripts: FolderScripts;
  /** The scripts of its folders that are not open. */
  readonly closed: ClosedScripts;
  private readonly boardTexts: OpenBoardTexts;
  private readonly files: AwaitedFiles;

  constructor(private readonly options: WorkspaceOptions) {
    this.catalogInUse = options.catalog;
    this.open = new OpenScripts(options.onAffected);
    this.onDisk = this.newDiskScripts();
    this.boardTexts = new OpenBoardTexts(this.forBoardTexts());
    this.folderScripts = new FolderScripts(options.fileSystem);
    this.includers = new Includers(options.fileSystem, this.folderScripts, () => this.includesChanged());
    this.closed = new ClosedScripts(options.fileSystem, this.folderScripts, this.forClosedScripts());
    const layer = (uri: string) => this.layer(uri);
    this.files = new AwaitedFiles({ includers: this.includers, boardTexts: this.boardTexts, layer });
    this.crafts = this.newFindings();
  }

  get catalog(): Catalog {
    return this.catalogInUse;
  }

  /** The workspace knows more or less than before: every script is read anew. */
  useCatalog(catalog: Catalog): void {
    this.catalogInUse = catalog;
    this.onDisk = this.newDiskScripts();
    this.crafts = this.newFindings();
    for (const [key, { uri, script, version }] of this.open.entries()) {
      const text = this.boardTexts.readAnew(key) ?? script.document.text();
      this.open.put(key, this.newOpenScript(key, uri, text, version));
    }
    this.open.affect(this.open.entries().map(([key]) => key));
    this.files.arrived();
    this.closed.onTouched({ kind: 'all' });
  }

  get(uri: string): OpenScript | undefined {
    return this.open.get(this.open.keyOf(uri));
  }

  /** A script that is open or that an open one includes. */
  script(uri: string): Script | undefined {
    const key = this.open.keyOf(uri);
    return this.open.get(key)?.script ?? this.onDisk.script(key);
  }

  /** Scripts that are open, and all others that have been read: what they include, and what somebody looked through. */
  allRead(): readonly Script[] {
    const open = this.open.all().map(({ script }) => script);
    const read = this.onDisk.scripts().filter(({ uri }) => !this.open.has(uri));
    return [...open, ...read];
  }

  allOpen(): readonly OpenScript[] {
    return this.open.all();
  }

  /** What a board's text says that is open or that an open script includes. */
  layer(uri: string): BoardLayer | undefined {
    const key = this.open.keyOf(uri);
    return this.boardTexts.layer(key) ?? (this.open.has(key) ? undefined : this.onDisk.layer(key));
  }

  /** The open scripts that include an open board's text. */
  includersOf(uri: string): readonly OpenScript[] {
    const text = this.get(uri)?.script;
    if (text?.isBoardText !== true) return [];
    return this.allOpen().filter(({ script, craft }) => script !== text && craft.includes(text.uri));
  }

  openScript(uri: string, text: string, version: number): OpenScript {
    this.boardTexts.leave(canonicalUri(uri));
    return this.putOpen(uri, text, version);
  }

  /** A board's text, as a script. `board`: whose text it is, where that is known. */
  openBoardText(uri: string, text: string, version: number, board?: string): OpenScript {
    return this.putOpen(uri, this.boardTexts.open(canonicalUri(uri), text, board), version);
  }

  /** Takes in an open board's text as it is now; undefined when it is not open. */
  changeBoardText(uri: string, text: string, version: number): OpenScript | undefined {
    const edits = this.boardTexts.change(this.open.keyOf(uri), text);
    return edits === undefined ? undefined : this.change(uri, edits, version);
  }

  /** The pilot says whose text an open board's text is. */
  pickBoard(uri: string, board: string | null): void {
    this.boardTexts.pick(this.open.keyOf(uri), board);
  }

  /** What is kept beside a board's text, as its file says it now. */
  keptBeside(uri: string): Promise<KeptBeside> {
    return readBeside(this.options.fileSystem, this.open.keyOf(uri));
  }

  /** A file as it is on the disk; null where there is none, or it can't be read. */
  async fileText(uri: string): Promise<string | null> {
    const text = await this.options.fileSystem.readText(uri).catch(() => null);
    return text === null ? null : withoutMark(text);
  }

  /** The files right in a folder, as canonical URIs; none where it can't be looked into. */
  async filesIn(folder: string): Promise<readonly string[]> {
    return (await this.options.fileSystem.list(folder).catch(() => [])).map(canonicalUri);
  }

  /** Takes in edits of an open script; undefined when it is not open. */
  change(uri: string, edits: Iterable<DocumentEdit>, version: number): OpenScript | undefined {
    const key = this.open.keyOf(uri);
    const before = this.open.get(key);
    if (before === undefined) return undefined;
    const changed = before.script.edit(edits);
    const after = { ...before, version };
    this.open.put(key, after);
    const concerned = this.open.entries().filter(([, one]) => one === after || one.craft.includes(key));
    for (const [rootKey, { craft }] of concerned) {
      craft.changed(changed);
      this.open.touch(rootKey);
    }
    this.open.affect(concerned.map(([rootKey]) => rootKey).filter((rootKey) => rootKey !== key));
    this.closed.onTouched({ kind: 'file', uri: key });
    if (changed.some(([what]) => what === 'include')) this.includesChanged();
    // Whether a part's constant is used is said by those that include it.
    const uses = changed.filter(([what]) => what === 'uses');
    if (uses.length > 0) this.invalidate(uses.slice(0, 1), key);
    return after;
  }

  /** Gives what was open; undefined when nothing was. */
  close(uri: string): OpenScript | undefined {
    const key = this.open.keyOf(uri);
    const closed = this.open.remove(key);
    if (closed === undefined) return undefined;
    this.boardTexts.close(key);
    this.onDisk.forget(key);
    this.fileChanged(key);
    return closed;
  }

  /**
   * A file or folder appeared, changed or went away on the disk. Of a folder that is all one is told: its
   * files are not named. What is open in the editor counts more than the disk.
   */
  diskChanged(uri: string): void {
    const key = canonicalUri(uri);
    this.forgetRead([key, ...this.onDisk.below(key)]);
    const boardText = textOfBesideFile(key);
    if (boardText !== null) this.besideChanged(boardText);
    this.folderScripts.forget();
    this.includers.forget();
    this.includesChanged();
  }

  private forgetRead(files: readonly string[]): void {
    for (const file of files) {
      if (this.open.has(file)) continue;
      // Of many notes about one file the first makes the crafts ask for it anew; till they do, there is no more to do.
      if (this.onDisk.forget(file)) this.fileChanged(file);
    }
  }

  /** The workspace's folders are others now: what may be included is decided anew. `left`: those that are no more. */
  rootsChanged(left: readonly string[]): void {
    for (const folder of left) this.forgetRead(this.onDisk.below(canonicalUri(folder).replace(/\/$/, '')));
    this.open.changedAll([inputKeys.include]);
    this.folderScripts.forget();
    this.includers.forget();
    this.includesChanged();
    this.closed.onTouched({ kind: 'all' });
  }

  /** What was found in an open script, in its order; computed when asked for and kept until something changes. */
  findings(uri: string): readonly Finding[] {
    const key = this.open.keyOf(uri);
    const one = this.open.get(key);
    const stamp = this.open.stamp(key);
    return one === undefined || stamp === undefined ? [] : this.crafts.at(stamp, one.craft);
  }

  /** What is wrong with a craft that is not open itself, such as a copy that something is tried on. */
  check(craft: Craft): readonly Finding[] {
    return this.crafts.of(craft);
  }

  /** A craft of a text that is not open, such as an earlier revision; it does not follow later changes. */
  async detached(uri: string, text: string): Promise<Craft> {
    const { craft } = this.newOpenScript(canonicalUri(uri), uri, text, 0);
    while (craft.layers().isPending) {
      await this.files.next();
      craft.changed([inputKeys.include]);
    }
    return craft;
  }

  /** Changes with everything that could change the answer for an open script; the same object means the same answers. */
  stamp(uri: string): object | undefined {
    return this.open.stamp(this.open.keyOf(uri));
  }

  /** Resolves when every open script has what it includes and its board, as far as they can be read. */
  async settled(): Promise<void> {
    while (this.allOpen().some(({ craft }) => this.files.isUnsettled(craft))) await this.files.next();
  }

  /** Resolves when nothing that an open script includes is being read any more, or the script is closed. */
  async included(uri: string): Promise<void> {
    for (
      let open = this.get(uri);
      open !== undefined && this.files.isUnsettled(open.craft);
      open = this.get(uri)
    )
      await this.files.next();
  }

  /** Resolves when a board of the workspace has been read, if nobody had asked for it yet. */
  async boardRead(name: string): Promise<void> {
    while (this.catalog.isUnread(name)) {
      this.catalog.board(name);
      await this.files.next();
    }
  }

  private putOpen(uri: string, text: string, version: number): OpenScript {
    const key = canonicalUri(uri);
    const opened = this.newOpenScript(key, uri, text, version);
    this.open.put(key, opened);
    this.fileChanged(key, key);
    return opened;
  }

  /** The file beside a text came, went or changed. */
  private besideChanged(key: string): void {
    if (this.boardTexts.besideChanged(key)) return;
    if (this.onDisk.forget(key)) this.fileChanged(key);
  }

  private newOpenScript(key: string, uri: string, text: string, version: number): OpenScript {
    const script = new Script(key, text, this.catalog, this.statements, this.boardTexts.has(key));
    return { uri, script, craft: this.craftOf(key, script), version };
  }

  private craftOf(key: string, script: Script): Craft {
    const { fileSystem } = this.options;
    const { open, boardTexts, includers } = this;
    const places = { fileSystem, open, boardTexts, includers, onDisk: () => this.onDisk };
    return new Craft(script, this.catalog, includeSourceOf(key, places));
  }

  private forBoardTexts(): WorkspaceOfBoardTexts {
    return {
      fileSystem: this.options.fileSystem,
      catalog: () => this.catalogInUse,
      readAgain: (key, edits) => {
        const open = this.open.get(key);
        if (open === undefined) return;
        this.change(open.uri, edits, open.version);
        this.open.affect([key]);
      },
      lookedUp: () => this.files.arrived(),
    };
  }

  private forClosedScripts(): WorkspaceOfClosedScripts {
    return {
      isOpen: (uri) => this.open.has(uri),
      load: (uri) => this.onDisk.load(uri),
      isRead: (uri) => this.onDisk.isHeld(uri),
      isOutdated: (uri) => this.isOutdated(uri),
      craftOf: (script) => this.craftOf(script.uri, script),
      isUnsettled: (craft) => this.files.isUnsettled(craft),
      nextFile: () => this.files.next(),
      catalog: () => this.catalogInUse,
    };
  }

  private async isOutdated(uri: string): Promise<boolean> {
    const isOutdated = await this.onDisk.isOutdated(uri);
    if (isOutdated) this.fileChanged(uri);
    return isOutdated;
  }

  private newDiskScripts(): DiskScripts {
    return new DiskScripts(this.catalog, this.options.fileSystem, this.statements, (uri) =>
      this.fileChanged(uri),
    );
  }

  private newFindings(): CraftFindings {
    return new CraftFindings(this.catalog, (uri) => this.layer(uri), this.options.onFault);
  }

  private fileChanged(uri: string, except?: string): void {
    this.closed.onTouched({ kind: 'file', uri });
    this.invalidate([inputKeys.file(uri)], except);
    this.includesChanged();
  }

  /** A script that others include is a part; which ones do may be others now. */
  private includesChanged(): void {
    this.invalidate([inputKeys.included]);
    this.closed.onTouched({ kind: 'includers' });
  }

  /** The crafts of all open scripts, but for `except`, ask anew for what they computed from these inputs. */
  private invalidate(inputs: readonly CraftKey[], except?: string): void {
    this.open.changed(inputs, except);
    this.files.arrived();
  }
}
