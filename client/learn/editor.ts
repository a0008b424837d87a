import type {
  MeaningChoice,
  MeaningRow,
  MeaningWay,
  ParameterForm,
} from '../../server/src/lsp/board-protocol';
import { element } from '../page/element';
import { type Alike, alikeIn, othersAlike, type Saying, saidAlike } from './alike';
import type { Board } from './board';
import { ask } from './extension-side';
import { choiceField, labelled, numberField, partsFrom, ratioOf, textField } from './fields';
import { becomes, sentence } from './row';
import { WordTable } from './word-table';

/** The choice of a row: what it means and how it counts, each with what its value would come to. */
export class Editor {
  readonly element: HTMLElement;
  private readonly rest = element('div', { class: 'rest' });
  private readonly preview = element('div', { class: 'preview', role: 'status' });
  private readonly means: HTMLInputElement;
  private form: ParameterForm | null = null;
  private choice: MeaningChoice | null;
  private words: WordTable | null = null;
  /** How it was said to count, by which its family is to count as well; null: nothing was said of it. */
  private alike: Alike | null = null;
  private readonly withFamily = element('input', { type: 'checkbox', checked: true });
  private readonly family = element('label', { class: 'check' }, this.withFamily);
  /** Only the last question's answer counts. */
  private question = 0;

  constructor(
    private readonly board: Board,
    private readonly row: MeaningRow,
    private readonly close: () => void,
  ) {
    const said = row.said;
    this.choice = board.offer(row);
    this.means = textField(`What ${row.key} means`, said?.means ?? this.choice?.means ?? '', () =>
      this.meansChosen(),
    );
    this.means.setAttribute('list', 'sayable');
    this.means.placeholder = 'search: gyro, cutoff, arm…';
    this.element = element(
      'form',
      {
        class: 'editor',
        onsubmit: (event) => {
          event.preventDefault();
          void this.take();
        },
        onkeydown: (event) => this.keyPressed(event),
      },
      element('div', { class: 'line' }, ...this.proposals()),
      element('label', { class: 'field wide' }, element('span', {}, 'Means'), this.means),
      this.rest,
      this.preview,
      this.family,
      element(
        'div',
        { class: 'line' },
        element('button', { type: 'submit', class: 'main' }, 'Take'),
        element('button', { type: 'button', onclick: () => void this.ownOfBoard() }, 'It Is the Board’s Own'),
        element('button', { type: 'button', onclick: () => this.close() }, 'Close'),
      ),
    );
    void this.meansChosen();
  }

  focus(): void {
    this.means.focus();
    this.means.select();
  }

  private keyPressed(event: Event): void {
    if (!(event instanceof KeyboardEvent)) return;
    // The row around it has other uses for these keys.
    event.stopPropagation();
    if (event.key === 'Escape') this.close();
  }

  private proposals(): readonly HTMLElement[] {
    return this.row.choices.map((choice) =>
      element(
        'button',
        {
          type: 'button',
          title: choice.reason,
          onclick: () => {
            this.choice = choice;
            this.means.value = choice.means;
            void this.meansChosen();
          },
        },
        `${choice.title} `,
        element('code', {}, choice.part === null ? choice.means : `${choice.means}, ${choice.part}`),
      ),
    );
  }

  private async meansChosen(): Promise<void> {
    this.question += 1;
    const question = this.question;
    const means = this.means.value.trim();
    const form = await ask('form', { means });
    if (question !== this.question) return;
    this.form = form;
    if (form === null) {
      this.rest.replaceChildren();
      this.preview.textContent = means === '' ? '' : `There is no ${means}: pick one of the list.`;
      return;
    }
    if (this.choice?.means !== means) this.choice = null;
    this.drawRest(form);
    if (this.choice === null) await this.changed();
    else this.show(this.choice);
  }

  /** Fields of what can be said besides: each is left empty where nothing is. */
  private drawRest(form: ParameterForm): void {
    const { values, value } = this.row;
    const changed = () => void this.changed();
    const words = form.words ?? [];
    this.words = words.length === 0 ? null : new WordTable(words, this.wordsHeld(), changed);
    this.rest.replaceChildren(
      element('p', { class: 'aside' }, `${form.title}. ${form.summary}`),
      element(
        'div',
        { class: 'line' },
        values.length > 1
          ? choiceField(
              'which',
              `Which of ${values.length} values`,
              [['', `all: ${value}`], ...values.map((one, index) => [String(index + 1), one] as const)],
              changed,
            )
          : null,
        ...this.partFields(form, changed),
        ...(form.isCounted ? this.countFields(form, changed) : []),
      ),
      ...(this.words === null ? [] : [this.words.element]),
    );
  }

  private partFields({ parts }: ParameterForm, changed: () => void): readonly HTMLElement[] {
    const held = this.choice?.part ?? '';
    switch (parts) {
      case 'ends':
        return [
          choiceField(
            'part',
            'Part',
            [
              ['', 'all of it'],
              ['low', 'lower end'],
              ['high', 'upper end'],
            ],
            changed,
            held,
          ),
        ];
      case 'place':
        return [
          choiceField(
            'part',
            'Part',
            [
              ['', 'all of it'],
              ['row', 'row'],
              ['column', 'column'],
            ],
            changed,
            held,
          ),
          numberField('cell', 'or a place counted in rows of', changed),
        ];
      case 'points':
        return [labelled('At', named('at', textField('At', '', changed, '25 %')))];
      case 'entries':
        return [numberField('entry', 'Entry of the list, if one', changed)];
      default:
        return [];
    }
  }

