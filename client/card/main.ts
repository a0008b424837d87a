import type { BenchCard, CardPart } from '../../server/src/sheet/bench-card/card';
import {
  type CardKept,
  nothingTaken,
  withReading,
  withTick,
  withWritten,
} from '../../server/src/sheet/bench-card/taken';
import { element } from '../page/element';
import { waiting } from '../page/words';
import { CardFields } from './fields';
import type { FromCard, ToCard } from './messages';
import { CardProgress } from './progress';
import { CardSteps } from './steps';

import '../page/page.css';
import '../page/document.css';
import './card.css';

declare function acquireVsCodeApi(): { postMessage(message: FromCard): void };

const api = acquireVsCodeApi();
const page = document.getElementById('card');
const live = document.getElementById('live');
let taken: CardKept = nothingTaken;
/** The script of the card. */
let home = '';
/** What is drawn, so that a card that did not change keeps the pilot's cursor where it is. */
let drawn = '';
/** What was there before all was cleared, for whoever did not mean it. */
let cleared: CardKept | null = null;

const fields = new CardFields(
  (id, value) => remember(withReading(taken, id, value)),
  (id, reading) => api.postMessage({ kind: 'check', id, reading }),
);
const progress = new CardProgress();
const steps = new CardSteps(
  fields,
  (step, isDone) => {
    remember(withTick(taken, step, isDone));
    progress.show(taken);
    steps.show(taken);
  },
  (target) => api.postMessage({ kind: 'go', target }),
);

function show(message: ToCard): void {
  switch (message.kind) {
    case 'nothing':
      drawn = '';
      page?.replaceChildren(element('h1', {}, 'Bench card'), element('p', {}, message.why));
      return;
    case 'faults':
      fields.refuse(message.faults);
      say(message.faults[0]?.message ?? '');
      return;
    case 'checked':
      fields.showFault(message.id, message.typed, message.fault);
      return;
    case 'taken':
      taken = message.taken;
      progress.show(taken);
      steps.show(taken);
      fields.follow(taken);
      return;
    case 'kept':
      remember(withWritten(taken, message.readings));
      say('The readings are in the script.');
      return;
    case 'card': {
      const text = JSON.stringify(message.card);
      if (text === drawn) return;
      drawn = text;
      taken = message.taken;
      home = message.uri;
      draw(message.card);
    }
  }
}

function draw(card: BenchCard): void {
  const { activeElement } = document;
  fields.begin(taken);
  steps.begin(home);
  page?.replaceChildren(...content(card));
  progress.show(taken);
  steps.show(taken);
  if (activeElement !== null && activeElement.id !== '') document.getElementById(activeElement.id)?.focus();
}

function content(card: BenchCard): readonly HTMLElement[] {
  const { name, about, cautions, note, unchecked, first, accepted, replaced, parts } = card;
  const keep = () => {
    const made = button('Keep the Readings', () => api.postMessage({ kind: 'keep' }));
    made.className = 'main';
    return made;
  };
  return [
    element('h1', {}, `Bench card: ${name}`),
    element('p', { class: 'aside' }, about.join(' · ')),
    ...(unchecked === null ? [] : [element('p', {}, element('b', {}, unchecked))]),
    progress.made(card),
    progress.lostTicks(),
    element('ul', { class: 'cautions' }, ...cautions.map((caution) => element('li', {}, caution))),
    element('p', { class: 'aside' }, note),
    element(
      'p',
      { class: 'buttons' },
      button('Save to Print…', () => api.postMessage({ kind: 'save' })),
      keep(),
      clearing(card),
    ),
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
    ...parts.map(partSection),
    // Once more where the last reading is written: the way up is long on a phone.
    element('p', { class: 'buttons' }, keep()),
  ];
}

/** Clears the card for another day; the same press brings back what was there. */
function clearing(card: BenchCard): HTMLButtonElement {
  const words = () => (cleared === null ? 'Clear the Card' : 'Bring It Back');
  const made = button(words(), () => {
    const before = cleared;
    cleared = before === null ? taken : null;
    remember(before ?? nothingTaken);
    draw(card);
    say(before === null ? 'The card is cleared.' : 'What was on the card is back.');
  });
  made.id = 'clear';
  return made;
}

function partSection({ stage, title, steps: own, signed, noticed }: CardPart): HTMLElement {
  const isFlown = stage === 'hover';
  return element(
    'section',
    isFlown ? { class: 'apart' } : {},
    element('h2', {}, title),
    isFlown ? progress.beforePropellers() : null,
    element('ol', {}, ...own.map((step) => steps.made(step))),
    element(
      'div',
      { class: 'readings signed' },
      ...[...signed, noticed].map((reading) => fields.made(reading, title)),
    ),
  );
}

function button(title: string, onclick: () => void): HTMLButtonElement {
  return element('button', { type: 'button', onclick }, title);
}

function named(title: string, items: readonly (readonly (string | HTMLElement)[])[]): readonly HTMLElement[] {
  if (items.length === 0) return [];
  const list = element('ul', { class: 'plain' }, ...items.map((parts) => element('li', {}, ...parts)));
  return [element('section', {}, element('h2', {}, title), list)];
}

/** What a pilot takes down is kept with every change: a phone may fall asleep at any time. */
function remember(now: CardKept): void {
  api.postMessage({ kind: 'taken', before: taken, taken: now });
  taken = now;
  progress.said('');
}

function say(text: string): void {
  if (live !== null) live.textContent = text;
  progress.said(text);
}

window.addEventListener('message', (event: MessageEvent<ToCard>) => show(event.data));
page?.replaceChildren(waiting());
api.postMessage({ kind: 'ready' });
