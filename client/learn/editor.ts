import type {
  MeaningChoice,
  MeaningRow,
  MeaningWay,
  ParameterForm,
} from '../../server/src/lsp/learn-protocol';
import { element } from '../page/element';
import { type Alike, alikeIn, othersAlike, saidAlike } from './alike';
import type { Board } from './board';
import { ask } from './extension-side';
import { textField } from './fields';
import { leftLine } from './lines';
import { numberedAlike } from './numbered';
import { PortForm } from './port-form';
import { becomes, sentence } from './row';
import { SayingForm } from './saying-form';

/** The choice of a row: what it means and how it counts, each with what its value would come to. */
export class Editor {
  readonly element: HTMLElement;
  private readonly rest = element('div');
  private readonly preview = element('div', { class: 'preview', role: 'status' });
  private readonly means: HTMLInputElement;
  private form: SayingForm | null = null;
  private choice: MeaningChoice | null;
  /** What is said instead: what a port is for. */
  private ports: PortForm | null = null;
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
    private readonly tell: (text: string) => void,
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
        element(
          'button',
          { type: 'button', id: 'port-use', onclick: () => this.showPorts() },
          'It Says What a Port Is For',
        ),
        element('button', { type: 'button', onclick: () => void this.ownOfBoard() }, 'It Is the Board’s Own'),
        row.line === null
          ? null
          : element(
              'button',
              { type: 'button', id: 'misread', onclick: () => this.showLine(row.line ?? 0) },
              'Its Line Is Read Wrongly',
            ),
        element('button', { type: 'button', onclick: () => this.close() }, 'Close'),
      ),
    );
    if (said?.row.port !== undefined || (said === null && row.port !== null)) this.showPorts();
    else void this.meansChosen();
  }

  focus(): void {
    if (this.ports !== null) {
      this.ports.focus();
      return;
    }
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
    this.ports = null;
    this.alike = null;
    if (form === null) {
      this.form = null;
      this.rest.replaceChildren();
      this.preview.textContent = means === '' ? '' : `There is no ${means}: pick one of the list.`;
      return;
    }
    if (this.choice?.means !== means) this.choice = null;
    this.form = this.formOf(form);
    this.rest.replaceChildren(this.form.element);
    if (this.choice === null) await this.changed();
    else this.show(this.choice);
  }

  private formOf(form: ParameterForm): SayingForm {
    const { choice, row } = this;
    const { said } = row;
    const isSaid = said !== null && said.means === form.means;
    const held = {
      part: (isSaid ? said.row.as : choice?.as) ?? null,
      ways: choice?.ways ?? [],
      others: numberedAlike(this.board.rows(), row).flatMap((other) => other.row.words),
    };
    const wayChosen = ({ row: now, quantity, lies, title }: MeaningWay) => {
      if (this.choice === null) return;
      this.alike = { title };
      this.show({ ...this.choice, row: now, quantity, lies, counted: 'as you say' });
    };
    return new SayingForm(row, form, held, () => void this.changed(), wayChosen);
  }

  /** Asks what the value comes to by what the fields say. */
  private async changed(): Promise<void> {
    const { form } = this;
    if (form === null) return;
    const saying = form.saying();
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

  private show(choice: MeaningChoice): void {
    this.choice = choice;
    const others = this.alike === null ? [] : othersAlike(this.board, this.row, choice, this.alike);
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
    if (this.ports !== null) return this.takePorts(this.ports);
    if (choice === null || choice.row === null) {
      this.form?.focusCount();
      return;
    }
    const { alike } = this;
    const others =
      alike === null || !this.withFamily.checked ? [] : othersAlike(this.board, row, choice, alike);
    const said = alike === null || others.length === 0 ? [] : await saidAlike(this.board, row, others, alike);
    this.close();
    await this.board.say([{ key: row.key, row: withItems(row, choice.row) }, ...said]);
  }

  private showPorts(): void {
    this.question += 1;
    this.ports = new PortForm(this.board, this.row);
    this.means.value = '';
    this.rest.replaceChildren(this.ports.element);
    this.preview.textContent = '';
    this.family.hidden = true;
    this.ports.focus();
  }

  /** What the line is, in place of what its setting means. */
  private showLine(line: number): void {
    this.question += 1;
    const { key, value } = this.row;
    const reason = 'Say what the line is: with its value, or name=value, if it is a setting.';
    this.rest.replaceChildren(
      element('ul', { class: 'left-lines' }, leftLine(line, `${key} = ${value}`, reason, this.tell)),
    );
    this.preview.textContent = '';
    this.family.hidden = true;
    this.rest.querySelector('input')?.focus();
  }

  private async takePorts(form: PortForm): Promise<void> {
    const saying = form.saying();
    if (typeof saying === 'string') {
      this.preview.textContent = saying;
      return;
    }
    this.close();
    await this.board.say(saying.said, saying.portRoles);
  }

  private async ownOfBoard(): Promise<void> {
    this.close();
    if (this.row.said !== null) await this.board.say([{ key: this.row.key, row: {} }]);
  }
}

/** One value of several is said beside what is said of the others. */
function withItems({ said }: MeaningRow, now: NonNullable<MeaningChoice['row']>): object {
  const before = said?.row.items;
  if (now.items === undefined || before === undefined) return now;
  const items = Array.from({ length: Math.max(now.items.length, before.length) }, (_, index) => {
    const item = now.items?.[index] ?? {};
    return Object.keys(item).length === 0 ? (before[index] ?? item) : item;
  });
  return { ...now, items };
}
