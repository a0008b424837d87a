import type { FigureReading, MovedFigure } from '../../server/src/sheet/compare/moved-figures';
import type { BySlider, Tryable } from '../../server/src/sheet/try-value';
import { withUnit } from '../../server/src/units/number-text';
import { element, packsTable, scroller } from '../page/element';
import { findingChangeList } from '../page/finding-changes';
import { turnWords } from '../page/words';
import { send } from './extension-side';
import { fold } from './fold';
import type { TrialShown } from './messages';

import './try.css';

/** A setting on trial. Its controls stay the same elements while values are tried, so that a slider can be dragged. */
interface TrialControls {
  readonly path: string;
  readonly element: HTMLElement;
  update(shown: TrialShown): void;
}

let trial: TrialControls | null = null;
const place = element('div', { id: 'try' });

/** Where the trial stands on the page; empty while nothing is tried. */
export function trialPlace(): HTMLElement {
  return place;
}

export function showTrial(shown: TrialShown | null, say: (words: string) => void): void {
  if (shown === null) {
    trial = null;
    place.replaceChildren();
    return;
  }
  if (trial?.path !== shown.tryable.path) {
    trial = trialOf(shown.tryable, shown.to, say);
    place.replaceChildren(trial.element);
    trial.element.querySelector<HTMLElement>('input, select')?.focus();
    place.scrollIntoView({ block: 'nearest' });
  }
  trial.update(shown);
}

function trialOf(
  { path, title, by, now }: Tryable,
  to: string | null,
  say: (words: string) => void,
): TrialControls {
  const held = element('span', { class: 'aside' });
  const results = element('div', {});
  const write = element(
    'button',
    { type: 'button', class: 'main', onclick: () => send({ kind: 'write' }) },
    'Write It',
  );
  const leave = element('button', { type: 'button', onclick: () => send({ kind: 'leave' }) }, 'Leave It');
  const controls =
    by.kind === 'slider' ? numberControls(by, title, to) : wordControls(by.choices, title, to ?? now);
  const made = element(
    'section',
    {
      'aria-label': `Try a value: ${title}`,
      onkeydown: (event) => {
        if ((event as KeyboardEvent).key === 'Escape') send({ kind: 'leave' });
      },
    },
    element('h2', {}, 'Try a value'),
    element('p', {}, title, ': ', held),
    ...controls,
    results,
    element('div', { class: 'choices' }, write, leave),
  );
  return {
    path,
    element: made,
    update: ({ tryable, to, tried }) => {
      held.textContent = heldWords(tryable);
      const isNew = tried !== null && to !== null && to !== tryable.now;
      write.disabled = !isNew || tried.refusal !== null;
      results.replaceChildren(...(isNew ? resultsOf(tried) : [hint()]));
      if (isNew) say(`${to}: ${tried.refusal ?? movesInWords(tried.moved)}`);
    },
  };
}

function heldWords({ now, isSet }: Tryable): string {
  if (now === null) return 'not set';
  return isSet ? `now ${now}` : `not set; ${now} is assumed`;
}

function hint(): HTMLElement {
  return element('p', { class: 'aside' }, 'What moves shows here. Nothing is written before you say so.');
}

function movesInWords(moved: readonly MovedFigure[]): string {
  const worse = moved.filter(({ turn }) => turn === 'worse').length;
  return `${moved.length} figures move, ${worse} for the worse`;
}

