import type { PartHeld } from '../../server/src/lsp/learn-protocol';
import { element } from '../page/element';

type OnChange = () => void;

/** A text with a name for screen readers; `hint` shows what it may look like. */
export function textField(label: string, value: string, changed: OnChange, hint = ''): HTMLInputElement {
  return element('input', { type: 'text', value, 'aria-label': label, placeholder: hint, onchange: changed });
}

/** A field under its name. */
export function labelled(label: string, field: HTMLElement): HTMLElement {
  return element('label', { class: 'field' }, element('span', {}, label), field);
}

/** A button that says more to screen readers than it shows. */
export function labelledButton(text: string, label: string, onclick: () => void): HTMLElement {
  return element('button', { type: 'button', 'aria-label': label, onclick }, text);
}

/** A number under its name; empty: nothing is said. */
export function numberField(name: string, label: string, changed: OnChange, value = ''): HTMLElement {
  const field = element('input', {
    type: 'text',
    name,
    value,
    class: 'number',
    inputmode: 'decimal',
    onchange: changed,
  });
  return labelled(label, field);
}

/** Texts to choose from, each with what it says. */
export type Choices = readonly (readonly [value: string, text: string])[];

/** One of a few, under its name. `name`: by which a form finds it; false where none does. */
export function choiceField(
  name: string | false,
  label: string,
  choices: Choices,
  changed: (value: string) => void,
  value = '',
): HTMLElement {
  const field = element(
    'select',
    { name },
    ...choices.map(([one, text]) => element('option', { value: one, selected: one === value }, text)),
  );
  field.addEventListener('change', () => changed(field.value));
  return labelled(label, field);
}

/** The same field, by which a form finds it. */
export function named(name: string, field: HTMLInputElement): HTMLInputElement {
  field.name = name;
  return field;
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
  readonly word: string;
}): readonly PartHeld[] | null {
  const { part, cell, at, entry, word } = said;
  if (cell !== '') return [{ cell: Number(cell) }];
  if (at !== '') return [{ at }];
  switch (part) {
    case 'entry':
      return entry === '' ? null : [{ entry: Number(entry) }];
    case 'numberOf':
      return [{ numberOf: word }];
    case 'has':
      return [{ has: word }];
    case 'low':
    case 'high':
    case 'row':
    case 'column':
      return [part];
    default:
      return null;
  }
}
