import type { Hardware } from '../../server/src/lsp/learn-protocol';
import { element } from '../page/element';
import { type Choices, choiceField, labelled, labelledButton } from './fields';
import { flagOf, said, some, without, yesNo, yesNoChoices } from './hardware-values';

export type PortRow = NonNullable<Hardware['ports']>[number];
export type Rail = NonNullable<Hardware['rails']>[number];

/** One serial port in a line of fields. */
export function portFields(port: PortRow, keep: (next: PortRow) => void, remove: () => void): HTMLElement {
  const change = changing(port, keep);
  const directions = port.directions === undefined ? '' : port.directions.join(' ');
  const directionChoices: Choices = [
    ['', 'not known'],
    ['in out', 'both ways'],
    ['in', 'reads only'],
    ['out', 'sends only'],
  ];
  return element(
    'div',
    { class: 'line part' },
    field('Name', port.name, 'uart1', (name) => change({ name })),
    choice('Ways', directions, directionChoices, (one) =>
      change({ directions: some((['in', 'out'] as const).filter((way) => one.split(' ').includes(way))) }),
    ),
    choice('Reads inverted', yesNo(port.invertedIn), yesNoChoices, (one) =>
      change({ invertedIn: flagOf(one) }),
    ),
    choice('Sends inverted', yesNo(port.invertedOut), yesNoChoices, (one) =>
      change({ invertedOut: flagOf(one) }),
    ),
    field('Shared with', port.sharedWith ?? '', '', (one) => change({ sharedWith: said(one) })),
    labelledButton('Remove', `Remove ${port.name}`, remove),
  );
}

/** One supply in a line of fields. */
export function railFields(rail: Rail, keep: (next: Rail) => void, remove: () => void): HTMLElement {
  const change = changing(rail, keep);
  return element(
    'div',
    { class: 'line part' },
    field('Name', rail.name, '5v', (name) => change({ name })),
    field('Voltage', rail.voltage ?? '', '5 V', (one) => change({ voltage: said(one) })),
    field('At most', rail.currentLimit ?? '', '2 A', (one) => change({ currentLimit: said(one) })),
    labelledButton('Remove', `Remove ${rail.name}`, remove),
  );
}

/** Keeps a part with what has been typed of it since, one field after the other. */
function changing<T extends object>(part: T, keep: (next: T) => void): (more: Partial<T>) => void {
  let held = part;
  return (more) => {
    held = without({ ...held, ...more });
    keep(held);
  };
}

export function group(title: string, fields: readonly HTMLElement[]): HTMLElement {
  return element('fieldset', {}, element('legend', {}, title), ...fields);
}

export function field(
  label: string,
  value: string,
  hint: string,
  keep: (value: string) => void,
): HTMLElement {
  const input = element('input', { type: 'text', value, placeholder: hint });
  input.addEventListener('change', () => keep(input.value.trim()));
  return labelled(label, input);
}

export function choice(
  label: string,
  value: string,
  choices: Choices,
  keep: (value: string) => void,
): HTMLElement {
  return choiceField(false, label, choices, keep, value);
}
