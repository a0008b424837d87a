import type { Comparison, Effect, SettingWithEffect, SideLabel } from '../../sheet/compare/compare';
import type { FindingChanges } from '../../sheet/compare/finding-changes';
import type { MovedFigure } from '../../sheet/compare/moved-figures';
import { jobStages } from '../../sheet/job-stages';
import { painted, type Terminal } from '../terminal';
import { visible } from './visible';
import { wrapped } from './wrapped';

/** A comparison for people: setting by setting in the order of the job, then what it comes to. */
export function comparisonText(comparison: Comparison, terminal: Terminal): string {
  const { before, after, figures, findings, caution } = comparison;
  const title = (text: string) => ['', painted(text, 'bold', terminal)];
  const differences = jobStages.flatMap(([stage, title]) => stageLines(stage, title, comparison, terminal));
  const lines = [
    `${labelText(before)} → ${labelText(after)}`,
    ...(differences.length === 0 ? ['', 'No setting differs.'] : differences),
    ...(figures.length === 0 ? [] : [...title('All together'), ...figures.map((one) => movedText(one))]),
    ...(findings.gained.length + findings.lost.length === 0 ? [] : title('Findings')),
    ...findingLines(findings, '', terminal),
    '',
    caution,
  ];
  return `${lines.map((line) => broken(line, terminal.width)).join('\n')}\n`;
}

/** A line's own indentation, and two columns more for what does not go into it. */
function broken(line: string, width: number | null): string {
  const [lead = ''] = /^ */.exec(line) ?? [];
  return wrapped(line.slice(lead.length), width, { lead, indent: `${lead}  ` });
}

function labelText({ name, file, pack }: SideLabel): string {
  return visible(`${name} (${file}${pack === null ? '' : `, pack ${pack}`})`);
}

function stageLines(
  stage: string,
  title: string,
  { settings, members }: Comparison,
  terminal: Terminal,
): readonly string[] {
  const rows = [
    ...settings.filter((one) => one.stage === stage).flatMap((one) => settingLines(one, terminal)),
    ...members
      .filter((one) => one.stage === stage)
      .map(({ path, title, is }) => visible(`  ${path} ${is}: ${title}`)),
  ];
  return rows.length === 0 ? [] : ['', painted(title, 'bold', terminal), ...rows];
}

function settingLines(
  { path, title, before, after, change, effect }: SettingWithEffect,
  terminal: Terminal,
): readonly string[] {
  return [
    visible(
      `  ${path}: ${heldText(before)} → ${heldText(after)}${change === null ? '' : ` (${title}: ${change})`}`,
    ),
    ...(effect === null ? [] : effectLines(effect, terminal)),
  ];
}

function heldText({ text, isAssumed }: SettingWithEffect['before']): string {
  if (text === null) return 'not set';
  return isAssumed ? `${text} (not set)` : text;
}

function effectLines({ moved, leftOut, gained, lost }: Effect, terminal: Terminal): readonly string[] {
  return [
    ...moved.map((one) => `    ${movedText(one)}`),
    ...(leftOut === 0 ? [] : [`    and ${leftOut} more figures`]),
    ...findingLines({ gained, lost }, '    ', terminal),
  ];
}

function movedText({ title, packs, turn }: MovedFigure): string {
  const readings = packs.map(
    ({ before, after }) => `${before?.text ?? 'not known'} → ${after?.text ?? 'not known'}`,
  );
  return `${title}: ${readings.join('; ')}${turn === null ? '' : ` (${turn})`}`;
}

function findingLines(
  { gained, lost }: FindingChanges,
  indent: string,
  terminal: Terminal,
): readonly string[] {
  return [
    ...gained.map(({ level, id, message, isOnlyAlone = false }) => {
      const when = isOnlyAlone ? 'only if changed alone: ' : '';
      return `${indent}${painted('+', 'red', terminal)} ${visible(`${when}${level} ${id}: ${message}`)}`;
    }),
    ...lost.map(
      ({ level, id, message }) =>
        `${indent}${painted('-', 'blue', terminal)} ${visible(`${level} ${id}: ${message}`)}`,
    ),
  ];
}
