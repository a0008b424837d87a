import type { Catalog, FoundParameter } from '../catalog/catalog';
import type { BoardProfile } from '../catalog/model/board-profile';
import type { Problem } from '../language/ast';
import { ownGroup } from '../language/path-text';
import type { ScriptLine } from '../language/script-line';
import { Database, type QueryContext } from '../query/database';
import { Query } from '../query/query';
import { type CraftKey, craftInputs, inputKeys, type LineSubject } from './keys';
import { followIncludes, type IncludeSource, type Layers } from './layers';
import { isDynamicLine, staticWords } from './line-check';
import { byHeader, inEffectOrder, type LayeredLine } from './line-order';
import { type ReadAs, readAs } from './read-as';
import { Resolution, type Scripts } from './resolution';
import type { NameResult, Scope } from './scope';
import { Script } from './script';
import type { PlacedLine, Setting } from './setting';

/** A script with all that it includes, resolved: what every parameter holds, for every pack. */
export class Craft implements Scripts, QueryContext {
  /** Another one with every change of what is included: it would leave next to nothing of the last one as it was. */
  database = new Database();
  private followed: Layers | null = null;
  /** What is asked of a craft itself holds with every pack in view. */
  readonly variant = null;
  private readonly resolutions = new Map<string | null, Resolution>();

  constructor(
    readonly root: Script,
    readonly catalog: Catalog,
    private readonly source: IncludeSource,
  ) {}

  /** Tells the craft what has changed in its scripts. True if anything depended on it. */
  changed(keys: readonly CraftKey[]): boolean {
    if (keys.some((key) => this.decidesLayers(key))) {
      this.database = new Database();
      this.followed = null;
      return true;
    }
    let isConcerned = false;
    this.database.change(() => {
      for (const key of keys) isConcerned = craftInputs.invalidate(this, ...key) || isConcerned;
    });
    return isConcerned;
  }

  /** A craft of the same texts that goes its own way from here. */
  copied(): Craft {
    const { uri, document, isBoardText } = this.root;
    const script = new Script(uri, document.text(), this.catalog, undefined, isBoardText);
    return new Craft(script, this.catalog, this.source);
  }

  /** Whether a script is part of this craft. */
  includes(uri: string): boolean {
    return this.layers().layers.some(({ script }) => script.uri === uri);
  }

  /** Not a query: half of all that a first check reads would be this. */
  layers(): Layers {
    this.followed ??= followIncludes(this.root, this.source);
    return this.followed;
  }

  private decidesLayers(key: CraftKey): boolean {
    if (key[0] === 'include') return true;
    return key[0] === 'file' && this.followed?.files.has(key[1]) === true;
  }

  /** What the script and all that it includes are taken for: rules about what is missing are for a whole craft. */
  readAs(): ReadAs {
    return Craft.reading.get(this);
  }

  isWhole(): boolean {
    return this.readAs() === 'whole';
  }

  /** Whether any line of any of its scripts says something in a group. */
  hasGroup(group: string): boolean {
    craftInputs.read(this, ...inputKeys.group(group));
    return this.layers().layers.some(({ script }) => script.hasGroup(group));
  }

  /** The board's text of the craft: its own, or one that it includes. */
  boardText(): Script | undefined {
    return this.layers().layers.find(({ script }) => script.isBoardText)?.script;
  }

  /** Whether its board's text holds settings whose meaning nobody has said: what seems to be missing may stand there. */
  holdsUnsaid(): boolean {
    const text = this.boardText();
    if (text === undefined) return false;
    craftInputs.read(this, ...inputKeys.group(ownGroup));
    return text.hasGroup(ownGroup);
  }

  /** How many such settings there are. */
  unsaidCount(): number {
    craftInputs.read(this, ...inputKeys.unsaid);
    return this.boardText()?.sizeOf(ownGroup) ?? 0;
  }

  /** Whether none of its scripts says anything. */
  isEmpty(): boolean {
    craftInputs.read(this, ...inputKeys.emptiness);
    return this.layers().layers.every(({ script }) => script.isEmpty);
  }

  /** Whether another script is known that includes this one. */
  isIncluded(): boolean {
    craftInputs.read(this, ...inputKeys.included);
    return this.source.isIncluded?.() ?? false;
  }

  /** Whether a line of a script that includes this one is calculated from a constant. */
  isUsedOutside(constant: string): boolean {
    craftInputs.read(this, ...inputKeys.included);
    return this.source.isUsedOutside?.(constant) ?? false;
  }

  /** Whether all that it includes is there. */
  isComplete(): boolean {
    return this.layers().isComplete;
  }

  /** The packs, in the order of their sections. */
  packs(): readonly string[] {
    return this.members('pack');
  }

  /** Every pack, or a single null where the craft names none: what is computed for each pack runs over these. */
  packsOrNone(): readonly (string | null)[] {
    const packs = this.packs();
    return packs.length === 0 ? [null] : packs;
  }

  /** The members of a collection that the craft names, in the order of their sections. */
  members(collection: string): readonly string[] {
    return Craft.members.get(this, collection);
  }

  /** All lines of the craft about a subject, in the order in which they take effect. */
  lines(subject: LineSubject): readonly PlacedLine[] {
    craftInputs.read(this, ...subject);
    return this.placed(subject);
  }

  /** Whether no line sets a path, for whichever pack, or surely means to. */
  isUnset(path: string): boolean {
    const isSet = this.layers().layers.some(({ script }) => script.sets(path));
    // Who goes on to what it holds depends on the lines there.
    if (!isSet) craftInputs.read(this, ...inputKeys.setting(path));
    return !isSet;
  }

