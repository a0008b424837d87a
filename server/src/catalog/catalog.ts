import { isOwnPath, stepsOf } from '../language/path-text';
import { type ChoiceContext, choicesOf } from './choices';
import { type KnownParameter, knownParameters } from './known-parameter';
import { explainMissing, type Missing } from './missing';
import type { BenchStep } from './model/bench-card';
import type { BoardProfile } from './model/board-profile';
import type { Bundle } from './model/bundle';
import type { Check } from './model/check';
import type { Collection, Member } from './model/collection';
import type { CommonRow } from './model/common-values';
import type {
  Chemistry,
  Gauge,
  Grid,
  Link,
  MeasuredPropeller,
  Region,
  Signal,
  VideoBand,
} from './model/hardware';
import type { WholePart } from './model/job';
import type { MotorLaws } from './model/motors';
import type { PackFile } from './model/packs';
import type { Choice, Parameter } from './model/parameter';
import type { RecordingColumns } from './model/recording-columns';
import type { CraftSize } from './model/sizes';
import type { TradeWords } from './model/trade-words';
import type { ChosenLevel } from './model/workspace-choices';
import { type PathPatterns, pathPatterns } from './path-patterns';
import { below, isPlaceholder, type PathNode, pathTree, walk } from './path-tree';
import type { Replacement } from './replacements';

/** A parameter under the path that a script wrote for it. */
export interface FoundParameter extends KnownParameter {
  /** `pack.sprint.cells` */
  readonly path: string;
  /** The members named on the way: `['sprint']`. */
  readonly keys: readonly string[];
}

/** A parameter below a section, with the rest of its name: `cells` below `pack.sprint`. */
export interface ParameterBelow {
  readonly known: KnownParameter;
  readonly rest: string;
}

export interface Group {
  readonly name: string;
  readonly title: string;
  readonly summary: string;
  readonly parameters: readonly KnownParameter[];
}

/** The boards of a workspace: files that are read when a script names their board, and not before. */
export interface WorkspaceBoards {
  readonly read: ReadonlyMap<string, BoardProfile>;
  /** Known by the names of their files alone. */
  readonly unread: ReadonlySet<string>;
  /** Read, and never without a fault; what is wrong is told in their files. */
  readonly faulty: ReadonlySet<string>;
  /** Has one of the unread read: a catalogue that holds it takes the place of this one. */
  readonly ask: (name: string) => void;
}

const noBoards: WorkspaceBoards = { read: new Map(), unread: new Set(), faulty: new Set(), ask: () => {} };

/** Everything Propsoff knows about settings and hardware. Immutable; every look-up is by `Map`. */
export class Catalog {
  readonly groups: ReadonlyMap<string, Group>;
  /** Every parameter under its catalogue name, in the order of the groups. */
  readonly parameters: ReadonlyMap<string, KnownParameter>;
  readonly collections: ReadonlyMap<string, Collection>;
  /** Those that ship, and those of the workspace that have been read. */
  readonly boards: ReadonlyMap<string, BoardProfile>;
  readonly links: ReadonlyMap<string, Link>;
  readonly signals: ReadonlyMap<string, Signal>;
  readonly chemistries: ReadonlyMap<string, Chemistry>;
  readonly grids: ReadonlyMap<string, Grid>;
  readonly videoBands: ReadonlyMap<string, VideoBand>;
  readonly regions: ReadonlyMap<string, Region>;
  readonly gauges: ReadonlyMap<number, Gauge>;
  readonly checks: ReadonlyMap<string, Check>;
  readonly propellers: readonly MeasuredPropeller[];
  /** By which a motor is estimated from what a sales page tells. */
  readonly motorLaws: MotorLaws | null;
  /** What is known of packs beside what their chemistry says. */
  readonly packs: PackFile | null;
  /** The bench card's steps, in its order. */
  readonly benchSteps: readonly BenchStep[];
  /** What is commonly written for a parameter, by its catalogue name. */
  readonly commonValues: ReadonlyMap<string, CommonRow>;
  /** Sections in the order in which a pilot sets a craft up. */
  readonly jobOrder: readonly string[];
  readonly wholeParts: readonly WholePart[];
  /** What is usual for craft of a size, the smallest first. */
  readonly sizes: readonly CraftSize[];
  /** By which words a board's settings are known. */
  readonly tradeWords: TradeWords;
  /** By what the columns of a recording are known. */
  readonly recordings: RecordingColumns;
  private knownPatterns: PathPatterns | null = null;
  private readonly root: PathNode;
  /** The parameters whose names hold no member's: most of those that are asked for. */
  private readonly whole: ReadonlyMap<string, FoundParameter>;
  /** What all settings under `own` are. */
  private readonly bare: KnownParameter | undefined;
  /** Those of members that were asked for lately: rules ask for the same ones again and again. */
  private readonly ofMembers = new Map<string, FoundParameter>();

