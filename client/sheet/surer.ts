import type { Narrowing } from '../../server/src/sheet/narrowing/narrowing';
import { element } from '../page/element';
import { send } from './extension-side';
import { fold } from './fold';
import { wayButtons } from './ways';

const place = element('div', {});
const answer = element('div', { 'aria-live': 'polite' });

/** Where the page says what to measure; empty while it shows no whole craft. */
export function surerPlace(): HTMLElement {
  return place;
}

/** A press that has every measurement tried; what was told of an older sheet goes. */
export function offerSurer(isWhole: boolean): void {
  answer.replaceChildren();
  if (!isWhole) {
    place.replaceChildren();
    return;
  }
  if (place.firstChild !== null) return;
  const ask = element('button', { type: 'button', onclick: asked }, 'Try Each Measurement');
  const about = 'Each is tried on this craft, as if it had come out as is likely.';
  place.replaceChildren(
    fold(
      { id: 'surer', name: 'part', isOpenAtFirst: true },
      [element('h2', {}, 'What would make it surer?')],
      [element('p', { class: 'ways' }, ask), element('p', { class: 'aside' }, about), answer],
    ),
  );
}

function asked(): void {
  answer.replaceChildren(element('p', {}, 'Trying …'));
  send({ kind: 'narrow' });
}

export function showSurer(narrowing: readonly Narrowing[]): void {
  const none = 'Nothing that you can measure makes a span much smaller.';
  answer.replaceChildren(
    narrowing.length === 0
      ? element('p', {}, none)
      : element('ul', { class: 'unknowns' }, ...narrowing.map(measurement)),
  );
}

function measurement({ text, how, path }: Narrowing): HTMLElement {
  const isNoted = path.startsWith('flight.');
  const press = isNoted
    ? element(
        'p',
        { class: 'ways' },
        element('button', { type: 'button', onclick: () => send({ kind: 'note-flight' }) }, 'Note a Flight'),
      )
    : wayButtons([{ title: `Write ${path}`, paths: [path] }]);
  return element('li', {}, text, element('p', { class: 'aside' }, how), press);
}
