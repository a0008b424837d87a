import type { RecordingFindingWords } from '../../catalog/model/recording-columns';
import type { CraftView } from '../../craft/view';
import type { RecordingFinding, RecordingReport } from '../report';
import { besideParts } from './beside-parts';
import { axesFound } from './follows';
import type { FoundInFlight } from './found';
import { gainsFound } from './gains';
import { idleNotches } from './idle-notches';
import { motorsFound } from './motors';
import { motorsThatShake, tonesLetThrough } from './tones';

const weights = { 'must-fix': 0, risk: 1, note: 2 } as const;

/** What a recording shows that a pilot should know, the weightiest first; without a script what it shows by itself. */
export function findingsOf(
  report: RecordingReport,
  view: CraftView | null,
  words: readonly RecordingFindingWords[],
): readonly RecordingFinding[] {
  const found = [
    ...(view === null ? [] : tonesLetThrough(report, view)),
    ...motorsThatShake(report),
    ...motorsFound(report),
    ...axesFound(report, view),
    ...(view === null
      ? []
      : [...besideParts(report, view), ...idleNotches(report, view), ...gainsFound(report, view)]),
  ];
  return found
    .flatMap((one) => inWords(one, words))
    .sort((one, other) => weights[one.level] - weights[other.level]);
}

/** In the words of the table; nothing where it has none. */
export function inWords(
  { id, values, proposals }: FoundInFlight,
  words: readonly RecordingFindingWords[],
): readonly RecordingFinding[] {
  const row = words.find((one) => one.id === id);
  if (row === undefined) return [];
  const filled = (template: string) =>
    template.replace(/\{([a-z]+)\}/g, (slot, name: string) => values[name] ?? slot);
  return [{ id, level: row.level, sentence: filled(row.message), advice: filled(row.advice), proposals }];
}
