import type { Catalog, FoundParameter } from '../catalog/catalog';
import type { Board } from '../catalog/model/hardware';
import { suggestParameters, suggestWord } from '../catalog/suggest';
import type { ConstantStatement, Problem, ValueNode } from '../language/ast';
import type { ScriptLine } from '../language/script-line';
import { findDimensionName } from '../units/dimension-names';
import { unitOf } from '../units/unit';
import type { Answers } from './answers';
import { Cells } from './cells';
import { evaluate } from './evaluate';
import { deepestNames, followNames, type NamesBehind } from './follow-names';
import { type Interpretation, interpret } from './interpret';
import { isExpression } from './interpret-number';
import { inputKeys } from './keys';
import { followIncludes, type IncludeSource, type Layers } from './layers';
import { isDynamicLine, staticWords } from './line-check';
import { byHeader, inEffectOrder, type LayeredLine } from './line-order';
import { type Membership, membershipsIn } from './memberships';
import { hasReferences, referencesIn } from './references';
import { type SaidPaths, saidPathsIn } from './said-paths';
import type { NameResult, Scope } from './scope';
import { Script } from './script';
import { HeldSetting, type PlacedLine, type Setting } from './setting';
import { countNamed, quantityNamed } from './value';
import { widerInputs } from './wider-inputs';

/**
 * A script with all that it includes, resolved: what every parameter holds, for every pack. Answers are
 * computed when asked for and kept until something they depend on changes.
 */
export class Craft {
  private said: SaidPaths | null = null;

  constructor(
    readonly root: Script,
    readonly catalog: Catalog,
    private readonly source: IncludeSource,
    readonly cells: Answers = new Cells(),
  ) {}

  /** Tells the craft which keys of its scripts have changed. Gives the names of the answers that were dropped. */
  changed(keys: Iterable<string>): ReadonlySet<string> {
    this.said = null;
    const all = new Set<string>();
    for (const key of keys) {
      all.add(key);
      for (const wider of widerInputs(key, this.catalog)) all.add(wider);
    }
    return this.cells.changed(all);
  }

  /** A craft of the same texts that goes its own way from here. */
  copied(): Craft {
    const { uri, document } = this.root;
    return new Craft(new Script(uri, document.text(), this.catalog), this.catalog, this.source);
  }

  /** Whether a script is part of this craft. */
  includes(uri: string): boolean {
    return this.layers().layers.some(({ script }) => script.uri === uri);
  }

  layers(): Layers {
    return this.cells.get('layers', () =>
      followIncludes(this.root, this.source, (key) => this.cells.read(key)),
    );
  }

  /**
   * Scripts that say something under `craft` describe a whole craft; others are parts to be included. A craft
   * that lacks an include is not whole: what seems to be missing may stand there.
   */
  isWhole(): boolean {
    this.cells.read(inputKeys.group('craft'));
    return this.isComplete() && this.layers().layers.some(({ script }) => script.hasGroup('craft'));
  }

  /** Whether all that it includes is there. */
  isComplete(): boolean {
    return this.layers().isComplete;
  }

  /** The packs, in the order of their sections. */
  packs(): readonly string[] {
    return this.members('pack');
  }

  /** The members of a collection that the craft names, in the order of their sections. */
  members(collection: string): readonly string[] {
    return this.cells.get(`members-in-order ${collection}`, () => {
      this.cells.read(inputKeys.members(collection));
      this.cells.read(inputKeys.headers(collection));
      const names = new Set(this.layers().layers.flatMap(({ script }) => script.membersOf(collection)));
      const scripts = this.layers().layers.map(({ script }) => script);
      const headers = [...names].map((name) => ({
        name,
        header: this.placed(inputKeys.section(`${collection}.${name}`))[0],
      }));
      return headers.sort(byHeader(scripts)).map(({ name }) => name);
    });
  }

  /** All lines of the craft under a key, in the order in which they take effect. */
  lines(key: string): readonly PlacedLine[] {
    this.cells.read(this.inputOf(key));
    return this.placed(key);
  }

  private placed(key: string): readonly PlacedLine[] {
    const found: LayeredLine[] = [];
    for (const layer of this.layers().layers) {
      const { script } = layer;
      for (const line of script.lines(key)) found.push({ layer, script, line });
    }
    return inEffectOrder(found);
  }

