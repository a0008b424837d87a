import { levelColours, painted, type Terminal } from '../terminal';
import type { ReportedFinding } from './checked-file';
import { excerptOf } from './excerpt';
import { visible } from './visible';
import { wrapped } from './wrapped';

/** A finding for people: what is wrong and where, the line with a mark under it, and what to do. */
export function findingText(path: string, finding: ReportedFinding, terminal: Terminal): string {
  const { start } = finding.range;
  const where = painted(visible(`${path}:${start.line + 1}:${start.character + 1}`), 'bold', terminal);
  const head = `${where} ${painted(finding.level, levelColours[finding.level], terminal)} ${finding.id} ${visible(finding.message)}`;
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
  return [
    `  ${line}`,
    `  ${' '.repeat(indent)}${painted('^'.repeat(length), levelColours[level], terminal)}`,
  ];
}
