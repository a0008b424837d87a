import type { Craft } from '../../craft/craft';
import { fileName } from '../../craft/include-path';
import type { Layer } from '../../craft/layers';
import type { Problem } from '../../language/ast';
import { problem } from '../../language/problem';
import type { ScriptLine } from '../../language/script-line';
import type { Place } from '../report/finding';

/** An include of the root that leads to scripts with lines that must be mended, and the first of these. */
export interface FaultyInclude {
  readonly line: ScriptLine;
  readonly problem: Problem;
  readonly first: Place;
}

/** The includes of a craft's own script that lead, directly or through others, to lines that must be mended. */
export function* faultyIncludes(craft: Craft): Iterable<FaultyInclude> {
  for (const [line, layers] of layersByInclude(craft)) {
    if (line.statement.kind !== 'include') continue;
    const faulty = layers.flatMap((layer) => faultyPlaces(craft, layer));
    const [first] = faulty;
    if (first === undefined) continue;
    const values = { file: fileName(first.script.uri), count: String(faulty.length) };
    yield { line, problem: problem('line/include-faulty', line.statement.path, values), first };
  }
}

function layersByInclude(craft: Craft): ReadonlyMap<ScriptLine, readonly Layer[]> {
  const found = new Map<ScriptLine, Layer[]>();
  for (const layer of craft.layers().layers) {
    const [first] = layer.through;
    if (first === undefined) continue;
    const layers = found.get(first.line);
    if (layers === undefined) found.set(first.line, [layer]);
    else layers.push(layer);
  }
  return found;
}

/** One place for each line that must be mended, in the order of the script. */
function faultyPlaces(craft: Craft, { script }: Layer): readonly Place[] {
  const places = new Map<ScriptLine, Place>();
  const note = (line: ScriptLine, problems: readonly Problem[]) => {
    const worst = problems.find(({ id }) => craft.catalog.check(id)?.level === 'must-fix');
    if (worst !== undefined) places.set(line, { script, line, start: worst.start, end: worst.end });
  };
  for (const [line, problems] of script.problems) note(line, problems);
  for (const line of script.dynamicLines) note(line, craft.lineProblems(line));
  for (const found of craft.layers().problems) if (found.script === script) note(found.line, [found.problem]);
  return [...places.values()].sort(
    (one, other) => script.lineNumber(one.line) - script.lineNumber(other.line),
  );
}
