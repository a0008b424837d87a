import type { FindResult, FoundProposal } from '../../server/src/lsp/values-protocol';
import type { ProposalReading, ProposedSetting } from '../../server/src/sheet/find/answer';
import { readingClauses } from '../../server/src/sheet/find/hold-text';
import { measuredSentence } from '../../server/src/sheet/find/measured-text';
import { element, scroller } from '../page/element';
import { findingChangeList } from '../page/finding-changes';
import { turnWords } from '../page/words';
import { writeButtons } from '../page/write-buttons';
import { type FindForm, findForm } from './form';
import type { FromFind, ToFind } from './messages';
import { tradeOff } from './trade-off';

import '../page/page.css';
import '../page/wide.css';
import '../page/document.css';
import './find.css';

declare function acquireVsCodeApi(): { postMessage(message: FromFind): void };

const api = acquireVsCodeApi();
const page = document.getElementById('find');
const live = document.getElementById('live');
const result = element('div', { id: 'result' });
let form: FindForm | null = null;

function received(message: ToFind): void {
  if (message.kind === 'script') {
    form = findForm(message.packs, { find: start, stop: () => api.postMessage({ kind: 'stop' }) });
    page?.replaceChildren(
      element('h1', {}, `Find a value: ${message.name}`),
      element('p', { class: 'aside' }, 'What to set: between least delay and least noise.'),
      form.element,
      result,
    );
    return;
  }
  form?.setWorking(false);
  form?.showFaults(message.kind === 'faults' ? message.faults : []);
  const { inside, said } = shownFor(message);
  show(inside, said);
}

function shownFor(message: Exclude<ToFind, { kind: 'script' }>): {
  readonly inside: readonly HTMLElement[];
  readonly said?: string;
} {
  switch (message.kind) {
    case 'faults':
      return { inside: [] };
    case 'nothing':
      return { inside: [element('p', {}, message.why)], said: message.why };
    case 'written':
      return { inside: [element('p', {}, written(message.title))], said: written(message.title) };
    case 'found':
      return { inside: resultOf(message.found), said: message.found.answer };
  }
}

function written(title: string): string {
  return `“${title}” stands in the script now, as one edit that can be undone. A test hover decides.`;
}

function start(): void {
  if (form === null) return;
  form.setWorking(true);
  form.showFaults([]);
  show([element('p', { class: 'aside' }, 'Looking for values…')], 'Looking for values');
  api.postMessage({ kind: 'find', chosen: form.chosen() });
}

function show(inside: readonly HTMLElement[], said?: string): void {
  result.replaceChildren(...inside);
  if (live !== null && said !== undefined) live.textContent = said;
}

function resultOf(found: FindResult): readonly HTMLElement[] {
  const { answer, unfiltered, tones, measured, inTheWay, ways, proposals, heldBack, caution } = found;
  return [
    element('h2', {}, 'What was found'),
    element('p', { class: 'answer' }, answer),
    ...(unfiltered === null ? [] : [element('p', {}, unfiltered.text)]),
    ...(measured === null ? [] : [element('p', { class: 'measured' }, measured)]),
    ...(tones === null ? [] : [element('p', {}, tones)]),
    ...listed('What stands in the way', inTheWay),
    ...(ways.length === 0 ? [] : [writeButtons(ways, fillIn)]),
    ...(proposals.length === 0 ? [] : [tradeOff(found)]),
    ...proposals.map((one) => proposalSection(one, found.nowReadings)),
    ...listed('Not moved further', heldBack),
    element('p', { class: 'aside' }, caution),
  ];
}

/** What is written is filled in by the pilot, and then looked for again. */
function fillIn(paths: readonly string[]): void {
  api.postMessage({ kind: 'write-lines', paths });
}

function listed(title: string, sentences: readonly string[]): readonly HTMLElement[] {
  if (sentences.length === 0) return [];
  return [
    element('h2', {}, title),
    element('ul', { class: 'sentences' }, ...sentences.map((text) => element('li', {}, text))),
  ];
}

function proposalSection(proposal: FoundProposal, now: readonly ProposalReading[]): HTMLElement {
  const { id, title, settings, readings, moved, edits } = proposal;
  const write = element(
    'button',
    { type: 'button', class: 'main', onclick: () => api.postMessage({ kind: 'write', id }) },
    `Write “${title}”`,
  );
  write.disabled = edits.length === 0;
  return element(
    'section',
    { 'data-proposal': id, 'aria-label': title },
    element('h2', {}, title),
    settings.length === 0
      ? element('p', { class: 'aside' }, 'The script stands so already.')
      : element('ul', { class: 'sentences' }, ...settings.map(settingRow)),
    ...readings.flatMap((one) => [element('p', {}, readingText(one)), ...measuredRow(now, one)]),
    ...findingChangeList(proposal),
    element(
      'details',
      {},
      element('summary', {}, `Every figure that moves: ${moved.length}`),
      scroller(`Figures that move with ${title}`, movedTable(proposal)),
    ),
    element('div', { class: 'ways' }, write),
  );
}

function settingRow({ path, packs, before, after }: ProposedSetting): HTMLElement {
  const where = packs.length === 0 ? '' : ` with ${packs.join(', ')}`;
  return element(
    'li',
    {},
    element('code', {}, path),
    `${where}: ${before ?? 'not set'} → `,
    element('b', {}, after),
  );
}

function readingText(reading: ProposalReading): string {
  const clauses = readingClauses(reading, () => 'the loudest tone');
  return `${reading.pack === null ? '' : `With pack ${reading.pack}: `}${clauses.join(', ')}.`;
}

/** What is left of the measured noise, now and with the proposal. */
function measuredRow(now: readonly ProposalReading[], then: ProposalReading): readonly HTMLElement[] {
  const sentence = measuredSentence(
    now.find(({ pack }) => pack === then.pack),
    then,
  );
  return sentence === null ? [] : [element('p', { class: 'measured' }, sentence)];
}

function movedTable({ moved }: FoundProposal): HTMLElement {
  const packs = moved[0]?.packs.map(({ pack }) => pack) ?? [];
  const heads = ['Figure', ...packs.map((pack) => pack ?? 'now → then'), ''];
  return element(
    'table',
    {},
    element('thead', {}, element('tr', {}, ...heads.map((text) => element('th', { scope: 'col' }, text)))),
    element(
      'tbody',
      {},
      ...moved.map(({ title, packs: each, turn }) =>
        element(
          'tr',
          {},
          element('th', { scope: 'row' }, title),
          ...each.map(({ before, after }) =>
            element('td', {}, `${before?.text ?? 'not known'} → ${after?.text ?? 'not known'}`),
          ),
          element('td', { class: turn ?? '' }, turnWords(turn)),
        ),
      ),
    ),
  );
}

window.addEventListener('message', (event: MessageEvent<ToFind>) => received(event.data));
api.postMessage({ kind: 'ready' });