  /**
   * What a bare setting holds with a pack in view, as it is written; null where that can't be read, undefined where no
   * line sets it. For who looks at very many once: nothing is kept, and it is not to be asked for in a query.
   */
  bareText(path: string, pack: string | null): string | null | undefined {
    const base = this.placed(inputKeys.setting(path));
    const own = pack === null ? [] : this.placed(inputKeys.setting(path, pack));
    const statement = (own.at(-1) ?? base.at(-1))?.line.statement;
    if (statement?.kind !== 'setting') return undefined;
    return statement.value?.kind === 'bare' ? statement.value.text : null;
  }

  private placed(subject: LineSubject): readonly PlacedLine[] {
    const found: LayeredLine[] = [];
    for (const layer of this.layers().layers) {
      const { script } = layer;
      for (const line of script.lines(subject)) found.push({ layer, script, line });
    }
    return inEffectOrder(found);
  }

  /** The first line of the craft's own script. */
  firstLine(): PlacedLine {
    craftInputs.read(this, ...inputKeys.firstLine);
    const line = this.root.document.lineAt(0);
    if (line === undefined) throw new Error('a document always has a line');
    return { script: this.root, line };
  }

  /** Every path that some line of the craft sets, for whichever pack. Not to be asked for in a query. */
  settingPaths(): readonly string[] {
    return [...new Set(this.layers().layers.flatMap(({ script }) => [...script.settingPaths()]))];
  }

  constantNames(): readonly string[] {
    return Craft.constants.get(this);
  }

  /** The craft with a pack in view. */
  with(pack: string | null): Resolution {
    const known = this.resolutions.get(pack);
    if (known !== undefined) return known;
    const made = new Resolution(this, pack);
    this.resolutions.set(pack, made);
    return made;
  }

  /** What a parameter holds with a pack in view; undefined when no line sets it. */
  setting(path: string, pack: string | null): Setting | undefined {
    return this.with(pack).setting(path);
  }

  constant(name: string, pack: string | null): NameResult {
    return this.with(pack).constant(name);
  }

  /** Where names in an expression come from, with a pack in view. */
  scope(pack: string | null): Scope {
    return this.with(pack).scope;
  }

  /** Undefined where the script names none, and as long as its profile is being read. */
  board(): BoardProfile | undefined {
    return Craft.board.get(this);
  }

  /** The board that the script names, whether there is one or not. */
  boardName(): string | null {
    const value = this.setting('board.profile', null)?.value;
    return value?.kind === 'word' ? value.value : null;
  }

  /** Words that a parameter takes on this craft. */
  words(found: FoundParameter): readonly string[] | null {
    const { parameter } = found;
    if (parameter.kind !== 'word' && parameter.kind !== 'words') return null;
    if (parameter.choicesFrom === 'packs') return this.packs();
    if (parameter.choicesFrom === 'ports')
      return this.board()?.hardware?.ports?.map(({ name }) => name) ?? null;
    return staticWords(found, this.catalog);
  }

  /** Problems of a line that show only with the rest of the craft: names that it uses. */
  lineProblems(line: ScriptLine): readonly Problem[] {
    return Craft.lineProblems.get(this, line);
  }

  private static readonly reading = new Query('what it is taken for', (craft: Craft) => readAs(craft));

  private static readonly members = new Query(
    'members',
    (craft: Craft, collection: string): readonly string[] => {
      craftInputs.read(craft, ...inputKeys.members(collection));
      craftInputs.read(craft, ...inputKeys.headers(collection));
      const scripts = craft.layers().layers.map(({ script }) => script);
      const names = new Set(naming(scripts, collection).flatMap((script) => script.membersOf(collection)));
      const headers = [...names].map((name) => ({
        name,
        header: craft.placed(inputKeys.section(`${collection}.${name}`))[0],
      }));
      return headers.sort(byHeader(scripts)).map(({ name }) => name);
    },
    (one, other) => one.length === other.length && one.every((name, index) => name === other[index]),
  );

  /** Kept, since every reference to none of them asks for all. */
  private static readonly constants = new Query('names of constants', (craft: Craft): readonly string[] => {
    craftInputs.read(craft, ...inputKeys.constants);
    return [...new Set(craft.layers().layers.flatMap(({ script }) => script.constantNames()))];
  });

  private static readonly board = new Query('board', (craft: Craft): BoardProfile | undefined => {
    const name = craft.boardName();
    return name === null ? undefined : craft.catalog.board(name);
  });

  /** A line for all packs is read with each pack in view; the same problem is said once. */
  private static readonly lineProblems = new Query(
    'problems of a line',
    (craft: Craft, line: ScriptLine): readonly Problem[] => {
      craftInputs.read(craft, ...inputKeys.line(line));
      if (!isDynamicLine(line, craft.catalog)) return [];
      const packs = line.section.pack === null ? craft.packsOrNone() : [line.section.pack];
      return withoutRepeats(packs.flatMap((pack) => craft.with(pack).problemsOf(line)));
    },
  );
}

function withoutRepeats(problems: readonly Problem[]): readonly Problem[] {
  return problems.filter(
    (one, index) => problems.findIndex((other) => other.id === one.id && other.start === one.start) === index,
  );
}

/**
 * The scripts that name a collection's members. A board knows one pack and not its name: the one that its text stands
 * for is no further pack of a craft that names its own.
 */
function naming(scripts: readonly Script[], collection: string): readonly Script[] {
  if (collection !== 'pack') return scripts;
  const own = scripts.filter((script) => !script.isBoardText);
  return own.some((script) => script.membersOf(collection).length > 0) ? own : scripts;
}
