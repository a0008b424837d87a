import type { CanItFly, SheetFinding } from '../../../server/src/sheet/can-it-fly';
import { element } from '../element';
import { lineLink } from '../link';

/** Level in words beside its colour, so that nothing hangs on colour alone. */
const marks = { 'must-fix': 'mend', risk: 'risk', note: 'note', tidy: 'tidy' } as const;

export function canItFly({ findings, leftOut, assumed, caution }: CanItFly): readonly HTMLElement[] {
  const list = element('ul', { class: 'findings' }, ...findings.map(row));
  const more =
    leftOut === 0 ? [] : [element('p', { class: 'aside' }, `${leftOut} more are in the problems list.`)];
  const assumptions =
    assumed.length === 0 ? [] : [element('p', { class: 'aside' }, `Assumed: ${assumed.join('; ')}.`)];
  return [
    ...(findings.length === 0 ? [] : [list]),
    ...more,
    ...assumptions,
    element('p', { class: 'aside' }, caution),
  ];
}

function row({ level, message, advice, accepted, target }: SheetFinding): HTMLElement {
  const state = accepted === null ? level : 'accepted';
  const word = accepted === null ? marks[level] : 'accepted';
  return element(
    'li',
    { class: `finding ${state}` },
    element('span', { class: 'level' }, word),
    element(
      'span',
      {},
      message,
      ' ',
      element('span', { class: 'advice' }, accepted === null ? advice : `Accepted: ${accepted}`),
    ),
    lineLink(target, message),
  );
}
