import type { Finding } from '../../checks/report/finding';
import { listed } from '../../checks/report/listed';
import type { Craft } from '../../craft/craft';
import { axisNames } from '../../figures/axis-names';
import { findingChanges, type RenderedFinding } from '../compare/finding-changes';

/** What weighs so much that nothing is proposed which raises it. */
export function raisedBy(before: readonly Finding[], after: readonly Finding[]): readonly RenderedFinding[] {
  return findingChanges(before, after).gained.filter(({ level }) => level !== 'note');
}

/** Findings that hang on all settings of the loop together; the search holds the loops clear of them itself. */
export const ofLoops: ReadonlySet<string> = new Set(axisNames.map((axis) => `tune/${axis}-swings`));

/** Checks, by what they are called, as the end of a sentence about what a setup would bring. */
export function spokenUp({ catalog }: Craft, ids: readonly string[]): string {
  const titles = [...new Set(ids)].map((id) => `“${catalog.check(id)?.title ?? id}”`);
  return `the check${titles.length === 1 ? '' : 's'} ${listed(titles)} would speak up`;
}
