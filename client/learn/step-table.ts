import { element } from '../page/element';
import { labelled, textField } from './fields';

/** So many steps are offered by themselves. */
const most = 16;

/** What each number or word of the board stands for, where it counts steps. */
export class StepTable {
  readonly element: HTMLElement;
  private readonly steps: readonly (readonly [own: string, field: HTMLInputElement])[];
  private readonly more: readonly [own: HTMLInputElement, field: HTMLInputElement];

  constructor(held: readonly string[], hint: string, changed: () => void) {
    this.steps = held.slice(0, most).map((own) => [own, textField(`${own} is`, '', changed, hint)] as const);
    this.more = [
      textField('Another step of the board', '', changed, 'another step'),
      textField('That step is', '', changed, hint),
    ];
    this.element = element(
      'div',
      { class: 'words' },
      ...this.steps.map(([own, field]) => labelled(`${own} is`, field)),
      element('div', { class: 'field' }, ...this.more),
    );
  }

  /** By the board's steps, what each stands for; what nobody has said is left out. */
  table(): Readonly<Record<string, string>> {
    const [own, field] = this.more;
    const said = [...this.steps, [own.value.trim(), field] as const].map(
      ([step, { value }]) => [step, value.trim()] as const,
    );
    return Object.fromEntries(said.filter(([step, value]) => step !== '' && value !== ''));
  }
}
