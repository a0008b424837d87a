import { element } from '../page/element';
import { labelled } from './fields';

/** Which of a parameter's words each word of the board is. */
export class WordTable {
  readonly element: HTMLElement;
  private readonly chosen: readonly (readonly [own: string, field: HTMLSelectElement])[];
  private readonly more: readonly (readonly [own: HTMLInputElement, field: HTMLSelectElement])[];

  constructor(
    words: readonly string[],
    held: readonly string[],
    private readonly changed: () => void,
  ) {
    this.chosen = held.slice(0, most).map((own) => [own, this.field(words, `${own} is`)]);
    const spare = element('input', {
      type: 'text',
      'aria-label': 'Another word of the board',
      placeholder: 'another word',
    });
    spare.addEventListener('change', changed);
    this.more = [[spare, this.field(words, 'That word is')]];
    this.element = element(
      'div',
      { class: 'words' },
      ...this.chosen.map(([own, field]) => labelled(`${own} is`, field)),
      ...this.more.map(([own, field]) => element('div', { class: 'field' }, own, field)),
    );
  }

  /** By the parameter's words, the board's; what nobody has said is left out. */
  spelled(): Readonly<Record<string, string>> {
    const said = [...this.chosen, ...this.more.map(([own, field]) => [own.value.trim(), field] as const)];
    return Object.fromEntries(
      said.flatMap(([own, { value }]) => (own === '' || value === '' ? [] : [[value, own] as const])),
    );
  }

  private field(words: readonly string[], label: string): HTMLSelectElement {
    return element(
      'select',
      { 'aria-label': label, onchange: this.changed },
      element('option', { value: '' }, '–'),
      ...words.map((word) => element('option', { value: word }, word)),
    );
  }
}

const most = 24;
