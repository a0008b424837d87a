import { titleOf } from '../catalog/board-title';
import type { Catalog, FoundParameter } from '../catalog/catalog';
import type { Hardware } from '../catalog/model/board-hardware';
import type { BoardProfile } from '../catalog/model/board-profile';
import { parseLine } from '../language/parser';
import type { Database, QueryContext } from '../query/database';
import type { Key } from '../query/key-map';
import { Query } from '../query/query';
import { Amount } from '../units/distinct-texts';
import { exactText, shortText } from '../units/quantity';
import type { Craft } from './craft';
import { interpret } from './interpret';
import { Lacking } from './lacking';
import { noNames, staticWords } from './line-check';
import type { Setting } from './setting';
import type { CurvePoint, Value } from './value';
import { valueText } from './value-text';

const nothingKnown: Hardware = {};

type ValueOf<K extends Value['kind']> = Extract<Value, { kind: K }>;

/**
 * A craft with one pack in view, as rules and the build sheet see it. A value that the script does not set
 * is the catalogue's default, and is then noted as assumed; without one, where a line's value could not
 * be understood or is refused, and where an include that may set it is missing or a setting of the
 * board's text without a meaning may be it, the answer is null. Quantities are in SI.
 */
export class CraftView implements QueryContext {
  /** Paths with the default that was used, as the script would write it. */
  private assumedTexts: Map<string, string> | null = null; // most views assume nothing
  private unreadablePaths: Set<string> | null = null;
  private missingPaths: Set<string> | null = null;
  /** What is refused of what others were computed from. */
  private refusedBehind: Set<string> | null = null;

  constructor(
    readonly craft: Craft,
    /** The pack in view, for the database: it does not make an answer depend on the pack. */
    readonly variant: string | null,
  ) {}

  get pack(): string | null {
    return this.craft.with(this.variant).pack;
  }

  get database(): Database {
    return this.craft.database;
  }

  /** A view of the same that has noted nothing yet. */
  anew(): CraftView {
    return new CraftView(this.craft, this.variant);
  }

  get catalog(): Catalog {
    return this.craft.catalog;
  }

  get board(): BoardProfile | undefined {
    return this.craft.board();
  }

  /** What the board has, as far as somebody described it; of a board that is not named, nothing is known. */
  get hardware(): Hardware {
    return this.board?.hardware ?? nothingKnown;
  }

  /** For a sentence. */
  get boardTitle(): string {
    return this.board === undefined ? 'the board' : titleOf(this.board);
  }

  /** Parameters whose default was used so far. */
  get assumed(): readonly string[] {
    return [...(this.assumedTexts?.keys() ?? [])];
  }

  /** The same with their values: `motor.idle 6 %`. */
  get assumedInWords(): readonly string[] {
    return [...(this.assumedTexts ?? [])].map(([path, text]) => `${path} ${text}`);
  }

  /** Parameters asked for so far that are set to something that could not be understood. */
  get unreadable(): readonly string[] {
    return [...(this.unreadablePaths ?? [])];
  }

  /** What was asked for so far and has no answer: it is why nothing comes of a computation, where nothing does. */
  get lacking(): Lacking {
    return new Lacking(
      [...(this.missingPaths ?? [])],
      [...new Set([...this.unreadable, ...(this.refusedBehind ?? [])])],
    );
  }

  /** Notes what something that this is computed from lacks. */
  lacks({ missing, refused }: Lacking): void {
    for (const path of missing) this.noteMissing(path);
    this.refusedBehind ??= new Set();
    for (const path of refused) this.refusedBehind.add(path);
  }

  noteMissing(path: string): void {
    this.missingPaths ??= new Set();
    this.missingPaths.add(path);
  }

  /** Whether a line sets it, even if its value could not be understood. */
  isSet(path: string): boolean {
    return this.setting(path) !== undefined;
  }

  /** Whether surely no line sets it: while an include is missing, it may stand there. */
  isMissing(path: string): boolean {
    return !this.isSet(path) && !this.isUnknown(path);
  }

  /** Whether something that can't be read may set it. */
  private isUnknown(path: string): boolean {
    return !this.craft.isComplete() || this.mayBeUnsaid(path);
  }

  /** Whether the board may hold it in a setting whose meaning nobody has said. */
  mayBeUnsaid(path: string): boolean {
    return this.craft.holdsUnsaid() && this.catalog.parameter(path)?.parameter.heldBy === 'board';
  }

  setting(path: string): Setting | undefined {
    return this.craft.setting(path, this.variant);
  }

  members(collection: string): readonly string[] {
    return this.craft.members(collection);
  }

