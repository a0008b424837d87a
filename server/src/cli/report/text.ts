import type { Catalog } from '../../catalog/catalog';
import type { Level } from '../../catalog/model/check';
import { replacementText } from '../../catalog/replacements';
import { levels } from '../../checks/report/order';
import { notLookedAt, type ReadAs } from '../../craft/read-as';
import { painted, type Terminal } from '../terminal';
import { type CheckedFile, countsOf, mostReported, type ReportedFinding } from './checked-file';
import { excerptOf } from './excerpt';
import { visible } from './visible';
import { wrapped } from './wrapped';

const colours: Readonly<Record<Level, 'red' | 'yellow' | 'blue' | 'grey'>> = {
  'must-fix': 'red',
  risk: 'yellow',
  note: 'blue',
  tidy: 'grey',
};

/** The report for people: each finding with its line and a mark under it, then the counts. */
export function textReport(
  checked: readonly CheckedFile[],
  { replacements }: Catalog,
  terminal: Terminal,
): string {
  const texts = checked.flatMap(({ path, readAs, findings, omitted }) => [
    ...findings.map((finding) => findingText(path, finding, terminal)),
    ...(omitted === 0 ? [] : [omittedText(path, omitted, terminal)]),
    ...(findings.some(({ id }) => id === saysPart) ? [] : uncheckedText(path, readAs, terminal)),
  ]);
  const replaced = replacements.map((one) => wrapped(visible(replacementText(one)), terminal.width));
  return `${[...texts, ...replaced, summary(checked, terminal)].join('\n')}\n`;
}

function omittedText(path: string, omitted: number, terminal: Terminal): string {
  const head = painted(visible(path), 'bold', terminal);
  const sentence = `${head} has ${omitted} more findings; the worst ${mostReported} are shown, and all are counted.`;
  return wrapped(sentence, terminal.width);
}

/** The finding that says the same. */
const saysPart = 'safe/read-as-part';

/** What was no whole craft is never passed over as if all had been looked at. */
function uncheckedText(path: string, readAs: ReadAs | null, terminal: Terminal): readonly string[] {
  const unchecked = readAs === null ? null : notLookedAt(readAs);
  if (unchecked === null) return [];
  return [wrapped(`${painted(visible(path), 'bold', terminal)} ${unchecked}`, terminal.width)];
}

function findingText(path: string, finding: ReportedFinding, terminal: Terminal): string {
  const { start } = finding.range;
  const where = painted(visible(`${path}:${start.line + 1}:${start.character + 1}`), 'bold', terminal);
  const head = `${where} ${painted(finding.level, colours[finding.level], terminal)} ${finding.id} ${visible(finding.message)}`;
  const advice = finding.accepted === null ? finding.advice : `Accepted: ${finding.accepted}`;
  const related = finding.related.map(({ path: file, range, message }) => {
    return `${painted(visible(`${file}:${range.start.line + 1}`), 'grey', terminal)} ${visible(message)}`;
  });
  const below = [visible(advice), ...related];
  return [
    wrapped(head, terminal.width, { indent: '    ' }),
    ...excerpt(finding, terminal),
    ...below.map((text) => wrapped(text, terminal.width, { lead: '  ', indent: '    ' })),
  ].join('\n');
}

/** The line with a mark under the place; of a place over several lines, under its part of the first one. */
function excerpt(
  { line: text, range: { start, end }, level }: ReportedFinding,
  terminal: Terminal,
): readonly string[] {
  if (text.trim() === '') return [];
  const last = end.line === start.line ? end.character : text.length;
  const columns = terminal.width === null ? undefined : terminal.width - 2;
  const { line, indent, length } = excerptOf(text, { start: start.character, end: last }, columns);
  return [`  ${line}`, `  ${' '.repeat(indent)}${painted('^'.repeat(length), colours[level], terminal)}`];
}

function summary(checked: readonly CheckedFile[], terminal: Terminal): string {
  const counts = countsOf(checked);
  const count = checked.filter(({ isAddition }) => !isAddition).length;
  const scripts = count === 1 ? '1 script' : `${count} scripts`;
  const parts = levels.map((level) => painted(`${counts[level]} ${level}`, colours[level], terminal));
  const sentence = `${scripts} checked: ${parts.join(', ')}. Checks see the script, not the craft: propellers off at the bench.`;
  return wrapped(sentence, terminal.width);
}
