import type { FindingChanges, RenderedFinding } from '../../server/src/sheet/compare/finding-changes';
import { element } from './element';
import { markOf } from './mark';

/** Findings that come and go; nothing where none does. */
export function findingChangeList({ gained, lost }: FindingChanges): readonly HTMLElement[] {
  if (gained.length + lost.length === 0) return [];
  return [element('ul', {}, ...gained.map(item('New:')), ...lost.map(item('Gone:')))];
}

function item(word: string): (finding: RenderedFinding) => HTMLElement {
  return ({ level, message, advice, isOnlyAlone = false }) =>
    element(
      'li',
      { class: `finding ${level}` },
      markOf(level),
      element(
        'span',
        {},
        element('b', {}, isOnlyAlone ? 'Only if changed alone:' : word),
        ` ${message} `,
        element('span', { class: 'aside' }, advice),
      ),
    );
}