  private countFields({ units }: ParameterForm, changed: () => void): readonly HTMLElement[] {
    const ways = this.choice?.ways ?? [];
    const presets = ways.map(
      (way, index) => [String(index), `${way.title}: ${way.quantity ?? '?'}`] as const,
    );
    return [
      presets.length === 0
        ? null
        : choiceField('way', 'It counts', [['', 'otherwise'], ...presets], () => this.wayChosen(ways)),
      numberField('scale', '1 on the board is', changed),
      units.length === 0
        ? null
        : choiceField(
            'unit',
            'Unit',
            units.map((unit) => [unit, unit === '' ? '(none)' : unit]),
            changed,
          ),
      numberField('offset', 'then add', changed),
      element(
        'label',
        { class: 'check' },
        element('input', { type: 'checkbox', name: 'role', onchange: changed }),
        ' scale unknown',
      ),
    ].flatMap((one) => one ?? []);
  }

  private wayChosen(ways: readonly MeaningWay[]): void {
    const way = ways[Number(this.value('way') || '-1')];
    if (way === undefined || this.choice === null) return void this.changed();
    this.show({
      ...this.choice,
      row: way.row,
      quantity: way.quantity,
      lies: way.lies,
      counted: 'as you say',
    });
  }

  private wordsHeld(): readonly string[] {
    const { beside, value, values } = this.row;
    const parts = beside.split(' · ');
    const listed = parts.find((part) => part.includes(','))?.split(', ') ?? [];
    return [...new Set([...(values.length > 0 ? values : [value]), ...listed])];
  }

  private field(name: string): HTMLInputElement | HTMLSelectElement | null {
    return this.element.querySelector(`[name="${name}"]`);
  }

  private value(name: string): string {
    return this.field(name)?.value.trim() ?? '';
  }

  /** Asks what the value comes to by what the fields say. */
  private async changed(): Promise<void> {
    const { form } = this;
    if (form === null) return;
    const saying = this.saying(form);
    if (typeof saying === 'string') {
      this.choice = null;
      this.preview.textContent = saying;
      return;
    }
    this.alike = alikeIn(saying);
    this.question += 1;
    const question = this.question;
    const [answer] = await ask('choices', {
      sayings: [{ key: this.row.key, saying: JSON.stringify(saying) }],
    });
    if (question !== this.question) return;
    const choice = answer?.choice ?? null;
    if (choice === null) this.preview.textContent = 'That can’t be said of it.';
    else this.show(choice);
  }

  /** What the fields say; a text: what is wrong with them. */
  private saying({ means, units }: ParameterForm): Saying | string {
    const role = this.element.querySelector<HTMLInputElement>('[name="role"]')?.checked === true;
    const which = this.value('which');
    const item = which === '' ? {} : { item: Number(which) };
    if (role) return { means, isRole: true };
    const [scale, offset, unit] = [this.value('scale'), this.value('offset'), this.value('unit')];
    const ratio = scale === '' ? 1 : ratioOf(scale);
    const added = offset === '' ? 0 : ratioOf(offset);
    if (ratio === null || ratio === 0 || added === null)
      return 'Scale and offset are numbers; a scale is not 0.';
    const isCounted = scale !== '' || offset !== '' || (unit !== '' && unit !== units[0]);
    const counted = {
      ...(unit === '' || unit === units[0] ? {} : { unit }),
      ...(ratio === 1 ? {} : { scale: Number((1 / ratio).toPrecision(12)) }),
      ...(added === 0 ? {} : { offset: added }),
    };
    const parts = partsFrom({
      part: this.value('part'),
      cell: this.value('cell'),
      at: this.value('at'),
      entry: this.value('entry'),
    });
    const spelled = this.words?.spelled() ?? {};
    return {
      means,
      ...item,
      ...(parts === null ? {} : { parts }),
      ...(isCounted ? { counted } : {}),
      ...(Object.keys(spelled).length === 0 ? {} : { spelled }),
    };
  }

  private show(choice: MeaningChoice): void {
    this.choice = choice;
    const others = this.alike === null ? [] : othersAlike(this.board, this.row, choice);
    this.family.hidden = others.length === 0;
    this.family.replaceChildren(this.withFamily, ` and so the ${others.length} others that count alike`);
    const isRole = choice.row !== null && 'role' in choice.row;
    this.preview.replaceChildren(
      isRole
        ? 'It plays this part; with its scale unknown it serves ratios and comparisons, and no figure.'
        : choice.row === null
          ? `How does it count? ${sentence(choice.counted)}`
          : becomes(this.row.value, choice.quantity, choice.usual, choice.lies),
    );
  }

  private async take(): Promise<void> {
    const { choice, row } = this;
    if (choice === null || choice.row === null) {
      this.field('scale')?.focus();
      return;
    }
    const { alike } = this;
    const others = alike === null || !this.withFamily.checked ? [] : othersAlike(this.board, row, choice);
    const said = alike === null ? [] : await saidAlike(this.board, others, alike);
    this.close();
    await this.board.say([{ key: row.key, row: withItems(row, choice.row) }, ...said]);
  }

  private async ownOfBoard(): Promise<void> {
    this.close();
    if (this.row.said !== null) await this.board.say([{ key: this.row.key, row: {} }]);
  }
}

function named<T extends HTMLInputElement>(name: string, field: T): T {
  field.name = name;
  return field;
}

/** One value of several is said beside what is said of the others. */
function withItems({ said }: MeaningRow, now: NonNullable<MeaningChoice['row']>): object {
  const before = said?.row.items;
  if (now.items === undefined || before === undefined) return now;
  const items = now.items.map((item, index) =>
    Object.keys(item).length === 0 ? (before[index] ?? item) : item,
  );
  return { ...now, items };
}
