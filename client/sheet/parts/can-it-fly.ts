import type { CanItFly, SheetFinding } from '../../../server/src/sheet/can-it-fly';
import type { NotKnown } from '../../../server/src/sheet/not-known';
import { element } from '../../page/element';
import { markOf } from '../../page/mark';
import { fold } from '../fold';
import { lineLink } from '../link';
import { wayButtons } from '../ways';

export function canItFly({
  unchecked,
  notKnown,
  findings,
  leftOut,
  assumed,
  replaced,
  caution,
}: CanItFly): readonly HTMLElement[] {
  const more = `${leftOut} more are in the problems list.`;
  return [
    ...(unchecked === null ? [] : [element('p', {}, unchecked)]),
    ...unknowns(notKnown),
    ...(findings.length === 0 ? [] : [element('ul', { class: 'findings' }, ...findings.map(row))]),
    ...(leftOut === 0 ? [] : [element('p', { class: 'aside' }, more)]),
    ...(assumed.length === 0 ? [] : [assumptions(assumed)]),
    ...replaced.map((text) => element('p', {}, text)),
    element('p', { class: 'aside' }, caution),
  ];
}

/** So many sentences stand open. */
const mostOpen = 2;

/** What can't be judged: what stands open tells of most figures. */
function unknowns(notKnown: readonly NotKnown[]): readonly HTMLElement[] {
  const list = (some: readonly NotKnown[]) =>
    element(
      'ul',
      { class: 'unknowns' },
      ...some.map(({ text, ways }) => element('li', {}, text, wayButtons(ways))),
    );
  const [open, more] = [notKnown.slice(0, mostOpen), notKnown.slice(mostOpen)];
  const title = [
    element(
      'span',
      {},
      `${more.length === 1 ? '1 more thing is' : `${more.length} more things are`} not known yet`,
    ),
  ];
  return [
    ...(open.length === 0 ? [] : [list(open)]),
    ...(more.length === 0
      ? []
      : [fold({ id: 'unknown-more', name: 'more', isOpenAtFirst: false }, title, [list(more)])]),
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
