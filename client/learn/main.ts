import '../page/page.css';
import '../page/wide.css';
import './learn.css';
import type { MeaningRow } from '../../server/src/lsp/learn-protocol';
import { element } from '../page/element';
import { Board, type SaidOfSetting } from './board';
import { Editor } from './editor';
import { onMessage, send } from './extension-side';
import { HardwareForm } from './hardware';
import { listenToKeys, makeCurrent, neighbour } from './keys';
import { leftLines } from './lines';
import { MeasuredCounts } from './measured';
import type { ToLearn } from './messages';
import { type FamilyWay, sections, sorted, waysOf } from './offers';
import type { RowActions } from './row';
import { FamilySection } from './section';

type Meanings = Extract<ToLearn, { kind: 'meanings' }>;

const page = document.getElementById('learn') ?? document.body;
const live = document.getElementById('live');
const counts = element('p', { class: 'counts' });
const undo = element('button', { type: 'button', id: 'undo', disabled: true }, 'Undo');
const filter = element('input', {
  type: 'search',
  id: 'filter',
  'aria-label': 'Filter',
  placeholder: 'filter',
});
const leftOnly = element('input', { type: 'checkbox', id: 'left-only' });
const list = element('div', { id: 'rows' });

let board: Board | null = null;
let measured: MeasuredCounts | null = null;
let shown: readonly FamilySection[] = [];
/** The row whose choice is open. */
let editing: string | null = null;

function announce(text: string): void {
  if (live !== null) live.textContent = text;
}

function show({ meanings, sayable, place, key }: Meanings): void {
  const made = new Board(meanings, changed);
  board = made;
  const lines = leftLines(meanings, announce);
  measured = new MeasuredCounts(made);
  page.replaceChildren(
    element('h1', {}, `What the settings of ${meanings.title} mean`),
    element(
      'p',
      { class: 'aside' },
      'Every press is kept at once in ',
      element(
        'button',
        { type: 'button', class: 'value place', onclick: () => send({ kind: 'open' }) },
        place,
      ),
      '. Only what you press is taken, and you may stop at any time.',
    ),
    element(
      'div',
      { class: 'bar' },
      filter,
      element('label', { class: 'check' }, leftOnly, ' only what is left'),
      undo,
      counts,
      element(
        'span',
        { class: 'aside keys' },
        ...[
          ['↑ ↓', 'go'],
          ['Enter', 'takes'],
          ['→', 'opens the choice'],
          ['1–3', 'a way to count'],
          ['Backspace', 'undoes'],
        ].flatMap(([pressed = '', does = '']) => [element('kbd', {}, pressed), ` ${does} `]),
      ),
    ),
    measured.element,
    list,
    ...(lines === null ? [] : [lines]),
    new HardwareForm(meanings).element,
    element(
      'datalist',
      { id: 'sayable' },
      ...sayable.map(({ means, title }) => element('option', { value: means }, title)),
    ),
    element('datalist', { id: 'ports' }, ...meanings.ports.map((port) => element('option', { value: port }))),
  );
  draw(made);
  if (key !== null) go(key);
}

/** All rows anew, each where it stands by what is known of it now. */
function draw(of: Board): void {
  for (const section of shown) section.dispose();
  const wanted = filter.value.trim().toLowerCase();
  const rows = of
    .rows()
    .filter((row) => matches(of, row, wanted) && !(leftOnly.checked && row.said !== null));
  const families = sorted(rows, (row) => of.offer(row));
  shown = sections.flatMap((name) => {
    const held = families.get(name) ?? [];
    return held.length === 0 ? [] : [new FamilySection(of, name, held, actions(of))];
  });
  list.replaceChildren(...shown.map((section) => section.element));
  const first = list.querySelector<HTMLElement>('.row');
  if (first !== null) makeCurrent(page, first);
  count(of);
}

function matches(of: Board, row: MeaningRow, wanted: string): boolean {
  if (wanted === '') return true;
  const offer = of.offer(row);
  const texts = [row.key, row.value, offer?.means, offer?.title, row.said?.means, row.said?.title];
  return texts.some((text) => text?.toLowerCase().includes(wanted) === true);
}

function count(of: Board): void {
  const said = of.saidCount();
  const all = of.rows().length;
  counts.textContent = `${said} of ${all} said; ${all - said} stay the board’s own so far: that is fine.`;
  undo.disabled = of.lastPress === null;
  undo.title = of.lastPress === null ? '' : `Takes back: ${of.lastPress}`;
}

