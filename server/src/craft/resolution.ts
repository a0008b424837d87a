import type { Catalog, FoundParameter } from '../catalog/catalog';
import { suggestParameters, suggestWord } from '../catalog/suggest';
import type { ConstantStatement, Problem, ValueNode } from '../language/ast';
import type { ScriptLine } from '../language/script-line';
import { hasReferences, referencesIn } from '../language/value-nodes';
import type { Database, QueryContext } from '../query/database';
import { Query } from '../query/query';
import { findDimensionName } from '../units/dimension-names';
import { unitOf } from '../units/unit';
import { evaluate } from './evaluate';
import { deepestNames, followNames, type NamesBehind } from './follow-names';
import { type Interpretation, interpret } from './interpret';
import { isExpression } from './interpret-number';
import { inputKeys, type LineSubject } from './keys';
import type { Layers } from './layers';
import type { NameResult, Scope } from './scope';
import { HeldSetting, type PlacedLine, type Setting } from './setting';
import { countNamed, quantityNamed } from './value';

/** Among more constants than anybody writes none is looked for that a wrong name may mean. */
const mostNames = 2000;

/** What a resolution needs of its craft. */
export interface Scripts {
  readonly database: Database;
  readonly catalog: Catalog;
  layers(): Layers;
  isComplete(): boolean;
  isUnset(path: string): boolean;
  lines(subject: LineSubject): readonly PlacedLine[];
  constantNames(): readonly string[];
  words(found: FoundParameter): readonly string[] | null;
}

/** A craft with one pack in view: what each of its parameters and constants holds. */
export class Resolution implements QueryContext {
  constructor(
    private readonly scripts: Scripts,
    readonly variant: string | null,
  ) {}

  get database(): Database {
    return this.scripts.database;
  }

  /** The pack in view; whatever is being computed depends on it. */
  get pack(): string | null {
    this.database.readVariant();
    return this.variant;
  }

  /** What a parameter holds; undefined when no line sets it. */
  setting(path: string): Setting | undefined {
    // Most of what rules ask for no line sets: without a memo for it a first check takes a fifth less.
    if (this.scripts.isUnset(path)) return undefined;
    return Resolution.settings.get(this, path);
  }

  constant(name: string): NameResult {
    return Resolution.constants.get(this, name);
  }

  /** Where names in an expression come from. */
  get scope(): Scope {
    return {
      constant: (name) => this.constant(name),
      parameter: (path) => this.quantityOf(path),
    };
  }

  /** Problems of a line that show only with the rest of the craft. */
  problemsOf({ statement, settingPath }: ScriptLine): readonly Problem[] {
    if (statement.kind === 'constant') return this.constantProblems(statement);
    const found = settingPath === null ? undefined : this.scripts.catalog.parameter(settingPath);
    if (statement.kind !== 'setting' || statement.value === null || found === undefined) return [];
    return this.interpret(statement.value, found).problems;
  }

  private constantProblems({ value }: ConstantStatement): readonly Problem[] {
    if (value === null || !isExpression(value)) return [];
    const { problem } = evaluate(value, this.scope);
    return problem === null ? [] : [problem];
  }

  private constantValue(name: string): NameResult {
    const line = this.scripts.lines(inputKeys.constant(name)).at(-1)?.line;
    if (line?.statement.kind !== 'constant') {
      if (!this.scripts.isComplete()) return { kind: 'unknown-value' };
      const names = this.scripts.constantNames();
      return { kind: 'missing', near: () => (names.length > mostNames ? [] : suggestWord(names, name)) };
    }
    const behind = Resolution.namesBehind.get(this, name);
    if (behind.kind !== 'fine') return endless(behind);
    const { value } = line.statement;
    if (value === null || !isExpression(value)) return { kind: 'unknown-value' };
    const result = evaluate(value, this.scope).value;
    return result === null ? { kind: 'unknown-value' } : { kind: 'value', value: result };
  }

