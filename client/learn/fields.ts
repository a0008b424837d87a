import { element } from '../page/element';

type Changed = () => void;

/** A text with a name for screen readers; `hint` shows what it may look like. */
export function textField(label: string, value: string, changed: Changed, hint = ''): HTMLInputElement {
  return element('input', { type: 'text', value, 'aria-label': label, placeholder: hint, onchange: changed });
}

/** A number under its name; empty: nothing is said. */
export function numberField(name: string, label: string, changed: Changed): HTMLElement {
  const field = element('input', {
    type: 'text',
    name,
    class: 'number',
    inputmode: 'decimal',
    onchange: changed,
  });
  return element('label', { class: 'field' }, element('span', {}, label), field);
}

/** One of a few, under its name. */
export function choiceField(
  name: string,
  label: string,
  choices: readonly (readonly [value: string, text: string])[],
  changed: Changed,
  value = '',
): HTMLElement {
  const field = element(
    'select',
    { name, onchange: changed },
    ...choices.map(([one, text]) => element('option', { value: one, selected: one === value }, text)),
  );
  return element('label', { class: 'field' }, element('span', {}, label), field);
}

/** `0.1`, `1/16`, with a comma as well; null for what is no number. */
export function ratioOf(text: string): number | null {
  const [over = '', under = '1'] = text.replace(',', '.').split('/');
  const ratio = over.trim() === '' || under.trim() === '' ? Number.NaN : Number(over) / Number(under);
  return Number.isFinite(ratio) ? ratio : null;
}

/** The part that fields say, as a profile has it; null: none. */
export function partsFrom(said: {
  readonly part: string;
  readonly cell: string;
  readonly at: string;
  readonly entry: string;
}): readonly unknown[] | null {
  const { part, cell, at, entry } = said;
  if (cell !== '') return [{ cell: Number(cell) }];
  if (at !== '') return [{ at }];
  if (entry !== '') return [{ entry: Number(entry) }];
  return part === '' ? null : [part];
}
