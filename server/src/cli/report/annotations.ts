import type { Catalog } from '../../catalog/catalog';
import type { Level } from '../../catalog/model/check';
import { replacementText } from '../../catalog/replacements';
import { type CheckedFile, mostReported, notSeen, type ReportedFinding } from './checked-file';
import { visible } from './visible';

/** As a code host ranks what it shows beside a line. */
const kinds: Readonly<Record<Level, string>> = {
  'must-fix': 'error',
  risk: 'warning',
  note: 'notice',
  tidy: 'notice',
};

/** The report as lines that the jobs of code hosts take for annotations: one for each finding, then what else is to be known. */
export function annotations(checked: readonly CheckedFile[], { replacements }: Catalog): string {
  const lines = [
    ...checked.flatMap((file) => [
      ...file.findings.map((finding) => annotation(file.path, finding)),
      ...remarks(file).map((text) => `::notice file=${property(file.path)}::${message(text)}`),
    ]),
    ...replacements.map((one) => `::notice::${message(replacementText(one))}`),
  ];
  return lines.map((line) => `${line}\n`).join('');
}

function annotation(path: string, { id, level, range, ...finding }: ReportedFinding): string {
  const { start, end } = range;
  const columns =
    start.line === end.line
      ? `,col=${start.character + 1},endColumn=${Math.max(start.character, end.character) + 1}`
      : '';
  const place = `file=${property(path)},line=${start.line + 1},endLine=${end.line + 1}${columns}`;
  const advice = finding.accepted === null ? finding.advice : `Accepted: ${finding.accepted}`;
  return `::${kinds[level]} ${place},title=${property(`${level} ${id}`)}::${message(`${finding.message}\n${advice}`)}`;
}

function remarks(file: CheckedFile): readonly string[] {
  const { omitted } = file;
  const more = `It has ${omitted} more findings; the worst ${mostReported} are shown.`;
  return [...(omitted === 0 ? [] : [more]), ...notSeen(file)];
}

/** What would end the line, or be taken for such an escape. */
function message(text: string): string {
  return text
    .split('\n')
    .map((line) => visible(line).replaceAll('%', '%25'))
    .join('%0A');
}

/** In a property commas and colons part as well. */
function property(text: string): string {
  return message(text).replaceAll(':', '%3A').replaceAll(',', '%2C');
}
