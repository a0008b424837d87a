import '../page/page.css';
import '../page/drawing.css';
import './sheet.css';
import './by-pack.css';
import './wiring.css';
import './drawings.css';
import type { BuildSheet, SheetPart } from '../../server/src/sheet/build-sheet';
import type { Plot } from '../../server/src/sheet/plots/plot';
import { element } from '../page/element';
import { onMessage, readState, restoreState, send, writeState } from './extension-side';
import { fold } from './fold';
import { header } from './header';
import { linksAreFor } from './link';
import { lightUp } from './lit';
import type { EmptyState, ToSheet } from './messages';
import { partContent } from './parts';
import { flightsShown } from './parts/measured-beside';
import { recordingsSaid } from './parts/recordings';
import { clear, keepOnly, place } from './place';
import { drawPlot } from './plots';
import { offerSurer, showSurer, surerPlace } from './surer';
import { showTrial, trialPlace } from './try';

const page = document.getElementById('sheet');
const live = document.getElementById('live');
let said = '';

/** The whole page from one answer of the extension. */
function show(message: Extract<ToSheet, { kind: 'sheet' | 'nothing' }>): void {
  if (page === null) return;
  if (message.kind === 'nothing') {
    clear(page, emptyPage(message.state));
    offerSurer(false);
    return;
  }
  const { sheet, uri } = message;
  linksAreFor(uri);
  const { name, about, readAs, packs, packInView, parts, plots } = sheet;
  keepOnly(page, ['header', ...parts.map(({ id }) => id)]);
  place(page, 'header', [name, about, readAs, packs, packInView], () => header(sheet));
  for (const part of parts) {
    const own = plots.filter((plot) => plot.part === part.id);
    place(page, part.id, [part, own, uri], () => foldedPart(part, own));
  }
  flightsShown(parts.find((part) => part.id === 'learned'));
  offerSurer(sheet.readAs === 'whole');
  announce(sheet);
}

function foldedPart(part: SheetPart, plots: readonly Plot[]): HTMLElement {
  return fold(
    { id: part.id, name: 'part', isOpenAtFirst: true },
    [element('h2', {}, part.title), element('span', { class: 'answer' }, part.answer)],
    [...plots.map(drawPlot), ...partContent(part)],
  );
}

function emptyPage({ text, ways }: EmptyState): HTMLElement {
  const buttons = ways.map(({ command, title }, index) =>
    element(
      'button',
      {
        type: 'button',
        class: index === 0 ? 'main' : false,
        onclick: () => send({ kind: 'way', command }),
      },
      title,
    ),
  );
  return element('div', { class: 'empty' }, element('p', {}, text), ...buttons);
}

function say(words: string): void {
  if (live !== null) live.textContent = words;
}

/** Tells a screen reader how many findings there are, only when that changed. */
function announce({ name, parts }: BuildSheet): void {
  const text = parts.find(({ id }) => id === 'can-it-fly')?.answer ?? '';
  if (text === said) return;
  said = text;
  say(`${name}: ${text}`);
}

page?.before(trialPlace());
page?.after(surerPlace());

let isRestored = false;

/** Scrolls to where the pilot was, once there is something to scroll. */
function restoreScroll(): void {
  if (isRestored) return;
  isRestored = true;
  window.scrollTo(0, readState().scroll);
}

onMessage((message) => {
  switch (message.kind) {
    case 'state':
      return restoreState(message.state);
    case 'trial':
      return showTrial(message.shown, say);
    case 'narrowing':
      return showSurer(message.narrowing);
    case 'recordings':
      return recordingsSaid(message.said);
    case 'cursor':
      return lightUp(message.place);
    case 'nothing':
      return show(message);
    case 'sheet':
      show(message);
      lightUp();
      restoreScroll();
  }
});
window.addEventListener('scrollend', () => writeState({ scroll: window.scrollY }));
send({ kind: 'ready' });