  value(path: string): Value | null {
    const setting = this.setting(path);
    if (setting !== undefined) {
      const value = setting.isRefused ? null : setting.value;
      if (value === null) this.noteUnreadable(path);
      return value;
    }
    const assumed = this.isUnknown(path) ? null : defaultOf(this.craft, path);
    if (assumed === null) {
      this.noteMissing(path);
      return null;
    }
    this.assumedTexts ??= new Map();
    this.assumedTexts.set(path, assumed.text);
    return assumed.value;
  }

  quantity(path: string): number | null {
    return this.of(path, 'quantity')?.value ?? null;
  }

  /** What a line sets; where none does, not its default but this. */
  quantityOr(path: string, unset: number | null): number | null {
    return this.isSet(path) ? this.quantity(path) : unset;
  }

  count(path: string): number | null {
    return this.of(path, 'count')?.value ?? null;
  }

  flag(path: string): boolean | null {
    return this.of(path, 'flag')?.value ?? null;
  }

  /** Whether a line turns it on; where none does it is off, and nothing is missing. */
  isOn(path: string): boolean {
    return this.isSet(path) && this.flag(path) === true;
  }

  word(path: string): string | null {
    return this.of(path, 'word')?.value ?? null;
  }

  /** What a line sets; where none does, this. */
  wordOr(path: string, unset: string): string | null {
    return this.isSet(path) ? this.word(path) : unset;
  }

  words(path: string): readonly string[] | null {
    return this.of(path, 'words')?.value ?? null;
  }

  range(path: string): { readonly low: number; readonly high: number } | null {
    return this.of(path, 'range');
  }

  curve(path: string): readonly CurvePoint[] | null {
    return this.of(path, 'curve')?.points ?? null;
  }

  place(path: string): { readonly row: number; readonly column: number } | null {
    return this.of(path, 'place');
  }

  text(path: string): string | null {
    return this.of(path, 'text')?.value ?? null;
  }

  /** The value as the script would write it; null without one. */
  written(path: string): string | null {
    const value = this.value(path);
    const parameter = this.catalog.parameter(path)?.parameter;
    return value === null || parameter === undefined ? null : valueText(value, parameter);
  }

  /** The same for a sentence: "not set" without one. */
  shown(path: string): string {
    return this.written(path) ?? 'not set';
  }

  /** An SI value in a unit, exactly, for a script; or short, for a sentence. */
  exact(value: number, unit: string): string {
    return exactText(value, unit);
  }

  short(value: number, unit: string): string {
    return shortText(value, unit);
  }

  /** The same for what a finding says, where it has as many digits as tell it from the other numbers. */
  amount(value: number, unit: string): Amount {
    return new Amount(value, unit);
  }

  private noteUnreadable(path: string): void {
    this.unreadablePaths ??= new Set();
    this.unreadablePaths.add(path);
  }

  private of<K extends Value['kind']>(path: string, kind: K): ValueOf<K> | null {
    const value = this.value(path);
    return value?.kind === kind ? (value as ValueOf<K>) : null;
  }
}

/**
 * Something that is computed from a craft with a pack in view, and kept until something that it read changes:
 *
 *     const weight = viewQuery('weight', (view, part: string) => view.quantity(`${part}.mass`));
 *     weight(view, 'motor');
 */
export function viewQuery<K extends Key, V>(
  name: string,
  compute: (view: CraftView, ...key: K) => V,
  isSame?: (one: V, other: V) => boolean,
): (view: CraftView, ...key: K) => V {
  // A view of its own, so that what it assumes is this query's alone.
  const query = new Query(name, (view: CraftView, ...key: K) => compute(view.anew(), ...key), isSame);
  return (view, ...key) => query.get(view, ...key);
}

/** Defaults stand in the catalogue and ask nothing of a craft: each is read once. */
const knownDefaults = new WeakMap<Catalog, Map<string, Default | null>>();

interface Default {
  readonly value: Value;
  readonly text: string;
}

function defaultOf({ catalog }: Craft, path: string): Default | null {
  const found = catalog.parameter(path);
  if (found === undefined) return null;
  const defaults = knownDefaults.get(catalog) ?? new Map<string, Default | null>();
  knownDefaults.set(catalog, defaults);
  const known = defaults.get(found.name);
  if (known !== undefined) return known;
  const value = readDefault(catalog, found);
  const read = value === null ? null : { value, text: valueText(value, found.parameter) };
  defaults.set(found.name, read);
  return read;
}

function readDefault(catalog: Catalog, found: FoundParameter): Value | null {
  const text = found.parameter.default?.value;
  if (text === undefined) return null;
  const statement = parseLine(`value = ${text}`);
  if (statement.kind !== 'setting' || statement.value === null) return null;
  return interpret(statement.value, found, noNames, staticWords(found, catalog)).value;
}
