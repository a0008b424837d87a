import './sheet.css';
import type { BuildSheet, SheetPart } from '../../server/src/sheet/build-sheet';
import { element } from './element';
import { header } from './header';
import { onMessage, readState, send, writeState } from './host';
import { partContent } from './parts';

const page = document.getElementById('sheet');
const live = document.getElementById('live');
/** What each part shows now, so that only what changed is drawn again. */
const shown = new Map<string, string>();
let said = '';

/** The whole page from one answer of the extension. */
function show(sheet: BuildSheet | null): void {
  if (page === null) return;
  if (sheet === null) {
    shown.clear();
    page.replaceChildren(emptyPage());
    return;
  }
  if (shown.size === 0) page.replaceChildren();
  place('header', JSON.stringify([sheet.name, sheet.about, sheet.packs, sheet.packInView]), () =>
    header(sheet),
  );
  for (const part of sheet.parts) placePart(part);
  announce(sheet);
}

/** Puts a piece of the page in its place, unless it shows the same already. */
function place(id: string, content: string, make: () => HTMLElement): void {
  if (shown.get(id) === content) return;
  shown.set(id, content);
  const made = make();
  made.id = id;
  const old = document.getElementById(id);
  if (old === null) page?.append(made);
  else old.replaceWith(made);
}

function placePart(part: SheetPart): void {
  const content = JSON.stringify(part);
  if (shown.get(part.id) === content) return;
  const old = document.getElementById(part.id);
  const isOpen = old instanceof HTMLDetailsElement ? old.open : !readState().closed.includes(part.id);
  place(part.id, content, () =>
    element(
      'details',
      { class: 'part', open: isOpen, ontoggle: rememberFolds },
      element(
        'summary',
        {},
        element('h2', {}, part.title),
        element('span', { class: 'answer' }, part.answer),
      ),
      element('div', { class: 'inside' }, ...partContent(part)),
    ),
  );
}

function emptyPage(): HTMLElement {
  return element(
    'div',
    { class: 'empty' },
    element('p', {}, 'Open a craft script, and its build sheet shows here.'),
    element('button', { type: 'button', onclick: () => send({ kind: 'new-script' }) }, 'New Craft Script'),
  );
}

/** Tells a screen reader how many findings there are, only when that changed. */
function announce(sheet: BuildSheet): void {
  const text = sheet.parts.find((part) => part.id === 'can-it-fly')?.answer ?? '';
  if (live === null || text === said) return;
  said = text;
  live.textContent = `${sheet.name}: ${text}`;
}

function rememberFolds(): void {
  const closed = [...document.querySelectorAll<HTMLDetailsElement>('details.part')].filter(
    (part) => !part.open,
  );
  writeState({ ...readState(), closed: closed.map((part) => part.id) });
}

let isRestored = false;
onMessage(({ sheet }) => {
  show(sheet);
  if (isRestored || sheet === null) return;
  isRestored = true;
  window.scrollTo(0, readState().scroll);
});
window.addEventListener('scrollend', () => writeState({ ...readState(), scroll: window.scrollY }));
send({ kind: 'ready' });
