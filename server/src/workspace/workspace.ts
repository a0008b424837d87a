import type { KeptBeside } from '../board/kept/accepted';
import type { BoardLayer } from '../board/layer/layer';
import type { Catalog } from '../catalog/catalog';
import { Checker, type OnFault } from '../checks/checker';
import type { Finding } from '../checks/report/finding';
import { inScriptOrder } from '../checks/report/order';
import { Craft } from '../craft/craft';
import { type CraftKey, inputKeys } from '../craft/keys';
import type { Included, IncludeSource } from '../craft/layers';
import { groupsLikeCraft } from '../craft/read-as';
import { Script } from '../craft/script';
import { unusedConstants } from '../craft/unused-constants';
import type { DocumentEdit } from '../language/document';
import { StatementCache } from '../language/statement-cache';
import { canonicalUri } from './canonical-uri';
import { ClosedScripts, type ReadingRoom } from './closed-scripts';
import { faultyText } from './faulty-text';
import { type FileSystem, withoutMark } from './file-system';
import { FolderScripts } from './folder-scripts';
import { Includers } from './includers';
import { readBeside, textOfBesideFile } from './kept-beside';
import { Library, refusedText } from './library';
import { type BoardTextRoom, OpenBoardTexts } from './open-board-texts';
import { overriddenText } from './overridden-text';

