import { lastSettingUnder } from '../checks/report/rule-fix';
import type { Craft } from '../craft/craft';
import { inputKeys } from '../craft/keys';
import type { DocumentEdit } from '../language/document';
import { pathText, stepsOf } from '../language/path-text';
import type { ScriptLine } from '../language/script-line';

/** Lines with a place to fill in, and where in the text with them the first of these places is. */
export interface LinesToWrite {
  readonly edits: readonly DocumentEdit[];
  readonly at: { readonly line: number; readonly character: number };
}

/** A craft without a pack gets one of this name. */
const firstPack = 'first';

/**
 * Lines for settings that nobody has set, each in its section and without a value: what to fill in and in which unit
 * stands behind it as a comment. Never a guessed value. `values`: those that somebody found out, as a script writes
 * them. Null where there is nothing to write.
 */
export function linesToWrite(
  craft: Craft,
  paths: readonly string[],
  values: ReadonlyMap<string, string> = new Map(),
): LinesToWrite | null {
  const known = paths
    .map((path) => path.replace('<name>', firstPack))
    .filter((path) => craft.catalog.parameter(path) !== undefined);
  const bySection = new Map<string, string[]>();
  for (const path of new Set(known)) {
    const section = sectionFor(craft, path);
    bySection.set(section, [...(bySection.get(section) ?? []), path]);
  }
  const parts = [...bySection].map(([section, own]) => ({
    section,
    header: headerOf(craft, section),
    lines: linesOf(craft, section, own, values),
  }));
  const edits = [
    ...parts.flatMap(({ header, lines }) => (header === undefined ? [] : [below(craft, header, lines)])),
    ...atEnd(craft, parts),
  ].sort((one, other) => one.start.line - other.start.line);
  const [first] = edits;
  // From the end, so that none moves another, whether they are made at once or one after the other.
  return first === undefined ? null : { edits: edits.reverse(), at: placeIn(first) };
}

interface SectionLines {
  readonly section: string;
  /** Undefined where the script has no such section. */
  readonly header: ScriptLine | undefined;
  readonly lines: readonly string[];
}

/** The innermost section of the script that a path may stand in; a new one where there is none. */
function sectionFor(craft: Craft, path: string): string {
  const steps = stepsOf(path);
  for (let length = steps.length - 1; length > 0; length -= 1) {
    const section = pathText(steps.slice(0, length));
    if (headerOf(craft, section) !== undefined) return section;
  }
  return pathText(steps.slice(0, -1));
}

function headerOf({ root }: Craft, section: string): ScriptLine | undefined {
  return root.lines(inputKeys.section(section)).find((line) => line.section.pack === null);
}

function linesOf(
  craft: Craft,
  section: string,
  paths: readonly string[],
  values: ReadonlyMap<string, string>,
): readonly string[] {
  const rows = paths.map((path) => ({
    name: pathText(stepsOf(path).slice(stepsOf(section).length)),
    value: values.get(path) ?? `# ${commentOf(craft, path)}`,
  }));
  const width = Math.max(...rows.map(({ name }) => name.length));
  return rows.map(({ name, value }) => `${name.padEnd(width)} = ${value}`);
}

function below({ root }: Craft, header: ScriptLine, lines: readonly string[]): DocumentEdit {
  const { document } = root;
  const last = lastSettingUnder(root, header);
  const at = { line: document.lineNumberOf(last), character: last.text.length };
  return { start: at, end: at, text: lines.map((line) => `${document.lineEnd}${line}`).join('') };
}

/** New sections behind all others, with a blank line before each. */
function atEnd({ root: { document } }: Craft, parts: readonly SectionLines[]): readonly DocumentEdit[] {
  const { lineEnd, lineCount } = document;
  const sections = parts
    .filter(({ header }) => header === undefined)
    .map(({ section, lines }) => [`[${section}]`, ...lines, ''].join(lineEnd));
  if (sections.length === 0) return [];
  const last = document.lineAt(lineCount - 1)?.text ?? '';
  const gap = last.trim() !== '' ? `${lineEnd}${lineEnd}` : lineCount > 1 ? lineEnd : '';
  const at = { line: lineCount - 1, character: last.length };
  return [{ start: at, end: at, text: `${gap}${sections.join(lineEnd)}` }];
}

/** `No-load current, in A` */
function commentOf({ catalog }: Craft, path: string): string {
  const parameter = catalog.parameter(path)?.parameter;
  if (parameter === undefined) return '';
  return parameter.kind === 'quantity' && parameter.unit !== ''
    ? `${parameter.title}, in ${parameter.unit}`
    : parameter.title;
}

/** Behind the first "= " that an edit writes; no edit above it moves it. */
function placeIn({ start, text }: DocumentEdit): LinesToWrite['at'] {
  const before = text.slice(0, text.indexOf('= ') + 2).split(/\r\n|\n|\r/);
  const last = before.at(-1) ?? '';
  return {
    line: start.line + before.length - 1,
    character: last.length + (before.length === 1 ? start.character : 0),
  };
}
