import type { ChangedSetting, HeldValue } from '../../sheet/compare/changed-settings';
import type { Comparison, Effect, SideLabel } from '../../sheet/compare/compare';
import type { FindingChanges } from '../../sheet/compare/finding-changes';
import type { FigureReading, MovedFigure } from '../../sheet/compare/moved-figures';
import { totalsText } from '../../sheet/compare/totals-text';
import type { Matter } from '../../sheet/compare/what-matters';
import { jobStages } from '../../sheet/job-stages';
import { painted, type Terminal } from '../terminal';
import { visible } from './visible';
import { wrapped } from './wrapped';

/** A comparison for people: what differs, what matters most, and the rest where it is wanted. */
export function comparisonText(
  comparison: Comparison,
  terminal: Terminal,
  { isWhole }: { readonly isWhole: boolean },
): string {
  const { before, after, settings, members, matters, caution } = comparison;
  const title = (text: string) => ['', painted(text, 'bold', terminal)];
  const count = settings.length + members.length;
  const rest = restLines(comparison, terminal);
  const lines = [
    `${labelText(before)} → ${labelText(after)}`,
    totalsText(count, comparison.totals),
    ...(count === 0 ? [] : title('What differs')),
    ...jobStages.flatMap(([stage, question]) => stageLines(stage, question, comparison)),
    ...(matters.length === 0 ? [] : title('What matters most')),
    ...matters.map((matter) => `  ${matterText(matter, terminal)}`),
    ...(isWhole ? rest : []),
    '',
    ...(isWhole || rest.length === 0
      ? []
      : [
          comparison.alone.length === 0
            ? 'The rest: --all'
            : 'The rest, and what each change does alone: --all',
        ]),
    caution,
  ];
  return `${lines.map((line) => broken(line, terminal.width)).join('\n')}\n`;
}

function restLines({ alone, figures, findings }: Comparison, terminal: Terminal): readonly string[] {
  const title = (text: string) => ['', painted(text, 'bold', terminal)];
  const others = findingLines(findings, '  ', terminal);
  return [
    ...(others.length === 0 ? [] : [...title('Other findings'), ...others]),
    ...(figures.length === 0 ? [] : title('Other figures')),
    ...figures.map((one) => `  ${movedText(one)}`),
    ...(alone.length === 0 ? [] : title('Each change alone')),
    ...alone.flatMap(({ paths, effect }) => [
      `  ${visible(paths.join(', '))}`,
      ...effectLines(effect, terminal),
    ]),
  ];
}

/** A line's own indentation, and two columns more for what does not go into it. */
function broken(line: string, width: number | null): string {
  const [lead = ''] = /^ */.exec(line) ?? [];
  return wrapped(line.slice(lead.length), width, { lead, indent: `${lead}  ` });
}

function labelText({ name, file, pack }: SideLabel): string {
  return visible(`${name} (${file}${pack === null ? '' : `, pack ${pack}`})`);
}

function stageLines(stage: string, question: string, { settings, members }: Comparison): readonly string[] {
  const rows = [
    ...settings.filter((one) => one.stage === stage).map(settingText),
    ...members
      .filter((one) => one.stage === stage)
      .map(({ path, title, is }) => visible(`    ${path} ${is}: ${title}`)),
  ];
  return rows.length === 0 ? [] : [`  ${question}`, ...rows];
}

function settingText({ path, title, before, after, change }: ChangedSetting): string {
  const share = change === null ? '' : ` (${title}: ${change})`;
  return visible(`    ${path}: ${heldText(before)} → ${heldText(after)}${share}`);
}

function heldText({ text, isAssumed }: HeldValue): string {
  if (text === null) return 'not set';
  return isAssumed ? `${text} (not set)` : text;
}

function effectLines({ moved, leftOut, gained, lost }: Effect, terminal: Terminal): readonly string[] {
  const nothing = moved.length + gained.length + lost.length === 0;
  return [
    ...(nothing ? ['    moves no figure and no finding'] : []),
    ...moved.map((one) => `    ${movedText(one)}`),
    ...(leftOut === 0 ? [] : [`    and ${leftOut} more figures`]),
    ...findingLines({ gained, lost }, '    ', terminal),
  ];
}

function matterText(matter: Matter, terminal: Terminal): string {
  if (matter.kind === 'moved') return movedText(matter.figure, true);
  const { finding } = matter;
  const changes = { gained: [], lost: [], [matter.kind]: [finding] };
  return findingLines(changes, '', terminal).join('');
}

/** With several packs each by its name, and only those with which it moves; with the span of each where it is wanted. */
export function movedText({ title, packs, turn }: MovedFigure, hasSpans = false): string {
  const words = (reading: FigureReading | null) =>
    reading === null
      ? 'not known'
      : `${reading.text}${hasSpans && reading.span !== null ? ` (${reading.span})` : ''}`;
  const readings = packs
    .filter(({ before, after }) => before?.text !== after?.text)
    .map(({ pack, before, after }) => {
      const name = pack === null || packs.length === 1 ? '' : `${pack} `;
      return `${name}${words(before)} → ${words(after)}`;
    });
  const judged = turn === null ? '' : hasSpans ? `, ${turn}` : ` (${turn})`;
  return visible(`${title}: ${readings.join('; ')}${judged}`);
}

export function findingLines(
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
