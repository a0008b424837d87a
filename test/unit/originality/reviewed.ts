import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import {
  belongingLines,
  boardLines,
  checkLines,
  commonValueLines,
  memberLines,
  parameterLines,
  recordingLines,
  saidLines,
  sourceLines,
  tradeWordLines,
} from './standing-data';
import { drawnLines, motorOrders, scriptLines } from './standing-texts';

/**
 * What stands in the data, the scripts and the boards, a line each, beside the list that somebody has
 * reviewed. A line that is in no list was not asked the question of every name and number here: which
 * single program would a practitioner name on reading it?
 */
export const standing = {
  parameters: parameterLines,
  checks: checkLines,
  belongings: belongingLines,
  members: memberLines,
  sources: sourceLines,
  'common-values': commonValueLines,
  said: saidLines,
  'trade-words': tradeWordLines,
  recordings: recordingLines,
  boards: boardLines,
  scripts: scriptLines,
  drawings: drawnLines,
  'motor-orders': () => [...motorOrders().keys()],
} as const satisfies Readonly<Record<string, () => readonly string[]>>;

export type Kind = keyof typeof standing;

/** Lines that were reviewed together, with why they are ours or the trade's. */
export interface Group {
  readonly why: string;
  readonly lines: readonly string[];
}

export function pathOf(kind: Kind): string {
  return join(__dirname, 'reviewed', `${kind}.txt`);
}

/** A list: each group under its reason, which begins with `#`. */
export function readReviewed(kind: Kind): readonly Group[] {
  if (!existsSync(pathOf(kind))) return [];
  return readFileSync(pathOf(kind), 'utf8')
    .split(/^# /m)
    .slice(1)
    .map((part) => {
      const [why = '', ...lines] = part.split('\n').filter((text) => text !== '');
      return { why, lines };
    });
}

export function writtenReviewed(groups: readonly Group[]): string {
  return groups
    .filter(({ lines }) => lines.length > 0)
    .map(({ why, lines }) => `# ${why}\n${lines.join('\n')}\n`)
    .join('\n');
}

/** What stands and is in no list, and what is in the list and stands no more. */
export function differences(kind: Kind): { readonly unreviewed: string[]; readonly stale: string[] } {
  const reviewed = new Set(readReviewed(kind).flatMap(({ lines }) => lines));
  const now = standing[kind]();
  const nowSet = new Set(now);
  return {
    unreviewed: now.filter((text) => !reviewed.has(text)),
    stale: [...reviewed].filter((text) => !nowSet.has(text)),
  };
}
