import type { Additions } from '../additions/additions';
import { type AdditionProblem, unreadableProblem } from '../additions/problem';
import { type Catalog, loadCatalog } from '../catalog/catalog';
import type { Bundle } from '../catalog/model/bundle';
import type { WorkspaceChoices } from '../catalog/model/workspace-choices';
import { noChoices } from '../catalog/no-choices';
import { fileName } from '../craft/include-path';
import { BoardFiles } from './board-files';
import { canonicalUri } from './canonical-uri';
import { ChoiceFiles, choicesFileName, levelsOf } from './choice-files';
import { type FileSystem, whyUnreadable, withoutMark } from './file-system';

/** The folders of a workspace in which files add to the catalogue: parts of all kinds, and board profiles. */
export const additionFolders: readonly string[] = ['propsoff', 'boards'];

type Problems = ReadonlyMap<string, readonly AdditionProblem[]>;

function isOfBoard(file: string): boolean {
  return file.split('/').at(-2) === 'boards';
}

/** A file as people know it: `propsoff/club.json`. */
function inFolder(file: string): string {
  return `${file.split('/').at(-2) ?? ''}/${fileName(file)}`;
}

/** The files that a workspace adds to the catalogue, kept as the disk and the editor have them. */
export class AdditionFiles {
  private readonly ownCatalog: Catalog;
  private readonly boards: BoardFiles;
  private readonly choiceFiles: ChoiceFiles;
  private additions: Additions | null = null;
  private inUse: {
    readonly catalog: Catalog;
    readonly problems: Problems;
    readonly choices: WorkspaceChoices;
  };
  private roots: readonly string[] = [];
  /** Folders of files beside which boards lie: they count after those of the workspace. */
  private readonly alone = new Set<string>();
  /** One reading after the other: none takes for unread what another has in hand. */
  private reading: Promise<boolean> = Promise.resolve(false);
  /** Texts of files that are open in an editor: they count more than the disk. */
  private readonly open = new Map<string, string>();
  private unreadable: Problems = new Map();

  constructor(
    private readonly builtIn: Bundle,
    private readonly fileSystem: FileSystem,
  ) {
    this.ownCatalog = loadCatalog(builtIn);
    this.inUse = { catalog: this.ownCatalog, problems: new Map(), choices: noChoices };
    const names = new Set(builtIn.boards.map(({ name }) => name));
    this.boards = new BoardFiles(names, fileSystem, this.open);
    this.choiceFiles = new ChoiceFiles(fileSystem, this.open);
  }

  get catalog(): Catalog {
    return this.inUse.catalog;
  }

  /** What is wrong, by file; the empty list for a file that has been read and is fine. */
  get problems(): Problems {
    return this.inUse.problems;
  }

  /** What the workspace chooses about checking. */
  get choices(): WorkspaceChoices {
    return this.inUse.choices;
  }

  /** By folder of the workspace, the patterns of files that it leaves out. */
  get leftOut(): ReadonlyMap<string, readonly string[]> {
    return this.choiceFiles.leftOut();
  }

  /** Boards of the workspace that are called otherwise once their files lie elsewhere, with their new names. */
  boardsAfter(placeAfter: (file: string) => string): ReadonlyMap<string, string> {
    return this.boards.after(placeAfter);
  }

  /** The files of choices, as they stand. */
  get choiceTexts(): ReadonlyMap<string, string> {
    return this.choiceFiles.texts();
  }

  /** The text that the problems of a file count in. */
  textOf(file: string): string {
    return this.additions?.textOf(file) ?? this.boards.textOf(file) ?? this.choiceFiles.textOf(file) ?? '';
  }

  /** Whether a file is one of those that add to the catalogue, or chooses what of it counts. */
  isAddition(uri: string): boolean {
    const key = canonicalUri(uri);
    return this.isOfChoices(key) || this.isInFolder(key);
  }

  private isInFolder(key: string): boolean {
    return (
      /\.jsonc?$/.test(key) && this.folders().some((folder) => key.slice(0, key.lastIndexOf('/')) === folder)
    );
  }

  private isOfChoices(key: string): boolean {
    return this.choicePlaces().includes(key);
  }

  private choicePlaces(): readonly string[] {
    return this.roots.map((root) => `${root}/${choicesFileName}`);
  }

  isSame(uri: string, file: string): boolean {
    return canonicalUri(uri) === file;
  }

  /** What is called when something asks for a board that has not been read: `readAsked` is to be called then. */
  set onAsked(call: () => void) {
    this.boards.onAsked = call;
  }

  /** Reads the boards that were asked for. True when the catalogue is another. */
  readAsked(): Promise<boolean> {
    this.reading = this.reading.then(async () => this.grown(await this.boards.readAsked()));
    return this.reading;
  }

  /** The workspace's folders are these now: all is read anew. True when the catalogue or a problem may have changed. */
  async setRoots(roots: readonly string[]): Promise<boolean> {
    this.roots = roots.map((root) => canonicalUri(root).replace(/\/$/, ''));
    return this.reload();
  }

