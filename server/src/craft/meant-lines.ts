import type { Catalog } from '../catalog/catalog';
import { suggestParameters, suggestSections } from '../catalog/suggest';
import type { ScriptLine } from '../language/script-line';
import { inputKeys } from './keys';

/** A text with more unknown names than this is hardly a craft script: nothing is guessed from it. */
const mostGuessed = 50;

/**
 * The lines of a script whose name nobody knows, by what each was surely meant to set. The name itself is
 * reported at its line; what it stands for then counts as set, so that nothing complains that it is missing.
 */
export class MeantLines {
  private readonly unknown = new Set<ScriptLine>();
  private readonly guesses = new WeakMap<ScriptLine, string | null>();
  private known: ReadonlyMap<string, ScriptLine> | null = null;
  private paths: ReadonlySet<string> | null = null;

  constructor(
    private readonly catalog: Catalog,
    private readonly lineNumber: (line: ScriptLine) => number,
  ) {}

  add(line: ScriptLine): void {
    this.unknown.add(line);
    this.forget();
  }

  remove(line: ScriptLine): void {
    if (this.unknown.delete(line)) this.forget();
  }

  private forget(): void {
    this.known = null;
    this.paths = null;
  }

  /** Paths meant, each with its line, under the keys of settings; the same object until a line comes or goes. */
  get byKey(): ReadonlyMap<string, ScriptLine> {
    this.known ??= this.unknown.size > mostGuessed ? new Map() : new Map(this.pairs());
    return this.known;
  }

  /** Whether some line surely means a path for one pack only. */
  isOverlaid(path: string): boolean {
    this.paths ??= new Set([...this.byKey.keys()].filter(inputKeys.isForOnePack).map(inputKeys.pathIn));
    return this.paths.has(path);
  }

  /** In the order of the script, so that the last of equals counts. */
  private *pairs(): Iterable<readonly [string, ScriptLine]> {
    const lines = [...this.unknown].sort((one, other) => this.lineNumber(one) - this.lineNumber(other));
    for (const line of lines) {
      const path = this.guess(line);
      if (path !== null) yield [inputKeys.setting(path, line.section.pack), line];
    }
  }

  private guess(line: ScriptLine): string | null {
    const known = this.guesses.get(line);
    if (known !== undefined) return known;
    const guess = meantPath(line, this.catalog);
    this.guesses.set(line, guess);
    return guess;
  }
}

/** The parameter that a line with an unknown name or under an unknown section means; null when none is near. */
function meantPath({ settingPath, section }: ScriptLine, catalog: Catalog): string | null {
  if (settingPath === null || section.path === null) return null;
  const isKnown = section.path === '' || catalog.isSection(section.path);
  const under = isKnown ? section.path : suggestSections(catalog, section.path)[0];
  if (under === undefined) return null;
  const rest = section.path === '' ? settingPath : settingPath.slice(section.path.length + 1);
  const path = under === '' ? rest : `${under}.${rest}`;
  if (catalog.parameter(path) !== undefined) return path;
  const [best] = suggestParameters(catalog, path, under);
  return best === undefined || catalog.parameter(best.path) === undefined ? null : best.path;
}

/** Keys whose line differs between two states. */
export function differingKeys(
  before: ReadonlyMap<string, ScriptLine>,
  after: ReadonlyMap<string, ScriptLine>,
): readonly string[] {
  if (before === after) return [];
  return [...new Set([...before.keys(), ...after.keys()])].filter(
    (key) => before.get(key) !== after.get(key),
  );
}