function changed(keys: readonly string[], told: string): void {
  if (board === null) return;
  const focused = document.activeElement?.closest<HTMLElement>('.row') ?? null;
  const [key, family] = [focused?.dataset.key, focused?.dataset.family];
  const all = new Set(keys);
  measured?.changed();
  for (const section of shown) section.redraw(all);
  count(board);
  announce(`${told}. ${counts.textContent ?? ''}`);
  if (focused?.isConnected === false) {
    const again = rowWith('data-key', key) ?? rowWith('data-family', family);
    if (again === null) return;
    makeCurrent(page, again);
    again.focus();
  }
}

function rowWith(name: string, value: string | undefined): HTMLElement | null {
  return value === undefined ? null : list.querySelector<HTMLElement>(`.row[${name}="${CSS.escape(value)}"]`);
}

function actions(of: Board): RowActions {
  return {
    take: (rows) => void of.take(rows),
    takeWay: (rows, way) => void of.say(inWay(rows, way)),
    takeRole: (rows) =>
      void of.say(
        rows.flatMap((row) => {
          const offer = of.offer(row);
          return offer === null ? [] : [{ key: row.key, row: { role: offer.means } }];
        }),
      ),
    takeBack: (row) => void of.say([{ key: row.key, row: {} }]),
    choose,
  };
}

function inWay(rows: readonly MeaningRow[], { ways }: FamilyWay): readonly SaidOfSetting[] {
  return rows.flatMap(({ key }, index) => {
    const way = ways[index];
    return way === undefined ? [] : [{ key, row: way.row }];
  });
}

/** Opens the choice of a row in its place; the one that was open closes. */
function choose({ key }: MeaningRow): void {
  const wasOpen = editing;
  close();
  const at = rowWith('data-key', key);
  const row = board?.row(key);
  if (board === null || at === null || row === undefined || wasOpen === key) return;
  editing = key;
  const back = () => {
    close();
    rowWith('data-key', key)?.focus();
  };
  const editor = new Editor(board, row, back, announce);
  const cell = element('div', { class: 'editor-cell', role: 'gridcell' }, editor.element);
  at.append(cell);
  editor.focus();
}

function close(): void {
  editing = null;
  list.querySelector('.editor-cell')?.remove();
}

function go(key: string): void {
  for (const section of shown) section.drawTo(key);
  const row = rowWith('data-key', key);
  if (row === null) return;
  makeCurrent(page, row);
  row.focus();
  row.scrollIntoView({ block: 'center' });
}

/** The rows that a press on a row is about: itself, or its family. */
function about(of: Board, at: HTMLElement): readonly MeaningRow[] {
  const keys =
    at.dataset.key === undefined
      ? [...(at.parentElement?.querySelectorAll<HTMLElement>('.row[data-key]') ?? [])].map(
          (row) => row.dataset.key ?? '',
        )
      : [at.dataset.key];
  return keys.flatMap((key) => of.row(key) ?? []).filter(({ said }) => said === null);
}

function withBoard(at: HTMLElement, press: (of: Board, rows: readonly MeaningRow[]) => void): void {
  if (board === null) return;
  const next = at.dataset.key === undefined ? lastOf(at) : at;
  press(board, about(board, at));
  neighbour(next, 1)?.focus();
}

/** A family's last row: behind it the next family begins. */
function lastOf(head: HTMLElement): HTMLElement {
  return [...(head.parentElement?.querySelectorAll<HTMLElement>('.row') ?? [])].at(-1) ?? head;
}

listenToKeys(page, {
  take: (at) => withBoard(at, (of, rows) => void of.take(rows)),
  choose: (at) => {
    const row = board?.row(at.dataset.key ?? '');
    if (row !== undefined) choose(row);
  },
  way: (at, index) => {
    if (board === null) return;
    const of = board;
    const rows = about(of, at).filter((row) => of.offer(row)?.row === null);
    const way = waysOf(rows.flatMap((row) => of.offer(row) ?? []))[index];
    if (way !== undefined) withBoard(at, () => actions(of).takeWay(rows, way));
  },
  unknownScale: (at) =>
    withBoard(at, (of, rows) =>
      actions(of).takeRole(rows.filter((row) => of.offer(row)?.takesRole === true)),
    ),
  undo: () => void board?.undo(),
  more: (at) => shown.find((section) => section.element.contains(at))?.more() === true,
});

filter.addEventListener('input', () => board !== null && draw(board));
leftOnly.addEventListener('change', () => board !== null && draw(board));
undo.addEventListener('click', () => void board?.undo());
onMessage((message) => {
  if (message.kind === 'meanings') show(message);
  else if (message.kind === 'go') go(message.key);
  else page.replaceChildren(element('h1', {}, 'Say what settings mean'), element('p', {}, message.message));
});
page.replaceChildren(element('p', { class: 'aside' }, 'The settings are being looked at…'));
send({ kind: 'ready' });
