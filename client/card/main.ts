import type {
  BenchCard,
  CardFigure,
  CardPart,
  CardReading,
  CardStep,
  WithPack,
} from '../../server/src/sheet/bench-card/card';
import { askedLine, assumedLine, expectedWords, onlyLine } from '../../server/src/sheet/bench-card/words';
import { element } from '../page/element';
import { waiting } from '../page/words';
import { type CardState, emptyCard, type FromCard, type ToCard } from './messages';

import '../page/page.css';
import '../page/document.css';
import './card.css';

declare function acquireVsCodeApi(): { postMessage(message: FromCard): void };

const api = acquireVsCodeApi();
const page = document.getElementById('card');
const live = document.getElementById('live');
let state: CardState = emptyCard;
/** What is drawn, so that a card that did not change keeps the pilot's cursor where it is. */
let drawn = '';

function show(message: ToCard): void {
  if (page === null) return;
  switch (message.kind) {
    case 'nothing':
      drawn = '';
      page.replaceChildren(element('h1', {}, 'Bench card'), element('p', {}, message.why));
      return;
    case 'faults':
      showFaults(message.faults);
      return;
    case 'card': {
      const text = JSON.stringify(message.card);
      if (text === drawn) return;
      drawn = text;
      state = message.state;
      page.replaceChildren(...content(message.card));
      count(message.card);
    }
  }
}

function content(card: BenchCard): readonly HTMLElement[] {
  const { name, about, cautions, note, unchecked, first, accepted, replaced, parts } = card;
  const save = button('Save to Print…', { kind: 'save' });
  const keep = button('Keep the Readings', { kind: 'keep' });
  keep.className = 'main';
  return [
    element('h1', {}, `Bench card: ${name}`),
    element('p', { class: 'aside' }, about.join(' · ')),
    ...(unchecked === null ? [] : [element('p', {}, element('b', {}, unchecked))]),
    element('ul', { class: 'cautions' }, ...cautions.map((caution) => element('li', {}, caution))),
    element('p', { class: 'aside' }, note),
    element('p', { class: 'buttons' }, save, keep, element('span', { id: 'count', class: 'aside' })),
    ...named(
      'Not yet: mend this first',
      first.map(({ message, advice }) => [element('b', {}, message), ` ${advice}`]),
    ),
    ...named(
      'Accepted risks',
      accepted.map(({ message, reason }) => [message, element('i', {}, ` Accepted: ${reason}`)]),
    ),
    ...named(
      'Replaced by the workspace',
      replaced.map((text) => [text]),
    ),
    ...parts.map((part) => partSection(part, card)),
  ];
}

function partSection({ title, steps, signed, noticed }: CardPart, card: BenchCard): HTMLElement {
  return element(
    'section',
    {},
    element('h2', {}, title),
    element('ol', {}, ...steps.map((step) => stepItem(step, card))),
    element(
      'div',
      { class: 'readings signed' },
      ...[...signed, noticed].map((reading) => field(reading, title)),
    ),
  );
}

function button(title: string, message: FromCard): HTMLButtonElement {
  return element('button', { type: 'button', onclick: () => api.postMessage(message) }, title);
}

function named(title: string, items: readonly (readonly (string | HTMLElement)[])[]): readonly HTMLElement[] {
  if (items.length === 0) return [];
  const list = element('ul', { class: 'plain' }, ...items.map((parts) => element('li', {}, ...parts)));
  return [element('section', {}, element('h2', {}, title), list)];
}

