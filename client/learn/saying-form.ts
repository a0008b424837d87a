import type { MeaningRow, MeaningWay, ParameterForm, PartHeld } from '../../server/src/lsp/learn-protocol';
import { element } from '../page/element';
import type { Saying } from './alike';
import { digits, digitsIn, ofBits } from './bits';
import { choiceField, labelled, named, numberField, partsFrom, ratioOf, textField } from './fields';
import { foldButton } from './fold';
import { StepTable } from './step-table';
import { WordTable } from './word-table';

/** What is known of how the setting holds the parameter, before anything is said. */
export interface HeldSoFar {
  readonly part: PartHeld | null;
  readonly ways: readonly MeaningWay[];
  /** What those hold that differ in their number: entries of one list are said in one table. */
  readonly others: readonly string[];
}

/** Fields of how a setting holds a parameter: each is left empty where nothing is said. */
export class SayingForm {
  readonly element: HTMLElement;
  private words: WordTable | null = null;
  private steps: StepTable | null = null;
  /** Of words, or of steps: which of them are asked for depends on the part. */
  private readonly tables = element('div', { class: 'tables' });

  constructor(
    private readonly row: MeaningRow,
    private readonly form: ParameterForm,
    private readonly held: HeldSoFar,
    private readonly changed: () => void,
    private readonly wayChosen: (way: MeaningWay) => void,
  ) {
    this.element = element(
      'div',
      { class: 'rest' },
      element('p', { class: 'aside' }, `${form.title}. ${form.summary}`),
      element(
        'div',
        { class: 'line' },
        this.whichField(),
        ...this.partFields(),
        ...(form.isCounted || form.parts === 'entries' ? this.countFields() : []),
      ),
      this.tables,
    );
    this.drawTables();
  }

  /** Where the cursor goes while it is not known how it counts. */
  focusCount(): void {
    this.field('scale')?.focus();
  }

  /** A text: what is wrong with the fields. */
  saying(): Saying | string {
    const { means } = this.form;
    if (this.element.querySelector<HTMLInputElement>('[name="role"]')?.checked === true)
      return { means, isRole: true };
    const counted = this.counted();
    if (typeof counted === 'string') return counted;
    const [which, bit] = [this.value('which'), this.value('bit')];
    if (bit !== '' && !/^\d{1,2}$/.test(bit)) return 'A bit is a number from 0, the lowest.';
    const parts = partsFrom({
      part: this.value('part'),
      cell: this.value('cell'),
      at: this.value('at'),
      entry: this.value('entry'),
      word: this.value('word'),
    });
    const spelled = this.words?.spelled() ?? {};
    if (this.value('part') === 'bits') return { means, bits: digitsIn(spelled) };
    return {
      means,
      ...(which === '' ? {} : { item: Number(which) }),
      ...(bit === '' ? {} : { bit: Number(bit) }),
      ...(parts === null ? {} : { parts }),
      ...(counted === null ? {} : { counted }),
      ...(Object.keys(spelled).length === 0 ? {} : { spelled }),
    };
  }

  /** Null: nothing is said of it; a text: what is wrong. */
  private counted(): object | string | null {
    const table = this.steps?.table() ?? {};
    if (Object.keys(table).length > 0) return { table };
    const { units } = this.form;
    const [scale, offset, unit] = [this.value('scale'), this.value('offset'), this.value('unit')];
    const ratio = scale === '' ? 1 : ratioOf(scale);
    const added = offset === '' ? 0 : ratioOf(offset);
    if (ratio === null || ratio === 0 || added === null)
      return 'Scale and offset are numbers; a scale is not 0.';
    const isOtherUnit = unit !== '' && unit !== units[0];
    if (scale === '' && offset === '' && !isOtherUnit) return null;
    return {
      ...(isOtherUnit ? { unit } : {}),
      ...(ratio === 1 ? {} : { scale: Number((1 / ratio).toPrecision(12)) }),
      ...(added === 0 ? {} : { offset: added }),
    };
  }

  private field(name: string): HTMLInputElement | HTMLSelectElement | null {
    return this.element.querySelector(`[name="${name}"]`);
  }

  private value(name: string): string {
    return this.field(name)?.value.trim() ?? '';
  }

  /** Fields for one part alone are there while it is said, and so are the tables that it asks for. */
  private drawTables(): void {
    const { row, form, changed } = this;
    const part = this.value('part');
    for (const field of this.element.querySelectorAll<HTMLElement>('[data-for]'))
      field.hidden = !(field.dataset.for ?? '').split(' ').includes(part);
    const words = part === 'has' ? ['on', 'off'] : part === 'numberOf' ? [] : (form.words ?? []);
    const own = part === 'entry' ? [...new Set([...row.words, ...this.held.others])] : row.words;
    const held = part === 'bits' ? digits : this.value('bit') === '' ? own : ['1', '0'];
    this.words = words.length === 0 ? null : new WordTable(words, held, changed);
    this.steps = form.isCounted || part === 'numberOf' ? new StepTable(row.words, form.hint, changed) : null;
    this.tables.replaceChildren(
      ...(this.words === null ? [] : [this.words.element]),
      ...(this.steps === null ? [] : [folded(this.steps.element)]),
    );
  }