  /** What a parameter holds with a pack in view; undefined when no line sets it. */
  setting(path: string, pack: string | null): Setting | undefined {
    if (this.cells.isForOneLook) {
      if (this.saidPaths().set?.has(path) === false) return undefined;
    } else {
      const shared = this.shared(path);
      if (shared !== differs) return shared;
      this.cells.readPack();
    }
    return this.cells.getWith(pack, 'setting', path, () => this.resolve(path, pack));
  }

  /** What a parameter holds whichever pack is in view. Most do: an answer is then kept once, with the input itself. */
  private shared(path: string): Setting | undefined | typeof differs {
    const found = this.catalog.parameter(path);
    if (found === undefined) return undefined;
    const member = this.oneOfMany(path);
    const key = inputKeys.setting(path);
    if (member === undefined) return this.cells.getOf(key, () => this.sharedBy(key, path, found));
    this.cells.read(inputKeys.ofMany(path, member));
    return this.sharedBy(key, path, found);
  }

  private sharedBy(key: string, path: string, found: FoundParameter): Setting | undefined | typeof differs {
    if (this.layers().layers.some(({ script }) => script.isOverlaid(path))) return differs;
    const lines = this.placed(key);
    const statement = lines.at(-1)?.line.statement;
    if (statement?.kind === 'setting' && readsNames(statement.value, found)) return differs;
    return this.held({ key, path, found, pack: null }, lines);
  }

  /**
   * The member that a path goes through where its collection has very many, as a log of flights does. To keep an
   * answer for each of their settings would take more room than the script: there what reads one depends on the
   * setting of a few members together, and when that changes it reads them anew.
   */
  private oneOfMany(path: string): Membership | undefined {
    const [member] = membershipsIn(path, this.catalog);
    if (member === undefined) return undefined;
    const isMany = this.layers().layers.some(
      ({ script }) => script.memberCount(member.collection) > mostKept,
    );
    return isMany ? member : undefined;
  }

  /** The input on which an answer depends that reads the lines under a key. */
  private inputOf(key: string): string {
    if (this.cells.isForOneLook || !inputKeys.isSetting(key)) return key;
    const path = inputKeys.pathIn(key);
    const member = this.oneOfMany(path);
    return member === undefined ? key : inputKeys.ofMany(path, member);
  }

  /** Every path that some line of the craft sets, for whichever pack. Not to be asked for in a computed answer. */
  settingPaths(): readonly string[] {
    return [...new Set(this.layers().layers.flatMap(({ script }) => [...script.settingPaths()]))];
  }

  board(): Board | undefined {
    return this.cells.get('board', () => {
      const value = this.setting('board.profile', null)?.value;
      return value?.kind === 'word' ? this.catalog.board(value.value) : undefined;
    });
  }

  /**
   * Problems of a script's lines under a key that show only with the rest of the craft: names that they use.
   * A line for all packs is read with each pack in view; the same problem is told once. Not kept: whoever asks does,
   * for several keys together.
   */
  lineProblems(
    key: string,
    script: Script = this.root,
  ): readonly { readonly line: ScriptLine; readonly problems: readonly Problem[] }[] {
    this.cells.read(this.inputOf(key));
    const lines = script.lines(key).filter((line) => isDynamicLine(line, this.catalog));
    const checked = lines.map((line) => {
      const packs = line.section.pack === null ? this.packsOrNone() : [line.section.pack];
      const problems = packs.flatMap((pack) => this.problemsOf(line, pack));
      return { line, problems: withoutRepeats(problems) };
    });
    return checked.filter(({ problems }) => problems.length > 0);
  }

  /** Every pack, or a single null where the craft names none: what is computed for each pack runs over these. */
  packsOrNone(): readonly (string | null)[] {
    const packs = this.packs();
    return packs.length === 0 ? [null] : packs;
  }

  /** Words that a parameter takes on this craft. */
  words(found: FoundParameter): readonly string[] | null {
    const { parameter } = found;
    if (parameter.kind !== 'word' && parameter.kind !== 'words') return null;
    if (parameter.choicesFrom === 'packs') return this.packs();
    if (parameter.choicesFrom === 'ports') return this.board()?.ports.map((port) => port.name) ?? null;
    return staticWords(found, this.catalog);
  }