  private quantityOf(path: string): NameResult {
    const { catalog } = this.scripts;
    const found = catalog.parameter(path);
    if (found === undefined)
      return { kind: 'missing', near: () => suggestParameters(catalog, path, '').map((one) => one.path) };
    const behind = Resolution.namesBehind.get(this, path);
    if (behind.kind !== 'fine') return endless(behind);
    const setting = this.setting(path);
    if (setting === undefined)
      return this.scripts.isComplete() ? { kind: 'missing', near: () => [] } : { kind: 'unknown-value' };
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

  private resolve(path: string): Setting | undefined {
    const { catalog } = this.scripts;
    const found = catalog.parameter(path);
    if (found === undefined) return undefined;
    const lines = this.linesOf(path);
    const guessed = this.guessed(path);
    if (guessed !== undefined)
      return new HeldSetting(path, catalog, null, true, guessed, [...lines].reverse(), noProblems);
    return this.held(path, found, lines);
  }

  /** The lines that set a path with the pack in view, the last of which counts. */
  private linesOf(path: string): readonly PlacedLine[] {
    const base = this.scripts.lines(inputKeys.setting(path));
    const own = this.overlay(path);
    return own === null ? base : [...base, ...this.scripts.lines(inputKeys.setting(path, own))];
  }

  /** The pack in view where lines set a path for one pack only. Most paths have none, and packs share what they hold. */
  private overlay(path: string): string | null {
    const isOverlaid = this.scripts.layers().layers.some(({ script }) => script.isOverlaid(path));
    return isOverlaid ? this.pack : null;
  }

  private held(path: string, found: FoundParameter, lines: readonly PlacedLine[]): Setting | undefined {
    const origin = lines.at(-1);
    if (origin?.line.statement.kind !== 'setting') return undefined;
    const overridden = lines.length < 2 ? noLines : lines.slice(0, -1).reverse();
    const node = origin.line.statement.value;
    const { value, problems } = node === null ? unknown : this.interpretSafely(node, found, found.path);
    const { catalog } = this.scripts;
    const isRefused = problems.some(({ id }) => catalog.check(id)?.level === 'must-fix');
    const kept = problems.length === 0 ? noProblems : problems;
    return new HeldSetting(path, catalog, value, isRefused, origin, overridden, kept);
  }

  /**
   * The line whose misspelt name surely means a parameter: what that holds is unknown until it is mended,
   * unless the same script sets it for the same packs under its right name.
   */
  private guessed(path: string): PlacedLine | undefined {
    const overlay = this.overlay(path);
    for (const pack of overlay === null ? [null] : [overlay, null]) {
      for (const { script } of this.scripts.layers().layers) {
        const line = script.guessedLine(path, pack);
        if (line !== undefined && !script.has(inputKeys.setting(path, pack))) return { script, line };
      }
    }
    return undefined;
  }

  /** A setting that refers back to itself has no value; the circle is reported where its line is checked. */
  private interpretSafely(node: ValueNode, found: FoundParameter, path: string): Interpretation {
    if (readsNames(node, found) && Resolution.namesBehind.get(this, path).kind !== 'fine') return unknown;
    return this.interpret(node, found);
  }

  private interpret(node: ValueNode, found: FoundParameter): Interpretation {
    return interpret(node, found, this.scope, this.scripts.words(found));
  }

  private referredBy(name: string): readonly string[] {
    const lines = isPath(name) ? this.linesOf(name) : this.scripts.lines(inputKeys.constant(name));
    return lines.flatMap(({ line: { statement } }) => {
      if (statement.kind !== 'setting' && statement.kind !== 'constant') return [];
      return [...referencesIn(statement.value)].map(({ path }) => path.text);
    });
  }

  private static readonly settings = new Query('setting', (resolution: Resolution, path: string) =>
    resolution.resolve(path),
  );

  private static readonly constants = new Query('constant', (resolution: Resolution, name: string) =>
    resolution.constantValue(name),
  );

  /** What the lines of a setting or a constant refer to. */
  private static readonly references = new Query('references', (resolution: Resolution, name: string) =>
    resolution.referredBy(name),
  );

  /** Whether what a constant or a setting is calculated from comes to an end. */
  private static readonly namesBehind = new Query(
    'names behind',
    (resolution: Resolution, name: string): NamesBehind =>
      followNames(name, (from) => Resolution.references.get(resolution, from)),
  );
}

// Shared: most settings override nothing, and nothing is wrong with them.
const noLines: readonly PlacedLine[] = [];
const noProblems: readonly Problem[] = [];
const unknown: Interpretation = { value: null, problems: noProblems };

/** Names of parameters have a dot, those of constants none. */
function isPath(name: string): boolean {
  return name.includes('.');
}

/** Whether a value is calculated from other names; where words or texts are expected, no name is looked up. */
function readsNames(node: ValueNode | null, { parameter: { kind } }: FoundParameter): boolean {
  const isWritten =
    kind === 'word' || kind === 'words' || kind === 'flag' || kind === 'text' || kind === 'date';
  return !isWritten && hasReferences(node);
}

function endless(behind: Exclude<NamesBehind, { kind: 'fine' }>): NameResult {
  if (behind.kind === 'too-deep') return { kind: 'too-deep', deepest: deepestNames };
  return { kind: 'circle', through: behind.through };
}
