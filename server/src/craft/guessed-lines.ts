import type { Catalog } from '../catalog/catalog';
import { suggestParameters, suggestSections } from '../catalog/suggest';
import type { ScriptLine } from '../language/script-line';

/** A text with more unknown names than this is hardly a craft script: nothing is guessed from it. */
const mostGuessed = 50;

/** A line whose name nobody knows, with the path that it surely means. */
export interface GuessedLine {
  readonly path: string;
  readonly line: ScriptLine;
}

/**
 * The lines of a script whose name nobody knows, by what each was surely meant to set. The name itself is
 * reported at its line; what it stands for then counts as set, so that nothing complains that it is missing.
 */
export class GuessedLines {
  private readonly unknown = new Set<ScriptLine>();
  private readonly guesses = new WeakMap<ScriptLine, string | null>();
  private known: readonly GuessedLine[] | null = null;

  constructor(
    private readonly catalog: Catalog,
    private readonly lineNumber: (line: ScriptLine) => number,
  ) {}

  add(line: ScriptLine): void {
    this.unknown.add(line);
    this.known = null;
  }

  remove(line: ScriptLine): void {
    if (this.unknown.delete(line)) this.known = null;
  }

  /** In the order of the script, so that the last of equals counts; the same list until a line comes or goes. */
  get all(): readonly GuessedLine[] {
    this.known ??= this.unknown.size > mostGuessed ? [] : this.guessed();
    return this.known;
  }

  private guessed(): readonly GuessedLine[] {
    const lines = [...this.unknown].sort((one, other) => this.lineNumber(one) - this.lineNumber(other));
    return lines.flatMap((line) => {
      const path = this.guess(line);
      return path === null ? [] : [{ path, line }];
    });
  }

  private guess(line: ScriptLine): string | null {
    const known = this.guesses.get(line);
    if (known !== undefined) return known;
    const guess = guessedPath(line, this.catalog);
    this.guesses.set(line, guess);
    return guess;
  }
}

/** The parameter that a line with an unknown name or under an unknown section means; null when none is near. */
function guessedPath({ settingPath, section }: ScriptLine, catalog: Catalog): string | null {
  if (settingPath === null || section.path === null) return null;
  const isKnown = section.path === '' || catalog.isSection(section.path);
  const under = isKnown ? section.path : suggestSections(catalog, section.path)[0];
  if (under === undefined) return null;
  const rest = section.path === '' ? settingPath : settingPath.slice(section.path.length + 1);
  const path = under === '' ? rest : `${under}.${rest}`;
  if (catalog.parameter(path) !== undefined) return path;
  // Reported as what it is: it sets nothing, and means nothing else.
  if (catalog.explainMissing(path)?.reason === 'makes-no-sense') return null;
  const [best] = suggestParameters(catalog, path, under);
  return best === undefined || catalog.parameter(best.path) === undefined ? null : best.path;
}

/** What is guessed in one of two states only. */
export function differing(
  before: readonly GuessedLine[],
  after: readonly GuessedLine[],
): readonly GuessedLine[] {
  if (before === after) return [];
  const [gone, come] = [new Set(before.map(({ line }) => line)), new Set(after.map(({ line }) => line))];
  return [...before.filter(({ line }) => !come.has(line)), ...after.filter(({ line }) => !gone.has(line))];
}
