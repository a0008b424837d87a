import type { ReadingFault, ReadingTyped } from '../../server/src/lsp/flight-protocol';
import type { CardReading } from '../../server/src/sheet/bench-card/card';
import { type CardTaken, nothingTaken, writtenIn } from '../../server/src/sheet/bench-card/taken';
import { element } from '../page/element';

/** A pause in typing after which a reading is looked at, in milliseconds: half a number is no slip. */
const pause = 350;

/** The fields of a card: what is typed is kept at once, and looked at by the checks after a pause. */
export class CardFields {
  private taken: CardTaken = nothingTaken;
  private drawn: { readonly id: string; readonly input: HTMLInputElement; readonly look: () => void }[] = [];
  private waiting: ReturnType<typeof setTimeout> | undefined;

  constructor(
    private readonly keep: (id: string, value: string) => void,
    private readonly check: (id: string, reading: ReadingTyped) => void,
  ) {}

  /** A card is drawn anew, with this on it. */
  begin(taken: CardTaken): void {
    this.taken = taken;
    this.drawn = [];
  }

  /** What was written elsewhere is shown, but not in the field in which somebody types. */
  follow(taken: CardTaken): void {
    for (const { id, input, look } of this.drawn) {
      const written = writtenIn(id, taken);
      if (input === document.activeElement || input.value === written) continue;
      input.value = written;
      look();
    }
  }

  all(readings: readonly CardReading[], under?: string): HTMLElement | null {
    if (readings.length === 0) return null;
    return element('div', { class: 'readings' }, ...readings.map((reading) => this.made(reading, under)));
  }

  /** `under`: what tells it from fields with the same words, for those who hear its name alone. */
  made(reading: CardReading, under?: string): HTMLElement {
    const { id, words, unit, isWords, setting, script } = reading;
    const look = () => this.check(id, { unit, setting, script, typed: input.value });
    const isFigure = unit !== '' && script === null;
    const input = element('input', {
      type: 'text',
      id: elementId(id),
      value: writtenIn(id, this.taken),
      // A bare number is meant in the unit: a phone may show its keys for numbers.
      inputmode: isFigure ? 'decimal' : 'text',
      autocomplete: 'off',
      'aria-label': under === undefined ? words : `${words}, ${under}`,
      'aria-describedby': elementId(`${id} fault`),
      oninput: () => {
        this.keep(id, input.value);
        setFault(id, '');
        clearTimeout(this.waiting);
        this.waiting = setTimeout(look, pause);
      },
      onchange: look,
    });
    if (input.value !== '') look();
    this.drawn.push({ id, input, look });
    return element(
      'span',
      { class: isWords ? 'reading words' : 'reading' },
      element('label', { for: elementId(id) }, words),
      input,
      unit === '' ? null : element('span', { class: 'aside' }, unit),
      element('span', { id: elementId(`${id} fault`), class: 'fault', role: 'status' }),
    );
  }

  /** What the checks say of what was typed; they may answer when something else stands there. */
  showFault(id: string, typed: string, fault: string | null): void {
    const field = document.getElementById(elementId(id));
    if (field instanceof HTMLInputElement && field.value === typed) setFault(id, fault ?? '');
  }

  /** Readings that can't be kept; the first gets the cursor. */
  refuse(faults: readonly ReadingFault[]): void {
    for (const { id, message } of faults) setFault(id, message);
    const [first] = faults;
    if (first !== undefined) document.getElementById(elementId(first.id))?.focus();
  }
}

/** An element is described by a list of ids with blanks between them, so that none may stand in one. */
export function elementId(id: string): string {
  return id.replaceAll(' ', '/');
}

function setFault(id: string, message: string): void {
  const place = document.getElementById(elementId(`${id} fault`));
  if (place !== null && place.textContent !== message) place.textContent = message;
  document.getElementById(elementId(id))?.setAttribute('aria-invalid', String(message !== ''));
}