function stepItem(step: CardStep, card: BenchCard): HTMLElement {
  const { id, title, only, do: what, see, expected, readings, withPacks } = step;
  const { asked, unknown, assumed, source, target } = step;
  const box = element('input', {
    type: 'checkbox',
    id: elementId(`tick ${id}`),
    checked: state.ticked.includes(id),
    onchange: () => {
      const others = state.ticked.filter((one) => one !== id);
      remember({ ticked: box.checked ? [...others, id] : others });
      count(card);
    },
  });
  const line =
    target === null
      ? null
      : element(
          'button',
          { type: 'button', class: 'link', onclick: () => api.postMessage({ kind: 'go', target }) },
          `line ${target.line + 1}`,
        );
  return element(
    'li',
    {},
    box,
    element(
      'div',
      {},
      line,
      element('label', { for: elementId(`tick ${id}`) }, title),
      only === null ? null : element('p', {}, element('b', {}, onlyLine(only))),
      element('p', {}, what),
      element('p', {}, element('b', {}, 'See: '), see),
      ...expected.map(expectedFigure),
      fields(readings),
      withPacks.length === 0 ? null : element('div', { class: 'packs' }, ...withPacks.map(packRow)),
      asked.length === 0 ? null : element('p', { class: 'aside' }, askedLine(asked)),
      fields(asked),
      ...unknown.map((text) => element('p', { class: 'aside' }, text)),
      assumed.length === 0 ? null : element('p', { class: 'aside' }, assumedLine(assumed)),
      source === null ? null : element('p', { class: 'aside' }, `From: ${source}`),
    ),
  );
}

function expectedFigure(figure: CardFigure): HTMLElement {
  const { about, text, between } = expectedWords(figure);
  const aside = between === '' ? null : element('span', { class: 'aside' }, between);
  return element('p', {}, `${about} `, element('b', {}, text), aside);
}

function packRow({ pack, expected, readings }: WithPack): HTMLElement {
  return element(
    'div',
    { role: 'group', 'aria-label': pack },
    element('b', {}, pack),
    element('div', {}, ...expected.map(expectedFigure), fields(readings, pack)),
  );
}

function fields(readings: readonly CardReading[], under?: string): HTMLElement | null {
  if (readings.length === 0) return null;
  return element('div', { class: 'readings' }, ...readings.map((reading) => field(reading, under)));
}

/** `under`: what tells it from fields with the same words, for those who hear its name alone. */
function field({ id, words, unit, isWords }: CardReading, under?: string): HTMLElement {
  const input = element('input', {
    type: 'text',
    id: elementId(id),
    value: state.readings.find((reading) => reading.id === id)?.value ?? '',
    'aria-label': under === undefined ? words : `${words}, ${under}`,
    'aria-describedby': elementId(`${id} fault`),
    oninput: () => {
      const others = state.readings.filter((reading) => reading.id !== id);
      remember({ readings: input.value === '' ? others : [...others, { id, value: input.value }] });
      setFault(id, '');
    },
  });
  return element(
    'span',
    { class: isWords ? 'reading words' : 'reading' },
    element('label', { for: elementId(id) }, words),
    input,
    unit === '' ? null : element('span', { class: 'aside' }, unit),
    element('span', { id: elementId(`${id} fault`), class: 'fault' }),
  );
}

/** An element is described by a list of ids with blanks between them, so that none may stand in one. */
function elementId(id: string): string {
  return id.replaceAll(' ', '/');
}

function showFaults(faults: readonly { readonly id: string; readonly message: string }[]): void {
  for (const { id, message } of faults) setFault(id, message);
  const [first] = faults;
  if (first === undefined) return;
  document.getElementById(elementId(first.id))?.focus();
  if (live !== null) live.textContent = first.message;
}

function setFault(id: string, message: string): void {
  const place = document.getElementById(elementId(`${id} fault`));
  if (place !== null) place.textContent = message;
  document.getElementById(elementId(id))?.setAttribute('aria-invalid', String(message !== ''));
}

function remember(change: Partial<CardState>): void {
  state = { ...state, ...change };
  api.postMessage({ kind: 'state', state });
}

function count({ parts }: BenchCard): void {
  const ids = parts.flatMap(({ steps }) => steps.map(({ id }) => id));
  const done = ids.filter((id) => state.ticked.includes(id)).length;
  const place = document.getElementById('count');
  if (place !== null) place.textContent = `${done} of ${ids.length} steps done`;
}

window.addEventListener('message', (event: MessageEvent<ToCard>) => show(event.data));
page?.replaceChildren(waiting());
api.postMessage({ kind: 'ready' });
