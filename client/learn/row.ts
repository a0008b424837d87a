import type { MeaningChoice, MeaningRow } from '../../server/src/lsp/learn-protocol';
import { capitalised } from '../../server/src/units/capitals';
import { element } from '../page/element';
import type { Board } from './board';
import { labelledButton } from './fields';
import { type FamilyWay, together, waysOf } from './offers';

/** What can be done with a row. */
export interface RowActions {
  take(rows: readonly MeaningRow[]): void;
  takeWay(rows: readonly MeaningRow[], way: FamilyWay): void;
  takeRole(rows: readonly MeaningRow[]): void;
  takeBack(row: MeaningRow): void;
  choose(row: MeaningRow): void;
}

/** A setting of the board with what it may mean, or with what was said. */
export function rowElement(board: Board, row: MeaningRow, isInFamily: boolean, act: RowActions): HTMLElement {
  const offer = board.offer(row);
  const reason = board.reason(row.key);
  return element(
    'div',
    { class: `row${row.said === null ? '' : ' done'}`, role: 'row', tabindex: '-1', 'data-key': row.key },
    setting(row),
    element(
      'div',
      { class: 'meaning', role: 'gridcell' },
      ...(row.said !== null
        ? said(row)
        : row.port !== null
          ? mayBeOfPort(row.port)
          : offered(row, offer, isInFamily, act)),
      reason === null
        ? null
        : element(
            'div',
            { class: board.waits(row.key) ? 'aside waits' : 'reason' },
            `${board.waits(row.key) ? 'Waits for its other part' : 'Not taken'}: ${reason}.`,
          ),
    ),
    element('div', { class: 'actions', role: 'gridcell' }, ...buttons(row, offer, act)),
  );
}

function setting({ group, name, value, beside }: MeaningRow): HTMLElement {
  return element(
    'div',
    { class: 'setting', role: 'gridcell' },
    element(
      'div',
      { class: 'name' },
      group === '' ? null : element('span', { class: 'group' }, `${group} / `),
      name,
      ' ',
      element('b', { class: 'held' }, value === '' ? '–' : value),
    ),
    beside === '' ? null : element('div', { class: 'aside' }, beside),
  );
}

function said({ value, said: now }: MeaningRow): readonly HTMLElement[] {
  if (now === null) return [];
  const { means, title, isRole, quantity, usual, lies, row } = now;
  if (row.port !== undefined && quantity === null)
    return [
      element('div', {}, title),
      element('div', { class: 'aside' }, `Nobody has said what ${value} is: it stays the board’s own.`),
    ];
  return [
    element('div', {}, title, ' ', element('code', {}, means)),
    isRole
      ? element('div', { class: 'aside' }, 'Plays this part; its scale is unknown, so it serves no figure.')
      : becomes(value, quantity, usual, lies),
  ];
}

function mayBeOfPort(port: string): readonly HTMLElement[] {
  return [element('div', { class: 'aside' }, `It may say what ${port} is for: choose which.`)];
}

function offered(
  row: MeaningRow,
  offer: MeaningChoice | null,
  isInFamily: boolean,
  act: RowActions,
): readonly HTMLElement[] {
  if (offer === null) return [element('div', { class: 'aside' }, 'The board’s own.')];
  const { means, part, title, quantity, usual, lies, counted, reason } = offer;
  const name = element('code', {}, part === null ? means : `${means}, ${part}`);
  const why = element(
    'div',
    { class: 'aside' },
    [reason, sentence(counted)].filter((one) => one !== '').join(' '),
  );
  if (offer.row !== null)
    return [element('div', {}, title, ' ', name), becomes(row.value, quantity, usual, lies), why];
  const ways = isInFamily ? [] : [wayButtons([row], [offer], act)];
  return [element('div', {}, title, ' ', name), ...ways, why];
}

/** The end of a sentence as one of its own. */
export function sentence(text: string): string {
  return text === '' ? '' : `${capitalised(text)}.`;
}

/** `47 becomes 0.47 %/(deg/s), usual 0.2 to 0.8`. */
export function becomes(
  value: string,
  quantity: string | null,
  usual: string | null,
  lies: MeaningChoice['lies'],
): HTMLElement {
  if (quantity === null) return element('div', { class: 'becomes' }, `${value} can’t be read so.`);
  if (quantity === value) return element('div', { class: 'becomes' }, 'stays ', element('b', {}, value));
  const range = usual === null ? '' : `, usual ${usual}`;
  return element(
    'div',
    { class: `becomes ${lies ?? ''}` },
    value,
    ' becomes ',
    element('b', {}, quantity),
    lies === 'possible' ? `, not usual: usual is ${usual ?? ''}` : range,
  );
}

/** Each way in which all of these could be counted: a press says it of all of them. */
export function wayButtons(
  rows: readonly MeaningRow[],
  choices: readonly MeaningChoice[],
  act: RowActions,
): HTMLElement {
  const ways = waysOf(choices);
  const made = ways.map((way, index) =>
    element(
      'button',
      { type: 'button', class: `way${way.isUsual ? '' : ' unusual'}`, onclick: () => act.takeWay(rows, way) },
      element('kbd', {}, String(index + 1)),
      ` ${way.title}: `,
      element('b', {}, together(way.ways.map(({ quantity }) => quantity))),
      way.isUsual ? '' : ', not usual',
    ),
  );
  const usual = choices[0]?.usual ?? null;
  const takesRole = choices.every((choice) => choice.takesRole);
  return element(
    'div',
    { class: 'ways' },
    ...made,
    takesRole
      ? element(
          'button',
          { type: 'button', class: 'way unknown', onclick: () => act.takeRole(rows) },
          element('kbd', {}, '0'),
          ' scale unknown',
        )
      : null,
    usual === null || ways.length === 0 ? null : element('span', { class: 'aside' }, `usual ${usual}`),
  );
}

function buttons(row: MeaningRow, offer: MeaningChoice | null, act: RowActions): readonly HTMLElement[] {
  const { key, said: now, isShared, port } = row;
  if (isShared) return [element('span', { class: 'aside' }, 'said of all members')];
  const choose = labelledButton('Choose…', `Choose what ${key} means`, () => act.choose(row));
  if (now !== null) return [labelledButton('Take Back', `Take back ${key}`, () => act.takeBack(row)), choose];
  if (offer === null || offer.row === null || port !== null) return [choose];
  const take = labelledButton('Take', `Take ${offer.means} for ${key}`, () => act.take([row]));
  take.classList.add('take');
  return [take, choose];
}
