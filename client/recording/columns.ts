import type {
  ChannelOffered,
  ColumnShown,
  ColumnsToConfirm,
  LayoutColumn,
} from '../../server/src/lsp/recording-protocol';
import { element } from '../page/element';
import { post } from './extension-side';
import type { SaidColumns } from './messages';

/** Counts from idle to full: these have no unit. */
const isOutput = (channel: string) => /^(?:motor\.|throttle$)/.test(channel);
/** What has a sign that may be the other one. */
const isTurn = (channel: string) => /^(?:unfiltered-)?gyro\.|^wanted\./.test(channel);

interface ColumnRow {
  readonly element: HTMLElement;
  /** A field that should hold a number and does not; null where all do. */
  readonly fault: () => HTMLInputElement | null;
  readonly said: () => LayoutColumn;
}

/** Each column with what it is taken for, why, and how its numbers count: a pilot confirms it once for each logger. */
export function columnsPart({
  columns,
  choices,
  remarks,
  isFoundAgain,
}: ColumnsToConfirm): readonly HTMLElement[] {
  const rows = columns.map((column, index) => columnRow(column, index, choices));
  const rate = element('input', { type: 'text', id: 'rate', class: 'number', placeholder: '1000 Hz' });
  const said = (): SaidColumns => ({
    rate: rate.value.trim() === '' ? null : rate.value.trim(),
    columns: rows.map((row) => row.said()),
  });
  const confirm = (isKept: boolean) => () => {
    const faulty = rows.map((row) => row.fault()).find((fault) => fault !== null);
    if (faulty == null) post({ kind: 'columns', said: said(), isKept });
    else {
      showColumnsFault(`“${faulty.value}” is no number: one such as 0.01 or 1000 is wanted.`);
      faulty.focus();
    }
  };
  const presses = () =>
    element(
      'p',
      { class: 'ways' },
      isFoundAgain
        ? element('button', { type: 'button', class: 'main', onclick: confirm(true) }, 'Confirm and Keep')
        : null,
      element('button', { type: 'button', onclick: confirm(false) }, 'Read It So, Once'),
    );
  const asked = columns.filter(({ asks }) => asks.length > 0).length;
  return [
    element(
      'p',
      {},
      'What does each column hold? Look through it once: ',
      isFoundAgain
        ? 'files of the same logger are then known by their headings.'
        : 'this file has no headings, so that nothing can be kept for the next one.',
    ),
    ...(remarks.length === 0
      ? []
      : [element('ul', { class: 'sentences' }, ...remarks.map((text) => element('li', {}, text)))]),
    ...(asked === 0 ? [] : [element('p', {}, element('b', {}, askedText(asked)))]),
    presses(),
    element('p', { id: 'columns-fault', class: 'refusal', role: 'alert' }),
    element('div', { class: 'columns' }, ...rows.map((row) => row.element)),
    element(
      'p',
      {},
      element('label', { for: 'rate' }, 'Rows a second, where no column holds the time: '),
      rate,
    ),
    presses(),
  ];
}

function askedText(count: number): string {
  return count === 1 ? 'One column asks something.' : `${count} columns ask something.`;
}

/** What was said can't be had so. */
export function showColumnsFault(why: string): void {
  const place = document.getElementById('columns-fault');
  if (place === null) return;
  place.textContent = why;
  place.scrollIntoView({ block: 'nearest' });
}