/** A script that is open in an editor, or checked on the command line. */
export interface OpenScript {
  /** As the client spells it. */
  readonly uri: string;
  readonly script: Script;
  readonly craft: Craft;
  /** The client's number for the text as it stands. */
  readonly version: number;
}

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
  private readonly open = new Map<string, OpenScript>();
  /** The keys of open scripts by what the client calls them: each message names one. */
  private readonly keys = new Map<string, string>();
  /** Scripts say much that others say too, those that they include among them. */
  private readonly said = new StatementCache();
  private catalogInUse: Catalog;
  private library: Library;
  private checker: Checker;
  private readonly found = new Map<
    string,
    { readonly stamp: object; readonly findings: readonly Finding[] }
  >();
  /** A new object after each change to an open script or to anything that it includes. */
  private readonly stamps = new Map<string, object>();
  private readonly includers: Includers;
  private readonly folderScripts: FolderScripts;
  /** The scripts of its folders that are not open. */
  readonly closed: ClosedScripts;
  private readonly boardTexts: OpenBoardTexts;
  /** Who waits for a file. */
  private readonly awaitingFiles: (() => void)[] = [];

  constructor(private readonly options: WorkspaceOptions) {
    this.catalogInUse = options.catalog;
    this.library = this.newLibrary();
    this.boardTexts = new OpenBoardTexts(this.boardTextRoom());
    this.folderScripts = new FolderScripts(options.fileSystem);
    this.includers = new Includers(options.fileSystem, this.folderScripts, () => this.includesChanged());
    this.closed = new ClosedScripts(options.fileSystem, this.folderScripts, this.readingRoom());
    this.checker = new Checker(options.catalog, options.onFault);
  }

  get catalog(): Catalog {
    return this.catalogInUse;
  }

  /** The workspace knows more or less than before: every script is read anew. */
  useCatalog(catalog: Catalog): void {
    this.catalogInUse = catalog;
    this.library = this.newLibrary();
    this.checker = new Checker(catalog, this.options.onFault);
    for (const [key, { uri, script, version }] of this.open) {
      const text = this.boardTexts.readAnew(key) ?? script.document.text();
      this.open.set(key, this.made(key, uri, text, version));
      this.stamps.set(key, {});
      this.found.delete(key);
    }
    this.announce([...this.open.keys()]);
    this.wake();
    this.closed.onTouched({ kind: 'all' });
  }

  get(uri: string): OpenScript | undefined {
    return this.open.get(this.keyOf(uri));
  }

  /** A script that is open or that an open one includes. */
  script(uri: string): Script | undefined {
    const key = this.keyOf(uri);
    return this.open.get(key)?.script ?? this.library.script(key);
  }

  /** Scripts that are open, and all others that have been read: what they include, and what somebody looked through. */
  known(): readonly Script[] {
    const open = [...this.open.values()].map(({ script }) => script);
    const read = this.library.scripts().filter(({ uri }) => !this.open.has(uri));
    return [...open, ...read];
  }

  all(): readonly OpenScript[] {
    return [...this.open.values()];
  }

  /** What a board's text says that is open or that an open script includes. */
  layer(uri: string): BoardLayer | undefined {
    const key = this.keyOf(uri);
    return this.boardTexts.layer(key) ?? (this.open.has(key) ? undefined : this.library.layer(key));
  }

  /** The open scripts that include an open board's text. */
  includersOf(uri: string): readonly OpenScript[] {
    const text = this.get(uri)?.script;
    if (text?.isBoardText !== true) return [];
    return this.all().filter(({ script, craft }) => script !== text && craft.includes(text.uri));
  }

  openScript(uri: string, text: string, version: number): OpenScript {
    this.boardTexts.leave(canonicalUri(uri));
    return this.opened(uri, text, version);
  }

  /** A board's text, as a script. `board`: whose text it is, where that is known. */
  openBoardText(uri: string, text: string, version: number, board?: string): OpenScript {
    return this.opened(uri, this.boardTexts.open(canonicalUri(uri), text, board), version);
  }

  /** Takes in an open board's text as it is now; undefined when it is not open. */
  changeBoardText(uri: string, text: string, version: number): OpenScript | undefined {
    const edits = this.boardTexts.change(this.keyOf(uri), text);
    return edits === undefined ? undefined : this.change(uri, edits, version);
  }

  /** The pilot says whose text an open board's text is. */
  pickBoard(uri: string, board: string | null): void {
    this.boardTexts.pick(this.keyOf(uri), board);
  }

  /** What is kept beside a board's text, as its file says it now. */
  keptBeside(uri: string): Promise<KeptBeside> {
    return readBeside(this.options.fileSystem, this.keyOf(uri));
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
    const key = this.keyOf(uri);
    const before = this.open.get(key);
    if (before === undefined) return undefined;
    const changed = before.script.edit(edits);
    const after = { ...before, version };
    this.open.set(key, after);
    const concerned = [...this.open].filter(([, one]) => one === after || one.craft.includes(key));
    for (const [rootKey, { craft }] of concerned) {
      craft.changed(changed);
      this.stamps.set(rootKey, {});
    }
    this.announce(concerned.map(([rootKey]) => rootKey).filter((rootKey) => rootKey !== key));
    this.closed.onTouched({ kind: 'file', uri: key });
    if (changed.some(([what]) => what === 'include')) this.includesChanged();
    // Whether a part's constant is used is said by those that include it.
    const uses = changed.filter(([what]) => what === 'uses');
    if (uses.length > 0) this.changed(uses.slice(0, 1), key);
    return after;
  }

  /** Gives what was open; undefined when nothing was. */
  close(uri: string): OpenScript | undefined {
    const key = this.keyOf(uri);
    const closed = this.open.get(key);
    if (closed === undefined) return undefined;
    this.open.delete(key);
    this.keys.delete(closed.uri);
    this.boardTexts.close(key);
    this.stamps.delete(key);
    this.found.delete(key);
    this.library.forget(key);
    this.fileChanged(key);
    return closed;
  }

  /**
   * A file or folder appeared, changed or went away on the disk. Of a folder that is all one is told: its
   * files are not named. What is open in the editor counts more than the disk.
   */
  diskChanged(uri: string): void {
    const key = canonicalUri(uri);
    for (const file of [key, ...this.library.below(key)]) {
      if (this.open.has(file)) continue;
      // Of many notes about one file the first makes the crafts ask for it anew; till they do, there is no more to do.
      if (this.library.forget(file)) this.fileChanged(file);
    }
    const boardText = textOfBesideFile(key);
    if (boardText !== null) this.besideChanged(boardText);
    this.folderScripts.forget();
    this.includers.forget();
    this.includesChanged();
  }

  /** The workspace's folders are others now: what may be included is decided anew. */
  rootsChanged(): void {
    for (const [key, { craft }] of this.open) {
      craft.changed([inputKeys.include]);
      this.stamps.set(key, {});
    }
    this.announce([...this.open.keys()]);
    this.folderScripts.forget();
    this.includers.forget();
    this.includesChanged();
    this.closed.onTouched({ kind: 'all' });
  }

  /** What was found in an open script, in its order; computed when asked for and kept until something changes. */
  findings(uri: string): readonly Finding[] {
    const key = this.keyOf(uri);
    const one = this.open.get(key);
    const stamp = this.stamps.get(key);
    if (one === undefined || stamp === undefined) return [];
    const known = this.found.get(key);
    if (known?.stamp === stamp) return known.findings;
    const findings = this.check(one.craft);
    this.found.set(key, { stamp, findings });
    return findings;
  }

  /** What is wrong with a craft that is not open itself, such as a copy that something is tried on. */
  check(craft: Craft): readonly Finding[] {
    const findings = this.checker.findings(craft);
    const text = craft.boardText();
    const layer = text === undefined ? undefined : this.layer(text.uri);
    const all =
      layer === undefined
        ? findings
        : [...findings, ...faultyText(craft, layer, findings), ...overriddenText(craft, layer)];
    return inScriptOrder(all.filter(({ check }) => !this.catalog.isSilent(check.id)));
  }

  /** A craft of a text that is not open, such as an earlier revision; it does not follow later changes. */
  async detached(uri: string, text: string): Promise<Craft> {
    const { craft } = this.made(canonicalUri(uri), uri, text, 0);
    while (craft.layers().isPending) {
      await this.nextFile();
      craft.changed([inputKeys.include]);
    }
    return craft;
  }

  /** Changes with everything that could change the answer for an open script; the same object means the same answers. */
  stamp(uri: string): object | undefined {
    return this.stamps.get(this.keyOf(uri));
  }

  /** Resolves when every open script has what it includes and its board, as far as they can be read. */
  async settled(): Promise<void> {
    while (this.all().some(({ craft }) => this.isUnsettled(craft))) await this.nextFile();
  }

  /** Resolves when nothing that an open script includes is being read any more, or the script is closed. */
  async included(uri: string): Promise<void> {
    for (let open = this.get(uri); open !== undefined && this.isUnsettled(open.craft); open = this.get(uri))
      await this.nextFile();
  }

  /** Resolves when a board of the workspace has been read, if nobody had asked for it yet. */
  async boardRead(name: string): Promise<void> {
    while (this.catalog.isUnread(name)) {
      this.catalog.board(name);
      await this.nextFile();
    }
  }

  /**
   * Whether something that it includes is still being read, or its board is, or what it is taken for is still being
   * looked into.
   */
  private isUnsettled(craft: Craft): boolean {
    if (groupsLikeCraft(craft).length > 0) craft.isIncluded();
    unusedConstants.get(craft);
    const isLooking = this.includers.isLooking || this.boardTexts.isLooking;
    return craft.layers().isPending || isLooking || awaitsBoard(craft) || this.awaitsProfile(craft);
  }

  /** Whether a board's text of the craft may have a profile that is still being read. */
  private awaitsProfile(craft: Craft): boolean {
    return craft.layers().layers.some(({ script: { uri } }) => {
      const layer = this.layer(uri);
      return layer !== undefined && this.boardTexts.awaitsProfile(uri, layer);
    });
  }

  private opened(uri: string, text: string, version: number): OpenScript {
    const key = canonicalUri(uri);
    const opened = this.made(key, uri, text, version);
    this.keys.delete(this.open.get(key)?.uri ?? uri);
    this.keys.set(uri, key);
    this.open.set(key, opened);
    this.stamps.set(key, {});
    this.found.delete(key);
    this.fileChanged(key, key);
    return opened;
  }

  /** The file beside a text came, went or changed. */
  private besideChanged(key: string): void {
    if (this.boardTexts.besideChanged(key)) return;
    if (this.library.forget(key)) this.fileChanged(key);
  }

  private keyOf(uri: string): string {
    return this.keys.get(uri) ?? canonicalUri(uri);
  }

  private made(key: string, uri: string, text: string, version: number): OpenScript {
    const script = new Script(key, text, this.catalog, this.said, this.boardTexts.has(key));
    return { uri, script, craft: this.craftOf(key, script), version };
  }

  private craftOf(key: string, script: Script): Craft {
    const source: IncludeSource = {
      open: (included) => this.include(included, key),
      isIncluded: () => this.isIncluded(key),
      isUsedOutside: (constant) => this.isUsedOutside(key, constant),
    };
    return new Craft(script, this.catalog, source);
  }

  private boardTextRoom(): BoardTextRoom {
    const catalog = () => this.catalogInUse;
    return {
      fileSystem: this.options.fileSystem,
      get catalog() {
        return catalog();
      },
      readAgain: (key, edits) => {
        const open = this.open.get(key);
        if (open === undefined) return;
        this.change(open.uri, edits, open.version);
        this.announce([key]);
      },
      lookedUp: () => this.wake(),
    };
  }

  private readingRoom(): ReadingRoom {
    const catalog = () => this.catalogInUse;
    return {
      isOpen: (uri) => this.open.has(uri),
      load: (uri) => this.library.load(uri),
      isRead: (uri) => this.library.isHeld(uri),
      isOutdated: (uri) => this.isOutdated(uri),
      craftOf: (script) => this.craftOf(script.uri, script),
      isUnsettled: (craft) => this.isUnsettled(craft),
      nextFile: () => this.nextFile(),
      get catalog() {
        return catalog();
      },
    };
  }

  private async isOutdated(uri: string): Promise<boolean> {
    const isOutdated = await this.library.isOutdated(uri);
    if (isOutdated) this.fileChanged(uri);
    return isOutdated;
  }

  private newLibrary(): Library {
    return new Library(this.catalog, this.options.fileSystem, this.said, (uri) => this.fileChanged(uri));
  }

  private include(uri: string, fromUri: string): Included {
    const key = canonicalUri(uri);
    const why = this.options.fileSystem.refusal(key, fromUri);
    if (why !== null) return { kind: 'refused', why };
    const opened = this.open.get(key);
    if (opened === undefined) return this.library.open(key);
    const layer = this.boardTexts.layer(key);
    const refused = layer === undefined ? null : refusedText(layer);
    return refused ?? { kind: 'script', script: opened.script };
  }

  /** Whether another open script includes this one, or one that lies on the disk and is not open. */
  private isIncluded(uri: string): boolean {
    return (
      this.boardTexts.has(uri) ||
      [...this.open].some(([key, { craft }]) => key !== uri && craft.includes(uri)) ||
      this.includers.includes(uri, (includer) => !this.open.has(includer))
    );
  }

  /** Whether another script uses a constant that includes this one, itself or through others. */
  private isUsedOutside(uri: string, constant: string): boolean {
    const uses = ({ craft }: OpenScript) =>
      craft.layers().layers.some(({ script }) => script.usedNames.has(constant));
    return (
      [...this.open].some(([key, one]) => key !== uri && one.craft.includes(uri) && uses(one)) ||
      this.includers.use(uri, constant, (includer) => !this.open.has(includer))
    );
  }

  private fileChanged(uri: string, except?: string): void {
    this.closed.onTouched({ kind: 'file', uri });
    this.changed([inputKeys.file(uri)], except);
    this.includesChanged();
  }

  /** A script that others include is a part; which ones do may be others now. */
  private includesChanged(): void {
    this.changed([inputKeys.included]);
    this.closed.onTouched({ kind: 'includers' });
  }

  /** Tells every craft, and those who look at one that it concerns. */
  private changed(keys: readonly CraftKey[], except?: string): void {
    const concerned: string[] = [];
    for (const [key, { craft }] of this.open) {
      if (!craft.changed(keys)) continue;
      this.stamps.set(key, {});
      if (key !== except) concerned.push(key);
    }
    this.announce(concerned);
    this.wake();
  }

  /** Resolves when a file has been read or counts for another reason: what was read may include more. */
  private nextFile(): Promise<void> {
    return new Promise((resolve) => this.awaitingFiles.push(resolve));
  }

  private wake(): void {
    for (const resolve of this.awaitingFiles.splice(0)) resolve();
  }

  private announce(keys: readonly string[]): void {
    if (keys.length === 0) return;
    this.options.onAffected?.(keys.flatMap((key) => this.open.get(key)?.uri ?? []));
  }
}

/** Whether the profile of its board has not been read yet; it is asked for then. */
function awaitsBoard(craft: Craft): boolean {
  craft.board();
  return craft.catalog.isUnread(craft.boardName() ?? '');
}
