import type { ChangedSetting, HeldValue } from '../../server/src/sheet/compare/changed-settings';
import type { ChangeAlone, Comparison, SideLabel } from '../../server/src/sheet/compare/compare';
import type { FindingChanges } from '../../server/src/sheet/compare/finding-changes';
import type { FigureReading, MovedFigure } from '../../server/src/sheet/compare/moved-figures';
import { totalsText } from '../../server/src/sheet/compare/totals-text';
import type { Matter } from '../../server/src/sheet/compare/what-matters';
import { jobStages } from '../../server/src/sheet/job-stages';
import { element } from '../page/element';
import { findingChangeList } from '../page/finding-changes';
import { turnWords, waiting } from '../page/words';
import type { FromCompare, ToCompare } from './messages';

import '../page/page.css';
import '../page/wide.css';
import '../page/document.css';
import './compare.css';

declare function acquireVsCodeApi(): { postMessage(message: FromCompare): void };

const api = acquireVsCodeApi();
const page = document.getElementById('compare');
const live = document.getElementById('live');

function show(message: ToCompare): void {
  if (page === null) return;
  if (message.kind === 'nothing') page.replaceChildren(heading(), element('p', {}, message.why));
  else page.replaceChildren(...content(message.comparison));
}

function heading(): HTMLElement {
  return element('h1', {}, 'Compare');
}

function content(comparison: Comparison): readonly HTMLElement[] {
  const { before, after, settings, members, totals, matters, caution } = comparison;
  const count = settings.length + members.length;
  const answer = totalsText(count, totals);
  if (live !== null && live.textContent !== answer) live.textContent = answer;
  return [
    heading(),
    element('p', {}, label(before), element('span', { class: 'aside' }, ' → '), label(after)),
    element('p', {}, answer),
    ...jobStages.flatMap(([stage, question]) => stageSection(stage, question, comparison)),
    ...(matters.length === 0 ? [] : [section('What matters most', ...matterParts(matters))]),
    ...rest(comparison),
    element('p', { class: 'aside' }, caution),
  ];
}

function matterParts(matters: readonly Matter[]): readonly HTMLElement[] {
  const found = (kind: 'gained' | 'lost') =>
    matters.flatMap((matter) => (matter.kind === kind ? [matter.finding] : []));
  const figures = matters.flatMap((matter) => (matter.kind === 'moved' ? [matter.figure] : []));
  return [
    ...findingChangeList({ gained: found('gained'), lost: found('lost') }),
    ...(figures.length === 0 ? [] : [movedTable('Figures that matter most', figures)]),
  ];
}

/** Whether a part of the rest is open: a comparison that follows its scripts is drawn anew again and again. */
const unfolded = new Set<string>();

/** What is there for whoever wants it. */
function rest({ alone, figures, findings }: Comparison): readonly HTMLElement[] {
  return [
    ...(isQuiet(findings) ? [] : [folded('Other findings', findingChangeList(findings))]),
    ...(figures.length === 0
      ? []
      : [
          folded(`Other figures that move: ${figures.length}`, [
            movedTable('Other figures that move', figures),
          ]),
        ]),
    ...(alone.length === 0 ? [] : [folded('What each change does alone', alone.map(aloneRow))]),
  ];
}

function folded(title: string, inside: readonly HTMLElement[]): HTMLElement {
  const key = title.split(':', 1)[0] ?? title;
  const remember = (event: Event) => {
    const { currentTarget } = event;
    if (!(currentTarget instanceof HTMLDetailsElement)) return;
    if (currentTarget.open) unfolded.add(key);
    else unfolded.delete(key);
  };
  const part = element('details', { ontoggle: remember }, element('summary', {}, title), ...inside);
  part.open = unfolded.has(key);
  return part;
}