  /** A file was opened: where it stands in no workspace, profiles of boards lie beside it. True when one is new. */
  async openedAlone(uri: string): Promise<boolean> {
    const isInside = this.roots.some((root) => canonicalUri(uri).startsWith(`${root}/`));
    return !isInside && this.boardsBeside([uri]);
  }

  /** Boards whose profiles lie in folders beside these files count too. True when one is new. */
  async boardsBeside(uris: readonly string[]): Promise<boolean> {
    const folders = uris.map((uri) => canonicalUri(uri).replace(/\/[^/]*$/, ''));
    const before = this.alone.size;
    for (const folder of folders) if (!this.roots.includes(folder)) this.alone.add(folder);
    return this.alone.size > before && this.reload();
  }

  /** Something appeared, changed or went away in one of the folders, or a folder did. */
  async diskChanged(uri: string): Promise<boolean> {
    const key = canonicalUri(uri);
    const concerns =
      this.isAddition(key) || this.folders().some((folder) => `${folder}/`.startsWith(`${key}/`));
    return concerns && this.reload();
  }

  /** An editor shows a file, with this text. */
  async opened(uri: string, text: string): Promise<boolean> {
    const key = canonicalUri(uri);
    const isNew = !this.open.has(key);
    this.open.set(key, text);
    if (this.isOfChoices(key)) return this.grown(await this.choiceFiles.read(key));
    // Which boards there are is seen in the folder: the file may be the first of its name.
    if (isOfBoard(key)) return isNew ? this.reload() : this.grown(await this.boards.shown(key));
    const additions = await this.loaded();
    // It may have been edited or closed meanwhile.
    const now = this.open.get(key);
    return this.grown(now !== undefined && additions.update(new Map([[key, now]])));
  }

  async closed(uri: string): Promise<boolean> {
    this.open.delete(canonicalUri(uri));
    return this.reload();
  }

  /** What reads the files is loaded with the first of them: most workspaces have none, and their start need not wait. */
  private async loaded(): Promise<Additions> {
    const { Additions } = await import('../additions/additions');
    this.additions ??= new Additions(this.builtIn, this.ownCatalog, inFolder);
    return this.additions;
  }

  private folders(): readonly string[] {
    return [
      ...this.roots.flatMap((root) => additionFolders.map((folder) => `${root}/${folder}`)),
      ...[...this.alone].map((folder) => `${folder}/boards`),
    ];
  }

  private isBeside(file: string): boolean {
    return !this.roots.some((root) => file.startsWith(`${root}/boards/`));
  }

  private async reload(): Promise<boolean> {
    const unreadable = new Map<string, readonly AdditionProblem[]>();
    const refuse = (place: string, error: unknown) =>
      unreadable.set(place, [unreadableProblem(whyUnreadable(error))]);
    const filesIn = async (folder: string) => {
      try {
        return await this.fileSystem.list(folder);
      } catch (error) {
        refuse(folder, error);
        return [];
      }
    };
    const found = (await Promise.all(this.folders().map(filesIn))).flat().map(canonicalUri);
    const files = [...new Set([...found, ...this.open.keys()])].filter((uri) => this.isInFolder(uri));
    const profiles = files.filter(isOfBoard);
    const [areOthers, choosesOthers, texts] = await Promise.all([
      this.boards.list(
        profiles.filter((file) => !this.isBeside(file)),
        profiles.filter((file) => this.isBeside(file)),
      ),
      this.choiceFiles.list(this.choicePlaces()),
      this.texts(
        files.filter((file) => !isOfBoard(file)),
        refuse,
      ),
    ]);
    const isSame = unreadable.size === 0 && this.unreadable.size === 0;
    this.unreadable = unreadable;
    const addsOthers = texts.size > 0 && (await this.loaded()).update(texts);
    return this.grown(addsOthers || areOthers || choosesOthers || !isSame);
  }

  /** The files as they are now; null for one that was there and is gone. */
  private async texts(
    files: readonly string[],
    refuse: (file: string, error: unknown) => void,
  ): Promise<ReadonlyMap<string, string | null>> {
    const texts = new Map<string, string | null>(
      [...(this.additions?.problems.keys() ?? [])].map((file) => [file, null]),
    );
    const read = async (file: string) => {
      try {
        const text = await this.fileSystem.readText(file);
        texts.set(file, text === null ? null : withoutMark(text));
      } catch (error) {
        refuse(file, error);
      }
    };
    await Promise.all(files.map(read));
    for (const file of files) {
      const shown = this.open.get(file);
      if (shown !== undefined) texts.set(file, shown);
    }
    return texts;
  }

  /** Brings what has changed into the catalogue. */
  private async grown(hasChanged: boolean): Promise<boolean> {
    if (!hasChanged) return false;
    const added = this.additions?.catalog ?? this.ownCatalog;
    const catalog = this.boards.catalogOn(added);
    const choices = await this.choiceFiles.choicesOn(catalog);
    const problems = new Map([
      ...(this.additions?.problems ?? []),
      ...this.boards.problemsOn(added),
      ...this.choiceFiles.problems(),
      ...this.unreadable,
    ]);
    const levels = levelsOf(choices);
    this.inUse = { catalog: levels.size === 0 ? catalog : catalog.withLevels(levels), problems, choices };
    return true;
  }
}