/** A slider over the usual range, and a field for any number in any unit. */
function numberControls(
  { unit, now, usual, range, step }: BySlider,
  title: string,
  to: string | null,
): readonly HTMLElement[] {
  const slider = element('input', { type: 'range', step: String(step), 'aria-label': `${title}, ${unit}` });
  const field = element('input', { type: 'text', class: 'number', 'aria-label': `${title}, with its unit` });
  const written = (value: string) => (unit === '' ? value : `${value} ${unit}`);
  const bounds = element('span', { class: 'aside' });
  const whole = element('button', { type: 'button', 'aria-pressed': 'false' }, 'Beyond the usual');
  const setBounds = ([low, high]: readonly [number, number]) => {
    slider.min = String(low);
    slider.max = String(high);
    bounds.textContent = `${low} to ${written(String(high))}`;
  };
  const isUsual = now === null || (now >= usual[0] && now <= usual[1]);
  const setWide = (isWide: boolean) => {
    whole.setAttribute('aria-pressed', String(isWide));
    setBounds(isWide ? range : usual);
  };
  setWide(!isUsual);
  slider.value = String(now ?? usual[0]);
  field.value = now === null ? '' : written(String(now));
  if (to !== null) {
    slider.value = String(Number.parseFloat(to));
    field.value = to;
  }
  slider.setAttribute('aria-valuetext', field.value);
  slider.addEventListener('input', () => {
    field.value = written(slider.value);
    slider.setAttribute('aria-valuetext', field.value);
    send({ kind: 'try-value', to: field.value });
  });
  field.addEventListener('input', () => {
    const number = Number.parseFloat(field.value);
    if (Number.isFinite(number)) slider.value = String(number);
    if (field.value.trim() !== '') send({ kind: 'try-value', to: withUnit(field.value.trim(), unit) });
  });
  whole.addEventListener('click', () => setWide(whole.getAttribute('aria-pressed') !== 'true'));
  return [
    element('div', { class: 'slider' }, slider, field),
    element('div', { class: 'choices' }, bounds, whole),
  ];
}

function wordControls(choices: readonly string[], title: string, now: string | null): readonly HTMLElement[] {
  const select = element('select', { 'aria-label': title });
  for (const choice of choices)
    select.append(element('option', { value: choice, selected: choice === now }, choice));
  select.addEventListener('change', () => send({ kind: 'try-value', to: select.value }));
  return [element('div', { class: 'slider' }, select)];
}

function resultsOf({
  refusal,
  moved,
  packs,
  gained,
  lost,
}: NonNullable<TrialShown['tried']>): readonly HTMLElement[] {
  if (refusal !== null) return [element('p', { class: 'refusal' }, refusal)];
  const quiet = moved.length + gained.length + lost.length === 0;
  return [
    ...findingChangeList({ gained, lost }),
    ...movedTables(moved, packs),
    ...(quiet ? [element('p', { class: 'aside' }, 'No figure and no finding moves.')] : []),
  ];
}

/** So many figures stand open: those that come first matter most. */
const inView = 10;

function movedTables(
  moved: readonly MovedFigure[],
  packs: readonly (string | null)[],
): readonly HTMLElement[] {
  if (moved.length === 0) return [];
  const more = moved.slice(inView);
  if (more.length === 0) return [movedTable('What moves', moved, packs)];
  const title = [element('span', {}, `More that moves: ${more.length}`)];
  return [
    movedTable('What moves', moved.slice(0, inView), packs),
    fold({ id: 'try-more', name: 'more', isOpenAtFirst: false }, title, [
      movedTable('More that moves', more, packs),
    ]),
  ];
}

function movedTable(
  label: string,
  moved: readonly MovedFigure[],
  packs: readonly (string | null)[],
): HTMLElement {
  const heads = packs.map((pack) => element('th', { scope: 'col' }, pack ?? 'now → then'));
  const table = packsTable(
    packs.length,
    element('thead', {}, element('tr', {}, element('td', {}), ...heads)),
    element('tbody', {}, ...moved.map(movedRow)),
  );
  return scroller(label, table);
}

function movedRow({ id, title, unit, packs, turn }: MovedFigure): HTMLElement {
  return element(
    'tr',
    { 'data-moved': id },
    element(
      'th',
      { scope: 'row' },
      title,
      turn === null ? null : element('small', { class: turn }, ` ${turnWords(turn)}`),
    ),
    ...packs.map(({ before, after }) => element('td', {}, ...change(before, after, unit))),
  );
}

/** "1.19 → 1.92 ms": the unit once. */
function change(
  before: FigureReading | null,
  after: FigureReading | null,
  unit: string,
): readonly (string | HTMLElement)[] {
  if (before?.text === after?.text) return [element('span', { class: 'aside' }, before?.text ?? '–')];
  const was = after === null ? before?.text : before?.text.replace(` ${unit}`, '');
  return [element('span', { class: 'aside' }, `${was ?? '–'} → `), after?.text ?? '–'];
}