function aloneRow({ paths, effect }: ChangeAlone): HTMLElement {
  const names = paths.join(', ');
  const nothing = effect.moved.length === 0 && isQuiet(effect);
  return element(
    'div',
    { class: 'setting alone' },
    element('h3', {}, element('code', {}, names)),
    ...(effect.moved.length === 0
      ? []
      : [movedTable(`What ${names} moves by itself`, effect.moved, effect.leftOut)]),
    ...findingChangeList(effect),
    nothing ? element('p', { class: 'aside' }, 'Moves no figure and no finding by itself.') : null,
  );
}

function label({ name, file, pack }: SideLabel): HTMLElement {
  const where = pack === null ? file : `${file}, pack ${pack}`;
  return element('span', {}, element('b', {}, name), element('span', { class: 'aside' }, ` ${where}`));
}

function section(title: string, ...inside: readonly HTMLElement[]): HTMLElement {
  return element('section', {}, element('h2', {}, title), ...inside);
}

function stageSection(
  stage: string,
  question: string,
  { settings, members }: Comparison,
): readonly HTMLElement[] {
  const rows = [
    ...settings.filter((one) => one.stage === stage).map(settingRow),
    ...members
      .filter((one) => one.stage === stage)
      .map(({ path, title, is, target }) =>
        element(
          'div',
          { class: 'setting' },
          element('h3', {}, title, ' ', element('code', {}, path)),
          element('p', { class: 'values' }, leading(target, `${path}: go to its line`, is)),
        ),
      ),
  ];
  return rows.length === 0 ? [] : [section(question, ...rows)];
}

function settingRow({ path, title, before, after, change }: ChangedSetting): HTMLElement {
  return element(
    'div',
    { class: 'setting' },
    element('h3', {}, title, ' ', element('code', {}, path)),
    element(
      'p',
      { class: 'values' },
      held(before),
      element('span', { class: 'aside' }, ' → '),
      held(after),
      change === null ? null : element('span', { class: 'aside' }, ` ${change}`),
    ),
  );
}

function held({ path, text, isAssumed, target }: HeldValue): HTMLElement {
  const words = text === null ? 'not set' : isAssumed ? `${text}, not set` : text;
  return leading(target, `${path} ${words}: go to its line`, words);
}

/** Leads to a line, where there is one. */
function leading(target: HeldValue['target'], about: string, text: string): HTMLElement {
  if (target === null) return element('span', {}, text);
  const go = () => api.postMessage({ kind: 'go', target });
  return element('button', { type: 'button', class: 'value', 'aria-label': about, onclick: go }, text);
}

function movedTable(title: string, figures: readonly MovedFigure[], leftOut = 0): HTMLElement {
  const heads = ['Figure', 'Before', 'After', ''].map((text) => element('th', { scope: 'col' }, text));
  const more = element('td', { colspan: '4', class: 'aside' }, `and ${leftOut} more figures`);
  return element(
    'table',
    {},
    element('caption', { class: 'said' }, title),
    element('thead', {}, element('tr', {}, ...heads)),
    element('tbody', {}, ...figures.flatMap(movedRows), ...(leftOut === 0 ? [] : [element('tr', {}, more)])),
  );
}

function movedRows({ id, title, packs, turn }: MovedFigure): readonly HTMLElement[] {
  return packs.map(({ before, after }) =>
    element(
      'tr',
      { 'data-figure': id },
      element('th', { scope: 'row' }, title),
      reading(before),
      reading(after),
      element('td', { class: turn ?? '' }, turnWords(turn)),
    ),
  );
}

function reading(read: FigureReading | null): HTMLElement {
  if (read === null) return element('td', { class: 'aside' }, 'not known');
  const span = read.span === null ? null : element('small', {}, ` ${read.span}`);
  return element('td', {}, read.text, span);
}

function isQuiet({ gained, lost }: FindingChanges): boolean {
  return gained.length + lost.length === 0;
}

window.addEventListener('message', (event: MessageEvent<ToCompare>) => show(event.data));
page?.replaceChildren(heading(), waiting());
api.postMessage({ kind: 'ready' });