function columnRow(column: ColumnShown, index: number, choices: readonly ChannelOffered[]): ColumnRow {
  const { heading } = column.means;
  const id = (what: string) => `column-${index}-${what}`;
  const channel = element('select', {
    id: id('channel'),
    onchange: () => counted.show({ heading, channel: channel.value }),
  });
  channel.append(element('option', { value: '' }, 'left out'));
  for (const one of choices) channel.append(element('option', { value: one.channel }, one.title));
  const counted = countedFields(index, choices, () => channel.value);
  const take = (means: LayoutColumn) => {
    channel.value = means.channel ?? '';
    counted.show(means);
  };
  // What is asked about keeps the column out until it is answered.
  const isAsked = column.asks.some(({ keepsOut }) => keepsOut);
  take(isAsked ? { heading } : column.means);
  return {
    fault: () => (channel.value === '' ? null : counted.fault()),
    said: () => ({ heading, ...(channel.value === '' ? {} : { channel: channel.value, ...counted.said() }) }),
    element: element(
      'fieldset',
      { class: isAsked ? 'column asked' : 'column' },
      element('legend', {}, element('code', {}, heading)),
      element('div', { class: 'fields' }, labelled(id('channel'), 'Holds', channel), counted.element),
      element('p', { class: 'aside' }, column.why),
      ...column.asks.map(({ sentence, choices: answers }) =>
        element(
          'p',
          { class: 'question' },
          element('b', {}, sentence),
          ' ',
          ...answers.map(({ title, means }) =>
            element('button', { type: 'button', onclick: () => take(means) }, title),
          ),
        ),
      ),
    ),
  };
}

/** Unit, size and sign of a column's numbers; of an output where it is idle and where full. */
function countedFields(index: number, choices: readonly ChannelOffered[], channel: () => string) {
  const id = (what: string) => `column-${index}-${what}`;
  const unit = element('select', { id: id('unit') });
  const number = (what: string) =>
    element('input', { type: 'text', inputmode: 'decimal', id: id(what), class: 'number' });
  const [scale, zero, full] = [number('scale'), number('zero'), number('full')];
  const reversed = element('input', { type: 'checkbox', id: id('reversed') });
  const place = element('div', { class: 'fields' });
  const show = (means: LayoutColumn) => {
    const units = choices.find((one) => one.channel === channel())?.units ?? [];
    unit.replaceChildren(...units.map((one) => element('option', { value: one }, one)));
    if (means.unit !== undefined && !units.includes(means.unit) && means.unit !== '')
      unit.append(element('option', { value: means.unit }, means.unit));
    if (means.unit !== undefined) unit.value = means.unit;
    scale.value = String(means.scale ?? 1);
    zero.value = String(means.zero ?? 0);
    full.value = String(means.full ?? 1);
    reversed.checked = means.reversed ?? false;
    place.replaceChildren(...fieldsFor(channel()));
  };
  const fieldsFor = (name: string): readonly HTMLElement[] => {
    if (name === '') return [];
    if (isOutput(name)) return [labelled(zero.id, 'At idle', zero), labelled(full.id, 'At full', full)];
    return [
      labelled(unit.id, 'Unit', unit),
      labelled(scale.id, 'One count is so many of it', scale),
      ...(isTurn(name) ? [labelled(reversed.id, 'Less is right, nose up or clockwise', reversed)] : []),
    ];
  };
  const numberIn = (input: HTMLInputElement) =>
    Number(input.value.trim().replace(',', '.').replace('−', '-'));
  const said = (): Partial<LayoutColumn> => {
    if (isOutput(channel())) return { zero: numberIn(zero), full: numberIn(full) };
    return {
      unit: unit.value,
      ...(numberIn(scale) === 1 ? {} : { scale: numberIn(scale) }),
      ...(numberIn(zero) === 0 ? {} : { zero: numberIn(zero) }),
      ...(isTurn(channel()) && reversed.checked ? { reversed: true } : {}),
    };
  };
  const fault = () => {
    const shown = isOutput(channel()) ? [zero, full] : [scale];
    for (const input of shown) input.setAttribute('aria-invalid', String(Number.isNaN(numberIn(input))));
    return shown.find((input) => Number.isNaN(numberIn(input))) ?? null;
  };
  return { element: place, show, said, fault };
}

function labelled(id: string, text: string, field: HTMLElement): HTMLElement {
  return element('span', { class: 'field' }, element('label', { for: id }, text), field);
}
