import type { Level } from '../catalog/model/check';
import type { Finding } from '../checks/finding';
import { countByLevel, levels } from '../checks/order';
import { adviceOf, messageOf } from '../checks/render';
import type { Checked } from './check';
import { painted, type Terminal, visible } from './terminal';

const colours: Readonly<Record<Level, 'red' | 'yellow' | 'blue' | 'grey'>> = {
  'must-fix': 'red',
  risk: 'yellow',
  note: 'blue',
  tidy: 'grey',
};

const widest = 160;

/** The report for people: each finding with its line and a mark under it, then the counts. */
export function textReport(
  checked: readonly Checked[],
  terminal: Terminal,
  pathOf: (uri: string) => string,
): string {
  const told = checked.flatMap(({ script, findings }) =>
    findings.map((finding) => findingText(script.path, finding, terminal, pathOf)),
  );
  return `${told.join('\n')}${told.length > 0 ? '\n' : ''}${summary(checked, terminal)}\n`;
}

function findingText(
  path: string,
  finding: Finding,
  terminal: Terminal,
  pathOf: (uri: string) => string,
): string {
  const { place, level, check, accepted } = finding;
  const line = place.script.lineNumber(place.line) + 1;
  const where = painted(`${path}:${line}:${place.start + 1}`, 'bold', terminal);
  const head = `${where} ${painted(level, colours[level], terminal)} ${check.id} ${visible(messageOf(finding))}`;
  const advice = accepted === null ? adviceOf(finding) : `Accepted: ${accepted}`;
  const related = finding.related.map(({ place: at, message }) => {
    const file = at.script === place.script ? path : pathOf(at.script.uri);
    return `  ${painted(`${file}:${at.script.lineNumber(at.line) + 1}`, 'grey', terminal)} ${visible(message)}`;
  });
  return [head, ...excerpt(finding, terminal), `  ${visible(advice)}`, ...related].join('\n');
}

/** The line with a mark under the place; a very long line is cut round it. */
function excerpt({ place, level }: Finding, terminal: Terminal): readonly string[] {
  const { text } = place.line;
  if (text.trim() === '') return [];
  const from = place.start > widest ? place.start - widest / 4 : 0;
  const shown = visible(text.slice(from, from + widest)).replaceAll('\t', ' ');
  const indent = ' '.repeat([...text.slice(from, place.start)].length);
  const length = Math.max(1, [...text.slice(place.start, Math.min(place.end, from + widest))].length);
  return [`  ${shown}`, `  ${indent}${painted('^'.repeat(length), colours[level], terminal)}`];
}

function summary(checked: readonly Checked[], terminal: Terminal): string {
  const counts = countByLevel(checked.flatMap(({ findings }) => findings));
  const scripts = checked.length === 1 ? '1 script' : `${checked.length} scripts`;
  const parts = levels.map((level) => painted(`${counts[level]} ${level}`, colours[level], terminal));
  return `${scripts} checked: ${parts.join(', ')}. Checks see the script, not the craft: propellers off at the bench.`;
}
