import '../page/page.css';
import '../page/drawing.css';
import './sheet.css';
import './by-pack.css';
import './wiring.css';
import './drawings.css';
import type { SheetPart } from '../../server/src/sheet/build-sheet';
import { element } from '../page/element';
import { onMessage, readState, restoreState, send, writeState } from './extension-side';
import { fold } from './fold';
import { header } from './header';
import { drawAnew, hold, keepingFocus, kept } from './kept';
import { linksAreFor } from './link';
import { lightUp } from './lit';
import type { EmptyState, SheetPiece, ToSheet } from './messages';
import { partContent } from './parts';
import { flightsShown } from './parts/measured-beside';
import { recordingsSaid } from './parts/recordings';
import { drawPlot } from './plots';
import { offerSurer, showSurer, surerPlace } from './surer';
import { showTrial, trialPlace } from './try';

const page = document.getElementById('sheet');
const live = document.getElementById('live');
let said = '';
/** The script of the sheet. */
let shown = '';

/** The pieces of the sheet as they were sent last. */
const pieces = new Map<SheetPart['id'], { readonly json: string; readonly piece: SheetPiece }>();

/** The whole page from one answer of the extension. */
function show(message: Extract<ToSheet, { kind: 'sheet' | 'nothing' }>): void {
  if (page === null) return;
  if (message.kind === 'nothing') {
    page.replaceChildren(emptyPage(message.state));
    offerSurer(false);
    return;
  }
  const { sheet, uri } = message;
  const { name, about, readAs, packs, packInView } = sheet;
  if (uri !== shown) drawAnew();
  shown = uri;
  linksAreFor(uri);
  for (const { id, json } of sheet.pieces)
    if (json !== null) pieces.set(id, { json, piece: JSON.parse(json) as SheetPiece });
  const sent = sheet.pieces.flatMap(({ id }) => pieces.get(id) ?? []);
  keepingFocus(page, () => {
    const head = JSON.stringify([name, about, readAs, packs, packInView]);
    hold(page, [
      kept('header', head, () => header(sheet)),
      ...sent.map(({ json, piece }) => kept(piece.part.id, json, () => foldedPart(piece))),
    ]);
  });
  const parts = sent.map(({ piece }) => piece.part);
  flightsShown(parts.find((part) => part.id === 'learned'));
  offerSurer(readAs === 'whole');
  announce(name, parts.find(({ id }) => id === 'can-it-fly')?.answer ?? '');
}

function foldedPart({ part, plots }: SheetPiece): HTMLElement {
  return fold(
    { id: part.id, name: 'part', isOpenAtFirst: true },
    [element('h2', {}, part.title), element('span', { class: 'answer' }, part.answer)],
    [
      ...plots.map((plot) => kept(`plot ${plot.id}`, JSON.stringify(plot), () => drawPlot(plot))),
      ...partContent(part),
    ],
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
function announce(name: string, text: string): void {
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
