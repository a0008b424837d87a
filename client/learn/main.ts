import '../page/page.css';
import '../page/wide.css';
import './learn.css';
import type { LearnedRow } from '../../server/src/lsp/protocol';
import { element } from '../page/element';
import type { FromLearn, ToLearn } from './messages';

interface EditorApi {
  postMessage(message: FromLearn): void;
  getState(): unknown;
  setState(state: unknown): void;
}

declare function acquireVsCodeApi(): EditorApi;

const api = acquireVsCodeApi();
const page = document.getElementById('learn');
const live = document.getElementById('live');

/** What was accepted, by setting; kept through hiding and reload. */
const accepted = new Map<string, string>(readState());

function readState(): readonly (readonly [string, string])[] {
  const state = api.getState();
  return Array.isArray(state) ? (state as [string, string][]) : [];
}

const another = 'another';
const counts = element('p', { class: 'counts', role: 'status' });

function show({ learned: { summary, line, rows }, parameters }: ToLearn): void {
  if (page === null) return;
  const list = element(
    'datalist',
    { id: 'parameters' },
    ...parameters.map((name) => element('option', { value: name })),
  );
  page.replaceChildren(
    element('h1', {}, 'Make a board profile'),
    element('p', {}, summary),
    ...(line === null ? [] : [making(), counts, table(rows), list]),
  );
  tell(rows);
}

function table(rows: readonly LearnedRow[]): HTMLElement {
  const heads = ['Setting of the board', 'Holds', 'May stand for', 'Why', ''].map((text) =>
    element('th', { scope: 'col' }, text),
  );
  const body = rows.map((row) => tableRow(row, rows));
  return element(
    'table',
    {},
    element('thead', {}, element('tr', {}, ...heads)),
    element('tbody', {}, ...body),
  );
}

function tableRow(row: LearnedRow, rows: readonly LearnedRow[]): HTMLTableRowElement {
  const { key, value, proposals } = row;
  const reason = element('td', { class: 'why' });
  const choice = element('select', { 'aria-label': `What ${key} stands for` });
  for (const { parameter, title, meaning } of proposals)
    choice.append(element('option', { value: parameter, title }, `${parameter} = ${meaning}`));
  choice.append(element('option', { value: another }, 'another parameter…'));
  const other = element('input', {
    type: 'text',
    list: 'parameters',
    'aria-label': `Another parameter for ${key}`,
    placeholder: 'gyro.filter.1.cutoff',
  });
  const button = element('button', { type: 'button' });
  const held = accepted.get(key);
  if (held !== undefined) {
    choice.value = proposals.some(({ parameter }) => parameter === held) ? held : another;
    other.value = held;
  }
  const line = element(
    'tr',
    {},
    element('th', { scope: 'row' }, key),
    element('td', { class: 'value' }, value),
    element('td', {}, choice, other),
    reason,
    element('td', {}, button),
  );
  const chosen = () => (choice.value === another ? other.value.trim() : choice.value);
  const refresh = () => {
    const isAccepted = accepted.has(key);
    other.hidden = choice.value !== another;
    const proposal = proposals.find(({ parameter }) => parameter === choice.value);
    reason.textContent = proposal === undefined ? 'as you say' : `${proposal.title}: ${proposal.reason}`;
    button.textContent = isAccepted ? 'Take Back' : 'Accept';
    button.setAttribute('aria-label', `${isAccepted ? 'Take back' : 'Accept'} for ${key}`);
    button.disabled = !isAccepted && chosen() === '';
    choice.disabled = isAccepted;
    other.disabled = isAccepted;
    line.className = isAccepted ? 'accepted' : '';
    tell(rows);
  };
  button.addEventListener('click', () => {
    if (accepted.has(key)) accepted.delete(key);
    else accepted.set(key, chosen());
    api.setState([...accepted]);
    refresh();
    focusNext(line);
  });
  choice.addEventListener('change', refresh);
  other.addEventListener('input', refresh);
  refresh();
  return line;
}

/** After each answer the next question: the pilot goes down the table with one key. */
function focusNext(line: HTMLTableRowElement): void {
  const next = line.nextElementSibling?.querySelector('button');
  (next ?? line.querySelector('button'))?.focus();
}

function tell(rows: readonly LearnedRow[]): void {
  const count = rows.filter(({ key }) => accepted.has(key)).length;
  const text = `${count} accepted; ${rows.length - count} stay settings of the board’s own.`;
  counts.textContent = text;
  if (live !== null) live.textContent = text;
}

function making(): HTMLElement {
  const name = element('input', {
    type: 'text',
    id: 'name',
    value: 'my-board',
    'aria-describedby': 'name-form',
  });
  const form = element(
    'form',
    {
      onsubmit: (event) => {
        event.preventDefault();
        api.postMessage({ kind: 'make', name: name.value.trim(), confirmed: [...accepted] });
      },
    },
    element('label', { for: 'name' }, 'Name of the board'),
    name,
    element('button', { type: 'submit', class: 'main' }, 'Write the Profile'),
    element(
      'p',
      { id: 'name-form', class: 'aside' },
      'Small letters, with hyphens between words. Nothing that you have not accepted is taken; what the board has in hardware is for you to fill in.',
    ),
  );
  return form;
}

window.addEventListener('message', (event: MessageEvent<ToLearn>) => show(event.data));
api.postMessage({ kind: 'ready' });
