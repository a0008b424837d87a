import type { LearnedPart, SheetFlight } from '../../../server/src/sheet/learned';
import { element } from '../../page/element';
import { send } from '../extension-side';
import { lineLink } from '../link';
import { recordingRow } from './recordings';

/** The flights, newest first, each with what was changed before it. */
export function learned({ flights, caution }: LearnedPart): readonly HTMLElement[] {
  const note = element(
    'button',
    { type: 'button', onclick: () => send({ kind: 'note-flight' }) },
    'Note a Flight',
  );
  const none = 'No flight is noted yet. A line after each landing shows what a change did.';
  return [
    flights.length === 0
      ? element('p', { class: 'aside' }, none)
      : element('ul', { class: 'flights' }, ...flights.map(flight)),
    element('p', {}, note),
    element('p', { class: 'aside' }, caution),
  ];
}

function flight(flown: SheetFlight): HTMLElement {
  const { name, date, pack, facts, measured, heat, note, changed, damage, recording, target } = flown;
  const title = [date ?? name.replaceAll('-', ' '), pack].filter((word) => word !== null).join(', ');
  return element(
    'li',
    {},
    target === null ? null : lineLink(target),
    element('b', {}, title),
    facts.length === 0 ? null : element('p', { class: 'aside' }, ...facts.flatMap(fact)),
    ...measured.flatMap((text) => noted('', text)),
    ...heat.flatMap((text) => noted('', text)),
    ...noted('', note),
    ...noted('Changed before it: ', changed),
    ...noted('Damage: ', damage),
    recording === null ? null : recordingRow(recording),
  );
}

/** A number stays with its unit where the line breaks. */
function fact({ title, text }: SheetFlight['facts'][number], index: number) {
  const whole = (value: string) => element('span', { class: 'whole' }, value);
  return [`${index === 0 ? '' : '\u00a0· '}${title} `, whole(text)];
}

function noted(about: string, text: string | null): readonly HTMLElement[] {
  return text === null
    ? []
    : [element('p', {}, about === '' ? null : element('span', { class: 'aside' }, about), text)];
}