  /** Where names in an expression come from, with a pack in view. */
  scope(pack: string | null): Scope {
    return {
      constant: (name) => this.constant(name, pack),
      parameter: (path) => this.quantityOf(path, pack),
    };
  }

  constantNames(): readonly string[] {
    return [...new Set(this.layers().layers.flatMap(({ script }) => script.constantNames()))];
  }

  constant(name: string, pack: string | null): NameResult {
    return this.cells.getWith(pack, 'constant', name, () => {
      const line = this.lines(inputKeys.constant(name)).at(-1)?.line;
      if (line?.statement.kind !== 'constant') {
        if (!this.isComplete()) return { kind: 'unknown-value' };
        return { kind: 'missing', near: suggestWord(this.constantNames(), name) };
      }
      const behind = this.namesBehind(inputKeys.constant(name), pack);
      if (behind.kind !== 'fine') return endless(behind);
      const { value } = line.statement;
      if (value === null || !isExpression(value)) return { kind: 'unknown-value' };
      const result = evaluate(value, this.scope(pack)).value;
      return result === null ? { kind: 'unknown-value' } : { kind: 'value', value: result };
    });
  }

  private problemsOf(line: ScriptLine, pack: string | null): readonly Problem[] {
    const { statement, settingPath } = line;
    if (statement.kind === 'constant') return this.constantProblems(statement, pack);
    const found = settingPath === null ? undefined : this.catalog.parameter(settingPath);
    if (statement.kind !== 'setting' || statement.value === null || found === undefined) return [];
    return this.interpret(statement.value, found, pack).problems;
  }

  private constantProblems({ value }: ConstantStatement, pack: string | null): readonly Problem[] {
    if (value === null || !isExpression(value)) return [];
    const { problem } = evaluate(value, this.scope(pack));
    return problem === null ? [] : [problem];
  }

  private quantityOf(path: string, pack: string | null): NameResult {
    const found = this.catalog.parameter(path);
    if (found === undefined)
      return { kind: 'missing', near: suggestParameters(this.catalog, path, '').map((one) => one.path) };
    const behind = this.namesBehind(inputKeys.setting(path), pack);
    if (behind.kind !== 'fine') return endless(behind);
    const setting = this.setting(path, pack);
    if (setting === undefined)
      return this.isComplete() ? { kind: 'missing', near: [] } : { kind: 'unknown-value' };
    const { value, isRefused } = setting;
    if (value === null || isRefused) return { kind: 'unknown-value' };
    if (value.kind !== 'quantity' && value.kind !== 'count') return { kind: 'not-a-quantity' };
    if (value.kind === 'count') return { kind: 'value', value: countNamed(value.value) };
    const isScale = findDimensionName(found.dimensionName ?? '')?.isScale ?? false;
    return {
      kind: 'value',
      value: quantityNamed(value, { dimension: unitOf(value.unit).dimension, isScale }),
    };
  }

  private resolve(path: string, pack: string | null): Setting | undefined {
    const found = this.catalog.parameter(path);
    if (found === undefined) return undefined;
    this.readPackFor(path);
    const key = inputKeys.setting(path);
    const base = this.lines(key);
    const own = pack === null ? [] : this.lines(inputKeys.setting(path, pack));
    return this.held({ key, path, found, pack }, [...base, ...own]);
  }

  /** What a parameter holds by the lines that set it, the last of which counts. */
  private held({ key, path, found, pack }: Wanted, lines: readonly PlacedLine[]): Setting | undefined {
    const meant = this.meant(path, pack);
    if (meant !== undefined)
      return new HeldSetting(key, this.catalog, null, true, meant, [...lines].reverse(), noProblems);
    const origin = lines.at(-1);
    const overridden = lines.length < 2 ? noLines : lines.slice(0, -1).reverse();
    if (origin?.line.statement.kind !== 'setting') return undefined;
    const node = origin.line.statement.value;
    const { value, problems: told } =
      node === null ? { value: null, problems: noProblems } : this.interpretSafely(node, found, path, pack);
    const problems = told.length === 0 ? noProblems : told;
    const isRefused = problems.some(({ id }) => this.catalog.check(id)?.level === 'must-fix');
    return new HeldSetting(key, this.catalog, value, isRefused, origin, overridden, problems);
  }

