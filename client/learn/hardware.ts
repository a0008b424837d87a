import type { BoardMeanings, Hardware } from '../../server/src/lsp/board-protocol';
import { element } from '../page/element';
import { ask } from './extension-side';
import { type Choices, choiceField, labelled, labelledButton } from './fields';
import { foldButton } from './fold';

type Port = NonNullable<Hardware['ports']>[number];
type Rail = NonNullable<Hardware['rails']>[number];

/** What the board has besides settings: every field may stay empty, and what needs it waits until it is told. */
export class HardwareForm {
  readonly element: HTMLElement;
  private readonly fields = element('div', { class: 'fields' });
  private readonly told = element('p', { class: 'reason', role: 'status' });
  private hardware: Hardware;

  constructor({ hardware, ports }: BoardMeanings) {
    this.hardware = hardware;
    const body = element(
      'div',
      { class: 'hardware' },
      element(
        'p',
        { class: 'aside' },
        'All of it may stay empty. What is not known is not guessed: checks that need it wait until it is told.',
      ),
      this.fields,
      this.told,
    );
    body.hidden = true;
    const button = foldButton('What the board has', (isOpen) => {
      body.hidden = !isOpen;
    });
    this.element = element(
      'section',
      { class: 'board' },
      element('header', {}, element('h2', {}, button)),
      body,
    );
    this.draw(ports);
  }

  private draw(offered: readonly string[]): void {
    const { ports = [], rails = [], gyro = {}, packInput = {} } = this.hardware;
    const { motorOutputs, motorsAsPrinted, serialClock, log, overlay, sensors } = this.hardware;
    const free = offered.filter((name) => !ports.some((port) => port.name === name));
    const redraw = (next: Hardware) => {
      this.hardware = next;
      this.draw(offered);
      void this.keep(next);
    };
    const keep = (more: Partial<Hardware>) => {
      this.hardware = without({ ...this.hardware, ...more });
      void this.keep(this.hardware);
    };
    const setPorts = (next: readonly Port[]) => redraw(without({ ...this.hardware, ports: some(next) }));
    const setRails = (next: readonly Rail[]) => redraw(without({ ...this.hardware, rails: some(next) }));
    this.fields.replaceChildren(
      group('Serial ports', [
        ...ports.map((port, index) =>
          portFields(
            port,
            (next) => keep({ ports: some(replaced(this.hardware.ports ?? [], index, next)) }),
            () => setPorts(ports.filter((_, other) => other !== index)),
          ),
        ),
        element(
          'div',
          { class: 'line' },
          ...free.map((name) =>
            labelledButton(`+ ${name}`, `Add the port ${name}`, () => setPorts([...ports, { name }])),
          ),
          labelledButton('+ Port', 'Add a port', () =>
            setPorts([...ports, { name: nextName('port', ports) }]),
          ),
        ),
      ]),
      group('Supplies', [
        ...rails.map((rail, index) =>
          railFields(
            rail,
            (next) => keep({ rails: some(replaced(this.hardware.rails ?? [], index, next)) }),
            () => setRails(rails.filter((_, other) => other !== index)),
          ),
        ),
        element(
          'div',
          { class: 'line' },
          labelledButton('+ Supply', 'Add a supply', () =>
            setRails([...rails, { name: nextName('rail', rails) }]),
          ),
        ),
      ]),
      group('Motors', [
        field('Motor outputs', text(motorOutputs), '4', (one) => keep({ motorOutputs: whole(one) })),
        field(
          'Motors as printed, output one first',
          (motorsAsPrinted ?? []).join(', '),
          'as in a script, comma between',
          (one) => keep({ motorsAsPrinted: some(listOf(one)) }),
        ),
      ]),
      group('Gyro', [
        field('Rates', (gyro.rates ?? []).join(', '), '1 kHz, 2 kHz', (one) =>
          keep({ gyro: part({ ...this.hardware.gyro, rates: some(listOf(one)) }) }),
        ),
        field('Full scale', gyro.fullScale ?? '', '2000 deg/s', (one) =>
          keep({ gyro: part({ ...this.hardware.gyro, fullScale: said(one) }) }),
        ),
        field('Bits', text(gyro.bits), '16', (one) =>
          keep({ gyro: part({ ...this.hardware.gyro, bits: whole(one) }) }),
        ),
      ]),
      group('Pack voltage', [
        field('Upper resistor', packInput.dividerUpper ?? '', '10 kohm', (one) =>
          keep({ packInput: part({ ...this.hardware.packInput, dividerUpper: said(one) }) }),
        ),
        field('Lower resistor', packInput.dividerLower ?? '', '1 kohm', (one) =>
          keep({ packInput: part({ ...this.hardware.packInput, dividerLower: said(one) }) }),
        ),
        field('Reference', packInput.reference ?? '', '3.3 V', (one) =>
          keep({ packInput: part({ ...this.hardware.packInput, reference: said(one) }) }),
        ),
        field('Most cells', text(packInput.mostCells), '6', (one) =>
          keep({ packInput: part({ ...this.hardware.packInput, mostCells: whole(one) }) }),
        ),
        choice('Current shunt', yesNo(packInput.currentShunt), yesNoChoices, (one) =>
          keep({ packInput: part({ ...this.hardware.packInput, currentShunt: flagOf(one) }) }),
        ),
      ]),
      group('Log and the rest', [
        choice(
          'Log',
          log === undefined ? '' : log === null ? 'none' : 'has',
          [
            ['', 'not known'],
            ['none', 'keeps none'],
            ['has', 'keeps one'],
          ],
          (one) =>
            redraw(
              without({
                ...this.hardware,
                log: one === '' ? undefined : one === 'none' ? null : { medium: 'flash' },
              }),
            ),
        ),
        ...(log == null
          ? []
          : [
              field('Kept on', log.medium, 'flash', (one) =>
                keep({ log: { ...this.hardware.log, medium: one } }),
              ),
              field('Size', log.size ?? '', '16 MB', (one) =>
                keep({ log: part({ medium: 'flash', ...this.hardware.log, size: said(one) }) }),
              ),
            ]),
        choice('Draws on the picture', yesNo(overlay), yesNoChoices, (one) => keep({ overlay: flagOf(one) })),
        choice(
          'Sensors beside the gyro',
          sensors === undefined ? '' : sensors.join(' ') || 'none',
          sensorChoices,
          (one) => keep({ sensors: sensorsOf(one) }),
        ),
        field('Clock of the ports', serialClock ?? '', '', (one) => keep({ serialClock: said(one) })),
      ]),
    );
  }

