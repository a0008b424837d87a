import type { Level } from '../catalog/model/check';
import type { Finding } from '../checks/finding';
import { countByLevel, levels } from '../checks/order';
import { adviceOf, messageOf } from '../checks/render';
import type { Checked } from './check';
import { excerptOf } from './excerpt';
import { mostTold, toldOf } from './shown-findings';
import { painted, type Terminal, visible } from './terminal';

const colours: Readonly<Record<Level, 'red' | 'yellow' | 'blue' | 'grey'>> = {
  'must-fix': 'red',
  risk: 'yellow',
  note: 'blue',
  tidy: 'grey',
};

/** The report for people: each finding with its line and a mark under it, then the counts. */
export function textReport(
  checked: readonly Checked[],
  terminal: Terminal,
  pathOf: (uri: string) => string,
): string {
  const texts = checked.flatMap(({ script, findings }) => {
    const { told, omitted } = toldOf(findings);
    const rest = omitted === 0 ? [] : [omittedText(script.path, omitted, terminal)];
    return [...told.map((finding) => findingText(script.path, finding, terminal, pathOf)), ...rest];
  });
  return `${texts.join('\n')}${texts.length > 0 ? '\n' : ''}${summary(checked, terminal)}\n`;
}

function omittedText(path: string, omitted: number, terminal: Terminal): string {
  return `${painted(path, 'bold', terminal)} has ${omitted} more findings; the worst ${mostTold} are told, and all are counted.`;
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

/** The line with a mark under the place. */
function excerpt({ place, level }: Finding, terminal: Terminal): readonly string[] {
  if (place.line.text.trim() === '') return [];
  const { line, indent, length } = excerptOf(place.line.text, place);
  return [`  ${line}`, `  ${' '.repeat(indent)}${painted('^'.repeat(length), colours[level], terminal)}`];
}

function summary(checked: readonly Checked[], terminal: Terminal): string {
  const counts = countByLevel(checked.flatMap(({ findings }) => findings));
  const scripts = checked.length === 1 ? '1 script' : `${checked.length} scripts`;
  const parts = levels.map((level) => painted(`${counts[level]} ${level}`, colours[level], terminal));
  return `${scripts} checked: ${parts.join(', ')}. Checks see the script, not the craft: propellers off at the bench.`;
}
