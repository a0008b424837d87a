import type { CanItFly, SheetFinding } from '../../../server/src/sheet/can-it-fly';
import { element } from '../../page/element';
import { markOf } from '../../page/mark';
import { fold } from '../fold';
import { lineLink } from '../link';

export function canItFly({
  unchecked,
  findings,
  leftOut,
  assumed,
  replaced,
  caution,
}: CanItFly): readonly HTMLElement[] {
  const more = `${leftOut} more are in the problems list.`;
  return [
    ...(unchecked === null ? [] : [element('p', {}, unchecked)]),
    ...(findings.length === 0 ? [] : [element('ul', { class: 'findings' }, ...findings.map(row))]),
    ...(leftOut === 0 ? [] : [element('p', { class: 'aside' }, more)]),
    ...(assumed.length === 0 ? [] : [assumptions(assumed)]),
    ...replaced.map((text) => element('p', {}, text)),
    element('p', { class: 'aside' }, caution),
  ];
}

function row({ level, message, advice, accepted, target }: SheetFinding): HTMLElement {
  const mark = accepted === null ? level : 'accepted';
  return element(
    'li',
    { class: `finding ${mark}` },
    markOf(mark),
    element('span', {}, lineLink(target), message, ...afterword({ level, advice, accepted })),
  );
}

/** What to do about it, where something must be done; why it was accepted. */
function afterword({
  level,
  advice,
  accepted,
}: Pick<SheetFinding, 'level' | 'advice' | 'accepted'>): readonly (string | HTMLElement)[] {
  if (accepted !== null) return [' ', element('i', {}, `Accepted: ${accepted}`)];
  if (level !== 'must-fix' && level !== 'risk') return [];
  return [' ', element('span', { class: 'advice' }, advice)];
}

function assumptions(assumed: readonly string[]): HTMLElement {
  const count = assumed.length === 1 ? 'one value' : `${assumed.length} values`;
  return fold(
    { id: 'assumed', name: 'more', isOpenAtFirst: false },
    [element('span', {}, `Assumed: ${count} that the script doesn’t set`)],
    [element('ul', {}, ...assumed.map((text) => element('li', {}, text)))],
  );
}