  private async keep(hardware: Hardware): Promise<void> {
    const answer = await ask('hardware', { hardware: JSON.stringify(hardware) });
    if (answer.kind === 'said') this.told.textContent = '';
    else if (answer.kind === 'refused') this.told.textContent = answer.message;
    else
      this.told.textContent = answer.faults
        .map(({ at, message }) => `${at.replaceAll('.', ' ')}: ${message}`)
        .join('; ');
  }
}

/** The same with nothing where nothing is said. */
function without<T extends object>(all: T): T {
  return Object.fromEntries(Object.entries(all).filter(([, value]) => value !== undefined)) as T;
}

/** A part of the hardware; undefined where nothing is said of it. */
function part<T extends object>(all: T): T | undefined {
  const made = without(all);
  return Object.keys(made).length === 0 ? undefined : made;
}

function some<T>(all: readonly T[]): T[] | undefined {
  return all.length === 0 ? undefined : [...all];
}

function replaced<T>(all: readonly T[], index: number, next: T): readonly T[] {
  return all.map((one, other) => (other === index ? next : one));
}

function said(value: string): string | undefined {
  return value === '' ? undefined : value;
}

function whole(value: string): number | undefined {
  return value === '' ? undefined : Number(value);
}

function text(value: number | undefined): string {
  return value === undefined ? '' : String(value);
}

function listOf(value: string): readonly string[] {
  return value
    .split(',')
    .map((one) => one.trim())
    .filter((one) => one !== '');
}

function nextName(word: string, all: readonly { readonly name: string }[]): string {
  let number = all.length + 1;
  while (all.some(({ name }) => name === `${word}${number}`)) number += 1;
  return `${word}${number}`;
}

const yesNoChoices: Choices = [
  ['', 'not known'],
  ['yes', 'yes'],
  ['no', 'no'],
];

const sensorChoices: Choices = [
  ['', 'not known'],
  ['none', 'none'],
  ['barometer', 'barometer'],
  ['compass', 'compass'],
  ['barometer compass', 'both'],
];

function sensorsOf(value: string): Hardware['sensors'] {
  if (value === '') return undefined;
  return (['barometer', 'compass'] as const).filter((one) => value.includes(one));
}

function yesNo(value: boolean | undefined): string {
  return value === undefined ? '' : value ? 'yes' : 'no';
}

function flagOf(value: string): boolean | undefined {
  return value === '' ? undefined : value === 'yes';
}

function portFields(port: Port, keep: (next: Port) => void, remove: () => void): HTMLElement {
  let held = port;
  const change = (more: Partial<Port>) => {
    held = without({ ...held, ...more });
    keep(held);
  };
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

function railFields(rail: Rail, keep: (next: Rail) => void, remove: () => void): HTMLElement {
  let held = rail;
  const change = (more: Partial<Rail>) => {
    held = without({ ...held, ...more });
    keep(held);
  };
  return element(
    'div',
    { class: 'line part' },
    field('Name', rail.name, '5v', (name) => change({ name })),
    field('Voltage', rail.voltage ?? '', '5 V', (one) => change({ voltage: said(one) })),
    field('At most', rail.currentLimit ?? '', '2 A', (one) => change({ currentLimit: said(one) })),
    labelledButton('Remove', `Remove ${rail.name}`, remove),
  );
}

function group(title: string, fields: readonly HTMLElement[]): HTMLElement {
  return element('fieldset', {}, element('legend', {}, title), ...fields);
}

function field(label: string, value: string, hint: string, keep: (value: string) => void): HTMLElement {
  const input = element('input', { type: 'text', value, placeholder: hint });
  input.addEventListener('change', () => keep(input.value.trim()));
  return labelled(label, input);
}

function choice(label: string, value: string, choices: Choices, keep: (value: string) => void): HTMLElement {
  return choiceField(false, label, choices, keep, value);
}
