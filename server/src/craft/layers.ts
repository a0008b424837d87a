import type { Problem } from '../language/ast';
import { problem } from '../language/problem';
import type { ScriptLine } from '../language/script-line';
import { fileName, resolveInclude } from './include-path';
import { inputKeys } from './keys';
import type { Script } from './script';

/** What an include leads to. */
export type Included =
  | { readonly kind: 'script'; readonly script: Script }
  | { readonly kind: 'missing' }
  /** Still being read: nothing is said until it is there. */
  | { readonly kind: 'pending' }
  /** Not allowed, or not readable as text; `why` ends a sentence. */
  | { readonly kind: 'refused'; readonly why: string }
  /** Longer than what is read, or with more in it; `why` ends a sentence. */
  | { readonly kind: 'too-long'; readonly why: string };

/** Where scripts come from: the editor, the disk, a test. Answers at once from what it holds. */
export interface IncludeSource {
  open(uri: string): Included;
  /** Whether another script includes the one that includes are followed from; false where that is not known. */
  isIncluded?(): boolean;
  /** Whether a script that includes that one uses a constant; false where that is not known. */
  isUsedOutside?(constant: string): boolean;
}

/** One script in a craft, with the include lines that lead to it, outermost first. */
export interface Layer {
  readonly script: Script;
  readonly through: readonly { readonly script: Script; readonly line: ScriptLine }[];
}

export interface LayerProblem {
  readonly script: Script;
  readonly line: ScriptLine;
  readonly problem: Problem;
}

export interface Layers {
  readonly layers: readonly Layer[];
  readonly problems: readonly LayerProblem[];
  /** The URIs of all that was included or looked for. */
  readonly files: ReadonlySet<string>;
  /** Whether every include led to its script; while one did not, what it may set is unknown. */
  readonly isComplete: boolean;
  /** Whether one is still being read. */
  readonly isPending: boolean;
}

/** Scripts may include each other this deep. */
const deepestInclude = 16;

/** Includes of includes can multiply; no craft has more lines that include. */
const mostIncludes = 255;

/** Follows the includes of a script. */
export function followIncludes(root: Script, source: IncludeSource): Layers {
  const files = new Set<string>();
  const layers: Layer[] = [];
  const problems: LayerProblem[] = [];
  let followed = 0;
  let isComplete = true;
  let isPending = false;
  const visit = (layer: Layer): void => {
    layers.push(layer);
    for (const line of layer.script.lines(inputKeys.include)) {
      followed += 1;
      const next = followed > mostIncludes ? oneTooMany(layer, line) : follow(layer, line, source, files);
      const second = next.layer === null ? null : secondText(layers, next.layer, layer, line);
      const problem = second ?? next.problem;
      if (problem !== null) problems.push(problem);
      if (next.layer !== null && second === null) visit(next.layer);
      else isComplete &&= next.isRound === true;
      isPending ||= next.isPending === true;
    }
  };
  visit({ script: root, through: [] });
  return { layers, problems, files, isComplete, isPending };
}

interface FollowedInclude {
  readonly layer: Layer | null;
  readonly problem: LayerProblem | null;
  /** It leads back to a script that is in the craft already. */
  readonly isRound?: boolean;
  readonly isPending?: boolean;
}

function follow(layer: Layer, line: ScriptLine, source: IncludeSource, files: Set<string>): FollowedInclude {
  if (line.statement.kind !== 'include') return { layer: null, problem: null };
  const { path } = line.statement;
  const refuse = (id: string, values: Record<string, string> = {}) => refused(layer, line, id, values);
  const uri = resolveInclude(layer.script.uri, path.value);
  if (uri === null)
    return refuse('line/include-refused', { why: 'it is not a relative path within the workspace' });
  const chain = [...layer.through.map((step) => step.script), layer.script];
  const round = chain.findIndex((script) => script.uri === uri);
  if (round >= 0) {
    const through = [...chain.slice(round).map((script) => script.uri), uri].map(fileName).join(' → ');
    // A circle through the root is reported in each of its scripts, at the line with which it begins there.
    const [start = { script: layer.script, line }] = round === 0 ? layer.through : [];
    const found = problemAt(start, 'line/include-circle', { path: path.value, through });
    return { layer: null, problem: found, isRound: true };
  }
  if (chain.length > deepestInclude)
    return refuse('line/include-too-deep', { deepest: String(deepestInclude) });
  files.add(uri);
  const included = source.open(uri);
  switch (included.kind) {
    case 'script':
      return {
        layer: { script: included.script, through: [...layer.through, { script: layer.script, line }] },
        problem: null,
      };
    case 'missing':
      return refuse('line/include-missing');
    case 'refused':
      return refuse('line/include-refused', { why: included.why });
    case 'too-long':
      return refuse('line/include-too-long', { why: included.why });
    case 'pending':
      return { layer: null, problem: null, isPending: true };
  }
}

/** A craft has one board: where it has a board's text already, a further one is refused. */
function secondText(
  layers: readonly Layer[],
  { script }: Layer,
  from: Layer,
  line: ScriptLine,
): LayerProblem | null {
  const first = layers.find((one) => one.script.isBoardText)?.script;
  if (!script.isBoardText || first === undefined || first === script) return null;
  const why = `the craft has the text of its board already, ${fileName(first.uri)}`;
  return refused(from, line, 'line/include-refused', { why }).problem;
}

function oneTooMany(layer: Layer, line: ScriptLine): FollowedInclude {
  return refused(layer, line, 'line/include-refused', {
    why: `${mostIncludes} includes come before it, and no more are followed`,
  });
}

function refused(
  { script }: Layer,
  line: ScriptLine,
  id: string,
  values: Record<string, string>,
): FollowedInclude {
  const path = line.statement.kind === 'include' ? line.statement.path.value : '';
  return { layer: null, problem: problemAt({ script, line }, id, { path, ...values }) };
}

/** A problem of an include, at its path. */
function problemAt(
  { script, line }: Omit<LayerProblem, 'problem'>,
  id: string,
  values: Record<string, string>,
): LayerProblem {
  const { statement } = line;
  const span = statement.kind === 'include' ? statement.path : { start: 0, end: line.text.length };
  return { script, line, problem: problem(id, span, values) };
}
