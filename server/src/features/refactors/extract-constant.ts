import type { ExpressionNode, Span, ValueNode } from '../../language/ast';
import { isOwnPath, stepsOf } from '../../language/path-text';
import type { ScriptLine } from '../../language/script-line';
import { parseUnit } from '../../units/unit';
import { refusalOf } from '../navigation/rename-refusal';
import { rangeInLine, type TextEdit } from '../range';
import type { Snapshot } from '../snapshot';
import type { Refactor } from './refactor';
import { calculationAt } from './value-at';

/** The number under the cursor, or the calculation that is selected, as a constant with a name. */
export function extractConstant(snapshot: Snapshot, line: ScriptLine, at: Span): readonly Refactor[] {
  const found = calculationAt(line, at);
  if (found === null || found.node.kind === 'reference' || !mayBeNamed(snapshot, line)) return [];
  if (sharesUnit(found.node, found.within)) return [];
  const name = freeName(snapshot, line);
  if (name === null) return [];
  const { node } = found;
  const text = line.text.slice(node.start, node.end);
  const { script } = snapshot;
  return [
    {
      title: `Extract a constant: ${name} = ${text}`,
      kind: 'extract',
      edits: () => {
        const use = { range: rangeInLine(script.lineNumber(line), node), newText: name };
        return [{ uri: script.uri, edits: [...definition(snapshot, line, `let ${name} = ${text}`), use] }];
      },
    },
  ];
}

/** Whether the line takes a name for a value: a word or a text would be taken for itself. */
function mayBeNamed({ catalog }: Snapshot, { statement, settingPath }: ScriptLine): boolean {
  if (statement.kind === 'constant') return true;
  if (settingPath === null || isOwnPath(settingPath)) return false;
  const kind = catalog.parameter(settingPath)?.parameter.kind;
  return kind !== undefined && ['quantity', 'count', 'range', 'curve', 'place'].includes(kind);
}

/** One end of `1650..2100 us`: without the other, one of them has no unit. */
function sharesUnit(node: ExpressionNode, [around]: readonly ValueNode[]): boolean {
  if (around?.kind !== 'range') return false;
  const { low, high } = around;
  return (node === low || node === high) && low.kind === 'number' && low.unit === null;
}

const mostTried = 20;

/** `gyro-cutoff` for `gyro.filter.1.cutoff`, with a number where that is taken; null where all are. */
function freeName(snapshot: Snapshot, { statement, settingPath }: ScriptLine): string | null {
  const words =
    statement.kind === 'constant' ? [statement.name.text, 'part'] : wordsFor(stepsOf(settingPath ?? ''));
  const base = words.join('-');
  const names = Array.from({ length: mostTried }, (_, index) =>
    index === 0 ? base : `${base}-${index + 1}`,
  );
  return names.find((name) => isFree(snapshot, name)) ?? null;
}

function wordsFor(steps: readonly string[]): readonly string[] {
  const words = steps.filter((step) => /^[A-Za-z][A-Za-z0-9-]*$/.test(step));
  const [group = ''] = words;
  const last = words.at(-1) ?? '';
  return group === last ? [last] : [group, last];
}

function isFree(snapshot: Snapshot, name: string): boolean {
  const isUnit = parseUnit(name).unit !== undefined;
  return !isUnit && refusalOf(snapshot, [snapshot.craft], { kind: 'constant', name }) === null;
}

/**
 * Behind the last constant or include at the top; else above the first line that says anything. Of a constant's own
 * value the part stands above it: it reads from top to bottom.
 */
function definition({ script }: Snapshot, user: ScriptLine, text: string): readonly TextEdit[] {
  const { document } = script;
  const end = document.lineEnd;
  let last: ScriptLine | undefined;
  let first = user;
  for (const line of document.lines()) {
    const { kind } = line.statement;
    if (line === user || kind === 'section' || kind === 'setting' || kind === 'broken') {
      first = line;
      break;
    }
    if (kind === 'constant' || kind === 'include') last = line;
  }
  if (last !== undefined) {
    const at = rangeInLine(script.lineNumber(last), { start: last.text.length, end: last.text.length });
    return [{ range: at, newText: `${end}${text}` }];
  }
  const gap = first.statement.kind === 'constant' ? end : `${end}${end}`;
  return [{ range: rangeInLine(script.lineNumber(first), { start: 0, end: 0 }), newText: `${text}${gap}` }];
}
