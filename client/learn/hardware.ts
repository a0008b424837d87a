import type { BoardMeanings, Hardware } from '../../server/src/lsp/learn-protocol';
import { element } from '../page/element';
import { ask } from './extension-side';
import { labelledButton } from './fields';
import { foldButton } from './fold';
import { choice, field, group, type PortRow, portFields, type Rail, railFields } from './hardware-fields';
import {
  flagOf,
  listOf,
  nextName,
  part,
  replaced,
  said,
  sensorChoices,
  sensorsOf,
  some,
  text,
  whole,
  without,
  yesNo,
  yesNoChoices,
} from './hardware-values';

/** What the board has besides settings: every field may stay empty, and what needs it waits until it is told. */
export class HardwareForm {
  readonly element: HTMLElement;
  private readonly fields = element('div', { class: 'fields' });
  private readonly told = element('p', { class: 'reason', role: 'status' });
  /** Names of ports that the text shows. */
  private readonly offered: readonly string[];
  private hardware: Hardware;

  constructor({ hardware, ports }: BoardMeanings) {
    this.hardware = hardware;
    this.offered = ports;
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
    this.draw();
  }

  private draw(): void {
    this.fields.replaceChildren(
      group('Serial ports', this.ports()),
      group('Supplies', this.supplies()),
      group('Motors', this.motors()),
      group('Gyro', this.gyro()),
      group('Pack voltage', this.packVoltage()),
      group('Log and the rest', [...this.log(), ...this.rest()]),
    );
  }

  private ports(): readonly HTMLElement[] {
    const ports = () => this.hardware.ports ?? [];
    const setPorts = (next: readonly PortRow[]) => this.redraw({ ports: some(next) });
    const free = this.offered.filter((name) => !ports().some((port) => port.name === name));
    return [
      ...ports().map((port, index) =>
        portFields(
          port,
          (next) => this.keep({ ports: some(replaced(ports(), index, next)) }),
          () => setPorts(ports().filter((_, other) => other !== index)),
        ),
      ),
      element(
        'div',
        { class: 'line' },
        ...free.map((name) =>
          labelledButton(`+ ${name}`, `Add the port ${name}`, () => setPorts([...ports(), { name }])),
        ),
        labelledButton('+ Port', 'Add a port', () =>
          setPorts([...ports(), { name: nextName('port', ports()) }]),
        ),
      ),
    ];
  }

  private supplies(): readonly HTMLElement[] {
    const rails = () => this.hardware.rails ?? [];
    const setRails = (next: readonly Rail[]) => this.redraw({ rails: some(next) });
    return [
      ...rails().map((rail, index) =>
        railFields(
          rail,
          (next) => this.keep({ rails: some(replaced(rails(), index, next)) }),
          () => setRails(rails().filter((_, other) => other !== index)),
        ),
      ),
      element(
        'div',
        { class: 'line' },
        labelledButton('+ Supply', 'Add a supply', () =>
          setRails([...rails(), { name: nextName('rail', rails()) }]),
        ),
      ),
    ];
  }

  private motors(): readonly HTMLElement[] {
    const { motorOutputs, motorsAsPrinted = [] } = this.hardware;
    return [
      field('Motor outputs', text(motorOutputs), '4', (one) => this.keep({ motorOutputs: whole(one) })),
      field(
        'Motors as printed, output one first',
        motorsAsPrinted.join(', '),
        'as in a script, comma between',
        (one) => this.keep({ motorsAsPrinted: some(listOf(one)) }),
      ),
    ];
  }

  private gyro(): readonly HTMLElement[] {
    const { rates = [], fullScale = '', bits } = this.hardware.gyro ?? {};
    const keep = (more: Hardware['gyro']) => this.keep({ gyro: part({ ...this.hardware.gyro, ...more }) });
    return [
      field('Rates', rates.join(', '), '1 kHz, 2 kHz', (one) => keep({ rates: some(listOf(one)) })),
      field('Full scale', fullScale, '2000 deg/s', (one) => keep({ fullScale: said(one) })),
      field('Bits', text(bits), '16', (one) => keep({ bits: whole(one) })),
    ];
  }

  private packVoltage(): readonly HTMLElement[] {
    const { packInput = {} } = this.hardware;
    const keep = (more: Hardware['packInput']) =>
      this.keep({ packInput: part({ ...this.hardware.packInput, ...more }) });
    return [
      field('Upper resistor', packInput.dividerUpper ?? '', '10 kohm', (one) =>
        keep({ dividerUpper: said(one) }),
      ),
      field('Lower resistor', packInput.dividerLower ?? '', '1 kohm', (one) =>
        keep({ dividerLower: said(one) }),
      ),
      field('Reference', packInput.reference ?? '', '3.3 V', (one) => keep({ reference: said(one) })),
      field('Most cells', text(packInput.mostCells), '6', (one) => keep({ mostCells: whole(one) })),
      choice('Current shunt', yesNo(packInput.currentShunt), yesNoChoices, (one) =>
        keep({ currentShunt: flagOf(one) }),
      ),
    ];
  }

  private log(): readonly HTMLElement[] {
    const { log } = this.hardware;
    const kept = choice(
      'Log',
      log === undefined ? '' : log === null ? 'none' : 'has',
      [
        ['', 'not known'],
        ['none', 'keeps none'],
        ['has', 'keeps one'],
      ],
      (one) => this.redraw({ log: one === '' ? undefined : one === 'none' ? null : { medium: 'flash' } }),
    );
    if (log == null) return [kept];
    return [
      kept,
      field('Kept on', log.medium, 'flash', (one) =>
        this.keep({ log: { ...this.hardware.log, medium: one } }),
      ),
      field('Size', log.size ?? '', '16 MB', (one) =>
        this.keep({ log: part({ medium: 'flash', ...this.hardware.log, size: said(one) }) }),
      ),
    ];
  }

  private rest(): readonly HTMLElement[] {
    const { overlay, sensors, serialClock = '' } = this.hardware;
    const sensed = sensors === undefined ? '' : sensors.join(' ') || 'none';
    return [
      choice('Draws on the picture', yesNo(overlay), yesNoChoices, (one) =>
        this.keep({ overlay: flagOf(one) }),
      ),
      choice('Sensors beside the gyro', sensed, sensorChoices, (one) =>
        this.keep({ sensors: sensorsOf(one) }),
      ),
      field('Clock of the ports', serialClock, '', (one) => this.keep({ serialClock: said(one) })),
    ];
  }

  /** After what adds or takes away fields. */
  private redraw(more: Partial<Hardware>): void {
    this.keep(more);
    this.draw();
  }

  private keep(more: Partial<Hardware>): void {
    this.hardware = without({ ...this.hardware, ...more });
    void this.tell(this.hardware);
  }

  private async tell(hardware: Hardware): Promise<void> {
    const answer = await ask('hardware', { hardware: JSON.stringify(hardware) });
    if (answer.kind === 'said') this.told.textContent = '';
    else if (answer.kind === 'refused') this.told.textContent = answer.message;
    else
      this.told.textContent = answer.faults
        .map(({ at, message }) => `${at.replaceAll('.', ' ')}: ${message}`)
        .join('; ');
  }
}
