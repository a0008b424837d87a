import type { Check } from '../../catalog/model/check';
import { suggestWord } from '../../catalog/suggest';
import type { Craft } from '../../craft/craft';
import { craftInputs, inputKeys, type LineSubject } from '../../craft/keys';
import type { Script } from '../../craft/script';
import { unusedConstants } from '../../craft/unused-constants';
import { CraftView } from '../../craft/view';
import type { Problem } from '../../language/ast';
import { problem, replacement } from '../../language/problem';
import type { ScriptLine } from '../../language/script-line';
import { Query } from '../../query/query';
import { wordedFixes } from '../data/data-fixes';
import type { Raised } from '../report/acceptances';
import type { Fix, Place, Related } from '../report/finding';
import { fixesFor } from '../report/rule-fix';
import { faultyIncludes } from './faulty-includes';
import { mendsFor } from './mends';
import { movesFor } from './moves';
import { nameSpan, settingElsewhere } from './names';
import { refined } from './refined';

/** What is wrong with the lines of the craft's own script, one by one and among each other. */
export function* lineFindings(craft: Craft): Iterable<Raised> {
  for (const line of craft.root.problems.keys()) yield* wrongLine.get(craft, line);
  for (const line of craft.root.dynamicLines) yield* dynamicLine.get(craft, line);
  yield* amongLines(craft);
}

/** What is wrong with a line by itself. An edit makes nothing anew for lines that it leaves. */
const wrongLine = new Query('findings of a line', (craft: Craft, line: ScriptLine): readonly Raised[] => {
  craftInputs.read(craft, ...inputKeys.line(line));
  return (craft.root.problems.get(line) ?? []).map((one) => raisedFrom(craft, craft.root, line, one));
});

/** What is wrong with a line and shows only with the rest of the craft. */
const dynamicLine = new Query('findings of names', (craft: Craft, line: ScriptLine): readonly Raised[] =>
  craft.lineProblems(line).map((one) => raisedFrom(craft, craft.root, line, one)),
);

const unusedConstant = new Query('findings of a constant', (craft: Craft, line: ScriptLine) => {
  const { statement } = line;
  if (statement.kind !== 'constant') return [];
  // What is wrong with the line itself comes first.
  if (craft.root.problems.has(line) || craft.lineProblems(line).length > 0) return [];
  craftInputs.read(craft, ...inputKeys.line(line));
  const { name } = statement;
  return [raisedFrom(craft, craft.root, line, problem('line/constant-unused', name, { name: name.text }))];
});

/** What is wrong with lines among each other, and with what they include. */
function* amongLines(craft: Craft): Iterable<Raised> {
  const { root } = craft;
  for (const subject of root.repeatedSubjects()) yield* repeated(craft, subject);
  for (const { script, line, problem: found } of craft.layers().problems) {
    if (script === root) yield raisedFrom(craft, root, line, found);
  }
  for (const line of unusedConstants.get(craft)) yield* unusedConstant.get(craft, line);
  yield* overlays(craft);
  for (const { line, problem: found, first } of faultyIncludes(craft)) {
    yield raisedFrom(craft, root, line, found, [{ place: first, message: 'The first of them is here.' }]);
  }
}

function raisedFrom(
  craft: Craft,
  script: Script,
  line: ScriptLine,
  problem: Problem,
  related: readonly Related[] = [],
): Raised {
  const found = refined(craft, line, problem);
  const { id, start, end, values } = found;
  const check = craft.catalog.check(id);
  if (check === undefined) throw new Error(`the catalogue has no check ${id}`);
  const place: Place = { script, line, start, end };
  const finding = {
    check,
    level: check.level,
    values,
    place,
    // Looked up anew each time, as the lines that it names come and go.
    get related(): readonly Related[] {
      return [...related, ...settingElsewhere(craft, line, found)];
    },
    pack: null,
    // Made when they are looked at: fixes may rest on a guess that costs more than the check itself.
    get fixes(): readonly Fix[] {
      const inLine = found.fixes.map(({ title, values: shown = {}, edits }) => ({
        title,
        values: shown,
        set: null,
        edits: edits.map(({ newText, ...span }) => ({ place: { script, line, ...span }, newText })),
      }));
      const moves = movesFor(craft, line, found);
      return [...inLine, ...moves, ...mendsFor(craft, line, found), ...worded(craft, line, check, values)];
    },
    accepted: null,
  };
  return { finding, acceptedOn: { script, line } };
}

/** What the words of the check offer for the setting of the line. */
function worded(craft: Craft, line: ScriptLine, check: Check, values: Problem['values']): readonly Fix[] {
  const at = line.settingPath;
  if (at === null || check.fixes === undefined) return [];
  const view = new CraftView(craft, line.section.pack);
  return wordedFixes(view, check, { ...values, at }).flatMap((fix) => fixesFor(view, fix));
}

/** A parameter or constant set more than once in one script; a section opened more than once. */
function* repeated(craft: Craft, subject: LineSubject): Iterable<Raised> {
  const { root } = craft;
  const lines = root.lines(subject);
  const [first] = lines;
  const last = lines.at(-1);
  if (first === undefined || last === undefined || !isKnown(craft, first)) return;
  const isSection = first.statement.kind === 'section';
  for (const line of lines) {
    const span = nameSpan(line);
    const other = line === first ? last : first;
    const place: Place = { script: root, line: other, ...nameSpan(other) };
    // A script that parts its packs already needs no such advice for the lines of one of them.
    const overlay = line.section.pack === null && craft.packs().length > 1 ? '[… @ pack]' : '';
    const values = { name: nameOf(line), line: String(root.lineNumber(other) + 1), overlay };
    if (line === first) {
      if (isSection) continue;
      const message = 'It is set again here, and this counts.';
      yield raisedFrom(craft, root, line, problem('line/set-again-below', span, values), [
        { place, message },
      ]);
      continue;
    }
    const id = isSection ? 'line/section-again' : 'line/set-twice';
    const message = isSection ? 'The section is opened here first.' : 'It is set here first.';
    yield raisedFrom(craft, root, line, problem(id, span, values), [{ place, message }]);
  }
}

function isKnown(craft: Craft, { statement, settingPath }: ScriptLine): boolean {
  if (statement.kind === 'section') return craft.catalog.isSection(statement.path.text);
  return (
    statement.kind === 'constant' ||
    (settingPath !== null && craft.catalog.parameter(settingPath) !== undefined)
  );
}

function nameOf(line: ScriptLine): string {
  const { statement, settingPath } = line;
  if (statement.kind === 'constant') return statement.name.text;
  return statement.kind === 'section' ? statement.path.text : (settingPath ?? '');
}

/** `[power @ cruise]` where no pack is called cruise. */
function* overlays(craft: Craft): Iterable<Raised> {
  const { root } = craft;
  const packs = craft.packs();
  for (const line of root.lines(inputKeys.overlay)) {
    if (line.statement.kind !== 'section' || line.statement.pack === null) continue;
    const { pack } = line.statement;
    // A part without packs of its own may speak of those of the scripts that include it.
    if (packs.includes(pack.text) || !craft.isWhole()) continue;
    const near = suggestWord(packs, pack.text);
    const fixes = near.map((name) => replacement('Write {to}', pack, name));
    const values = { pack: pack.text, packs: packs.join(', '), suggestion: near.join(', ') };
    yield raisedFrom(craft, root, line, problem('line/unknown-pack', pack, values, fixes));
  }
}