  private readonly changedPart = (): void => {
    this.drawTables();
    this.changed();
  };

  private whichField(): HTMLElement | null {
    const { values, value } = this.row;
    if (values.length < 2) return null;
    const choices = values.map((one, index) => [String(index + 1), one] as const);
    return choiceField(
      'which',
      `Which of ${values.length} values`,
      [['', `all: ${value}`], ...choices],
      this.changed,
    );
  }

  private partFields(): readonly HTMLElement[] {
    const { form, changed } = this;
    const { part } = this.held;
    const word = typeof part === 'string' ? part : '';
    switch (form.parts) {
      case 'ends':
        return [choiceField('part', 'Part', ends, changed, word)];
      case 'place':
        return [
          choiceField('part', 'Part', halves, changed, word),
          numberField('cell', 'or a place counted in rows of', changed, partNumber(part, 'cell')),
        ];
      case 'points': {
        const at = typeof part === 'object' && part !== null && 'at' in part ? part.at : '';
        return [labelled('At', named('at', textField('At', at, changed, '25 %')))];
      }
      case 'entries':
        return this.entryFields();
      default:
        return form.isFlag ? this.bitField('') : [];
    }
  }

  private entryFields(): readonly HTMLElement[] {
    const { form, held } = this;
    const [kind = '', value] =
      typeof held.part === 'object' && held.part !== null ? (Object.entries(held.part)[0] ?? []) : [];
    const words = (form.words ?? []).map((word) => [word, word] as const);
    const entry = numberField('entry', 'Which entry, from 1', this.changed, partNumber(held.part, 'entry'));
    const word = choiceField(
      'word',
      'Which word',
      words,
      this.changed,
      typeof value === 'string' ? value : '',
    );
    entry.dataset.for = 'entry';
    word.dataset.for = 'numberOf has';
    return [
      choiceField('part', 'Part', this.isWhole ? [...ofLists, ofBits] : ofLists, this.changedPart, kind),
      entry,
      word,
      ...this.bitField('has'),
    ];
  }

  private get isWhole(): boolean {
    return /^(?:\d+|0[xb][\da-f]+)$/i.test(this.row.value);
  }

  /** One binary digit, where a whole number stands there. `part`: for which it is asked. */
  private bitField(part: string): readonly HTMLElement[] {
    if (!this.isWhole) return [];
    const field = numberField('bit', 'One bit of it, from 0 for the lowest', this.changedPart);
    field.dataset.for = part;
    return [field];
  }

  private countFields(): readonly HTMLElement[] {
    const { form, changed } = this;
    const { units } = form;
    const shown = units.map((unit) => [unit, unit === '' ? '(none)' : unit] as const);
    const fields = [
      ...this.wayField(),
      numberField('scale', '1 on the board is', changed),
      ...(units.length === 0 ? [] : [choiceField('unit', 'Unit', shown, changed)]),
      numberField('offset', 'then add', changed),
      ...(form.isCounted
        ? [
            element(
              'label',
              { class: 'check' },
              element('input', { type: 'checkbox', name: 'role', onchange: changed }),
              ' scale unknown',
            ),
          ]
        : []),
    ];
    if (!form.isCounted) for (const field of fields) field.dataset.for = 'numberOf';
    return fields;
  }

  private wayField(): readonly HTMLElement[] {
    const { ways } = this.held;
    if (ways.length === 0) return [];
    const presets = ways.map(
      ({ title, quantity }, index) => [String(index), `${title}: ${quantity ?? '?'}`] as const,
    );
    const chosen = (value: string) => {
      const way = value === '' ? undefined : ways[Number(value)];
      if (way === undefined) this.changed();
      else this.wayChosen(way);
    };
    return [choiceField('way', 'It counts', [['', 'otherwise'], ...presets], chosen)];
  }
}

const ends = [
  ['', 'all of it'],
  ['low', 'lower end'],
  ['high', 'upper end'],
] as const;

const halves = [
  ['', 'all of it'],
  ['row', 'row'],
  ['column', 'column'],
] as const;

const ofLists = [
  ['', 'all of the list'],
  ['entry', 'one entry of it'],
  ['has', 'whether it has a word'],
  ['numberOf', 'the number of a word'],
] as const;

function partNumber(part: PartHeld | null, key: 'cell' | 'entry'): string {
  if (typeof part !== 'object' || part === null) return '';
  if ('cell' in part) return key === 'cell' ? String(part.cell) : '';
  return key === 'entry' && 'entry' in part ? String(part.entry) : '';
}

function folded(table: HTMLElement): HTMLElement {
  table.hidden = true;
  const button = foldButton('It counts steps: say what each stands for', (isOpen) => {
    table.hidden = !isOpen;
  });
  return element('div', { class: 'steps' }, button, table);
}