  constructor(
    private readonly bundle: Bundle,
    /** What files of the workspace have in place of what is built in. */
    readonly replacements: readonly Replacement[] = [],
    private readonly ofWorkspace: WorkspaceBoards = noBoards,
    /** Levels that the workspace has chosen for checks. */
    private readonly chosen: ReadonlyMap<string, ChosenLevel> = new Map(),
  ) {
    const groups = bundle.parameters.map((file) => ({
      name: file.group,
      title: file.title,
      summary: file.summary,
      parameters: knownParameters(file),
    }));
    this.groups = byName(groups);
    this.parameters = byName(groups.flatMap((group) => group.parameters));
    this.collections = new Map(bundle.collections.map((one) => [one.path, one]));
    this.boards = new Map([...byName(bundle.boards), ...ofWorkspace.read]);
    this.links = byName(bundle.links);
    this.signals = byName(bundle.signals);
    this.chemistries = byName(bundle.chemistries);
    this.grids = byName(bundle.grids);
    this.videoBands = byName(bundle.bands);
    this.regions = byName(bundle.regions);
    this.gauges = new Map(bundle.gauges.map((one) => [one.number, one]));
    this.checks = new Map(checksOf(bundle).map((one) => [one.id, atLevel(one, chosen.get(one.id))]));
    this.propellers = bundle.propellers;
    this.motorLaws = bundle.motorLaws;
    this.packs = bundle.packs;
    this.benchSteps = bundle.steps;
    this.commonValues = new Map(bundle.common.flatMap((row) => row.of.map((name) => [name, row])));
    this.jobOrder = bundle.order;
    this.wholeParts = bundle.parts;
    this.sizes = bundle.sizes;
    this.tradeWords = bundle.tradeWords;
    this.recordings = bundle.recordings;
    this.root = pathTree(this.parameters.values(), bundle.collections);
    this.bare = [...this.parameters.values()].find(({ parameter }) => parameter.kind === 'bare');
    const whole = [...this.parameters.values()].filter(({ words }) => !words.some(isPlaceholder));
    this.whole = new Map(whole.map((known) => [known.name, { ...known, path: known.name, keys: [] }]));
  }

  /** For did-you-mean; made when something is first misspelt, for a start need not wait for it. */
  get patterns(): PathPatterns {
    this.knownPatterns ??= pathPatterns(this.parameters.values(), this.collections);
    return this.knownPatterns;
  }

  /** The parameter at a path as a script writes it, members by their own names. */
  parameter(path: string): FoundParameter | undefined {
    const known = this.whole.get(path) ?? this.ofMembers.get(path);
    if (known !== undefined) return known;
    if (isOwnPath(path)) return this.bareAt(path);
    const found = walk(this.root, path);
    if ('word' in found || found.node.parameter === undefined) return undefined;
    const made = { ...found.node.parameter, path, keys: keysIn(path, found.node.parameter) };
    if (this.ofMembers.size >= mostKept) this.ofMembers.clear();
    this.ofMembers.set(path, made);
    return made;
  }

  /** Any path below `own` is a setting: only the board knows which there are. */
  private bareAt(path: string): FoundParameter | undefined {
    return this.bare && { ...this.bare, path, keys: stepsOf(path).slice(1) };
  }

  /** Why `parameter(path)` is undefined; undefined itself when it is not. */
  explainMissing(path: string): Missing | undefined {
    return isOwnPath(path) ? undefined : explainMissing(this.root, path);
  }

  /** Whether settings can stand below a path: `gyro.filter.1`, `pack.sprint`, `pack`. */
  isSection(path: string): boolean {
    if (isOwnPath(path)) return true;
    const found = walk(this.root, path);
    if ('word' in found) return false;
    const { branches, open, collection } = found.node;
    return branches.size > 0 || open !== undefined || collection !== undefined;
  }