  /**
   * The line whose misspelt name surely means a parameter: what that holds is unknown until it is mended,
   * unless the same script sets it for the same packs under its right name.
   */
  private meant(path: string, pack: string | null): PlacedLine | undefined {
    const keys = [...(pack === null ? [] : [inputKeys.setting(path, pack)]), inputKeys.setting(path)];
    for (const key of keys) {
      for (const { script } of this.layers().layers) {
        const line = script.meantBy(key);
        if (line !== undefined && !script.has(key)) return { script, line };
      }
    }
    return undefined;
  }

  /** Notes that an answer depends on the pack in view, unless surely no pack has its own line for a parameter. */
  private readPackFor(path: string): void {
    if (!this.cells.isForOneLook || this.saidPaths().overlaid?.has(path) !== false) this.cells.readPack();
  }

  /** Not to be asked for where a line's change must cost no more than the line. */
  private saidPaths(): SaidPaths {
    this.said ??= saidPathsIn(
      this.layers().layers.map(({ script }) => script),
      this.catalog,
    );
    return this.said;
  }

  /** A setting that refers back to itself has no value; the circle is reported where its line is checked. */
  private interpretSafely(
    node: ValueNode,
    found: FoundParameter,
    path: string,
    pack: string | null,
  ): Interpretation {
    if (readsNames(node, found) && this.namesBehind(inputKeys.setting(path), pack).kind !== 'fine')
      return { value: null, problems: [] };
    return this.interpret(node, found, pack);
  }

  private interpret(node: ValueNode, found: FoundParameter, pack: string | null): Interpretation {
    return interpret(node, found, this.scope(pack), this.words(found));
  }

  /** Whether what a constant or a setting is calculated from comes to an end. */
  private namesBehind(key: string, pack: string | null): NamesBehind {
    return this.cells.getWith(pack, 'names', key, () =>
      followNames(key, (from) => this.referredBy(from, pack)),
    );
  }

  /** Keys of what the lines under a key refer to, with a pack in view. */
  private referredBy(key: string, pack: string | null): readonly string[] {
    return this.cells.getWith(pack, 'referred', key, () => {
      this.readPackFor(inputKeys.pathIn(key));
      const isOwn = pack !== null && key.startsWith('set ');
      const keys = isOwn ? [key, `${key} @ ${pack}`] : [key];
      const lines = keys.flatMap((one) => this.lines(one));
      return lines.flatMap(({ line: { statement } }) => {
        if (statement.kind !== 'setting' && statement.kind !== 'constant') return [];
        return [...referencesIn(statement.value)].map(({ path }) =>
          path.text.includes('.') ? inputKeys.setting(path.text) : inputKeys.constant(path.text),
        );
      });
    });
  }
}

/** Of a collection with more members no answer is kept for each setting. */
const mostKept = 64;

/** A parameter that is asked for. */
interface Wanted {
  /** That of its lines for all packs. */
  readonly key: string;
  readonly path: string;
  readonly found: FoundParameter;
  readonly pack: string | null;
}

/** In place of a setting that is not the same with every pack in view. */
const differs = Symbol('differs');

// Shared: most settings override nothing, and nothing is wrong with them.
const noLines: readonly PlacedLine[] = [];
const noProblems: readonly Problem[] = [];

/** Whether a value is calculated from other names; where words or texts are expected, no name is looked up. */
function readsNames(node: ValueNode | null, { parameter: { kind } }: FoundParameter): boolean {
  const isWritten =
    kind === 'word' || kind === 'words' || kind === 'flag' || kind === 'text' || kind === 'date';
  return !isWritten && hasReferences(node);
}

function endless(behind: Exclude<NamesBehind, { kind: 'fine' }>): NameResult {
  if (behind.kind === 'too-deep') return { kind: 'too-deep', deepest: deepestNames };
  return { kind: 'circle', through: behind.through.map(inputKeys.nameIn) };
}

function withoutRepeats(problems: readonly Problem[]): readonly Problem[] {
  return problems.filter(
    (one, index) => problems.findIndex((other) => other.id === one.id && other.start === one.start) === index,
  );
}