  /** What can be set below a section, the nearest first; empty when the path is none. */
  parametersUnder(section: string): readonly ParameterBelow[] {
    const found = walk(this.root, section);
    if ('word' in found) return [];
    const { node } = found;
    const depth = section.split('.').length;
    return below(node)
      .filter((known) => known !== node.parameter)
      .map((known) => ({ known, rest: known.words.slice(depth).join('.') }));
  }

  /** The collection that opens at a path: `pack`, `gyro.filter`. */
  collection(path: string): Collection | undefined {
    return this.collections.get(path);
  }

  /** The names that a collection can take, each with what it is; empty for an open one. */
  members(collectionPath: string): readonly Member[] {
    const collection = this.collections.get(collectionPath);
    if (collection === undefined || collection.keys.kind === 'open') return [];
    if (collection.keys.kind === 'closed') return collection.keys.members;
    const { from, to } = collection.keys;
    return Array.from({ length: to - from + 1 }, (_, index) => ({
      name: String(from + index),
      title: `${collection.one}, number ${from + index}`,
      summary: collection.summary,
    }));
  }

  /** The words that a parameter takes; see `ChoiceContext` for those that only the craft can tell. */
  choices(parameter: Parameter, context: ChoiceContext = {}): readonly Choice[] {
    return choicesOf(this, parameter, context);
  }

  /** Undefined for one that there is not, and for one of the workspace as long as nobody has read it. */
  board(name: string): BoardProfile | undefined {
    if (this.isUnread(name)) this.ofWorkspace.ask(name);
    return this.boards.get(name);
  }

  /** Every board that a script may name, read or not, faulty or not. */
  boardNames(): readonly string[] {
    return [...this.boards.keys(), ...this.ofWorkspace.unread, ...this.ofWorkspace.faulty];
  }

  /** Boards of the workspace that are known by the names of their files alone. */
  unreadBoards(): readonly string[] {
    return [...this.ofWorkspace.unread];
  }

  isUnread(board: string): boolean {
    return this.ofWorkspace.unread.has(board);
  }

  /** Whether the workspace has a profile of this name that can't be used. */
  isFaulty(board: string): boolean {
    return this.ofWorkspace.faulty.has(board);
  }

  /** The same with the boards of a workspace. */
  withBoards(boards: WorkspaceBoards): Catalog {
    return new Catalog(this.bundle, this.replacements, boards, this.chosen);
  }

  /** The same with the levels that a workspace has chosen for checks, by their ids. */
  withLevels(chosen: ReadonlyMap<string, ChosenLevel>): Catalog {
    return new Catalog(this.bundle, this.replacements, this.ofWorkspace, chosen);
  }

  /** Whether the workspace wants to hear nothing of a check. */
  isSilent(check: string): boolean {
    return this.chosen.get(check) === 'off';
  }

  link(name: string): Link | undefined {
    return this.links.get(name);
  }

  signal(name: string): Signal | undefined {
    return this.signals.get(name);
  }

  chemistry(name: string): Chemistry | undefined {
    return this.chemistries.get(name);
  }

  /** By the trade's number: 14 is AWG 14. */
  gauge(number: number): Gauge | undefined {
    return this.gauges.get(number);
  }

  /** The character grid over a picture of this standard: `pal`, `ntsc`. */
  grid(standard: string): Grid | undefined {
    return this.grids.get(standard);
  }

  videoBand(name: string): VideoBand | undefined {
    return this.videoBands.get(name);
  }

  region(name: string): Region | undefined {
    return this.regions.get(name);
  }

  check(id: string): Check | undefined {
    return this.checks.get(id);
  }
}

/** What stands in a path where its parameter's name has an open part. */
function keysIn(path: string, { words }: KnownParameter): readonly string[] {
  return path.split('.').filter((_, index) => isPlaceholder(words[index] ?? ''));
}

/** Members have any names: what is kept of them must end somewhere. */
const mostKept = 2000;

/** Takes a checked bundle; the data of a workspace may be merged into it before. */
export function loadCatalog(bundle: Bundle, replacements?: readonly Replacement[]): Catalog {
  return new Catalog(bundle, replacements);
}

function byName<T extends { readonly name: string }>(list: readonly T[]): ReadonlyMap<string, T> {
  return new Map(list.map((one) => [one.name, one]));
}

function atLevel(check: Check, chosen: ChosenLevel | undefined): Check {
  return chosen === undefined || chosen === 'off' ? check : { ...check, level: chosen };
}

/** The checks of all files. */
export function checksOf({ checks }: Pick<Bundle, 'checks'>): readonly Check[] {
  return checks.flatMap((file) => file.checks);
}
