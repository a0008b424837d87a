import type { MeaningRow, PortRoles } from '../../server/src/lsp/learn-protocol';
import { element } from '../page/element';
import type { Board, SaidOfSetting } from './board';
import { labelled, textField } from './fields';
import { type NumberedAlike, numberedAlike, numberedFurther } from './numbered';

/** What is said of the settings of ports. */
export interface SaidOfPorts {
  readonly said: readonly SaidOfSetting[];
  readonly portRoles: PortRoles;
}

const unused = 'unused';

/** The choice of a setting that says what a port is for: the port, and what each of the board's words for that means. */
export class PortForm {
  readonly element: HTMLElement;
  private readonly port: HTMLInputElement;
  private readonly others: readonly NumberedAlike[];
  private readonly withOthers = element('input', { type: 'checkbox', checked: true });
  private readonly words: readonly (readonly [own: string, field: HTMLSelectElement])[];

  constructor(
    private readonly board: Board,
    private readonly row: MeaningRow,
  ) {
    const said = row.said?.row.port;
    this.port = textField('The port', said ?? row.port ?? '', () => undefined, 'uart1');
    this.port.setAttribute('list', 'ports');
    this.others = numberedAlike(board.rows(), row);
    const count = this.others.length;
    this.words = this.wordsHeld().map((own) => [own, this.field(own)] as const);
    this.element = element(
      'div',
      { class: 'rest' },
      element(
        'p',
        { class: 'aside' },
        'It says what a port is for. Say which port, and what its words mean.',
      ),
      labelled('The port', this.port),
      element('div', { class: 'words' }, ...this.words.map(([own, field]) => labelled(`${own} is`, field))),
      count === 0
        ? null
        : element(
            'label',
            { class: 'check' },
            this.withOthers,
            ` and so the ${count} others that differ in their number`,
          ),
    );
  }

  focus(): void {
    (this.port.value === '' ? this.port : (this.words[0]?.[1] ?? this.port)).focus();
  }

  /** A text: what is still to be said. */
  saying(): SaidOfPorts | string {
    const port = this.port.value.trim();
    if (port === '') return 'Say which port it is: uart1, say.';
    const others = this.withOthers.checked ? this.others : [];
    const said = others.flatMap(({ row, off }) => {
      const own = row.port ?? numberedFurther(port, off);
      return own === null ? [] : [{ key: row.key, row: { port: own } }];
    });
    return { said: [{ key: this.row.key, row: { port } }, ...said], portRoles: this.portRoles() };
  }

  /** What the profile has, with what the fields say. */
  private portRoles(): PortRoles {
    const shown = new Set(this.words.map(([own]) => own));
    const before = this.board.portRoles;
    const kept = Object.entries(before.roles).filter(([, own]) => !shown.has(own));
    const said = this.words.map(([own, { value }]) => [value, own] as const);
    const none = said.find(([means]) => means === unused)?.[1] ?? before.unused;
    const roles = said.filter(([means]) => means !== '' && means !== unused);
    const isKept = none !== undefined && (!shown.has(none) || said.some(([means]) => means === unused));
    return { roles: Object.fromEntries([...kept, ...roles]), ...(isKept ? { unused: none } : {}) };
  }

  private wordsHeld(): readonly string[] {
    const rows = [this.row, ...this.others.map(({ row }) => row)];
    const { roles, unused: none } = this.board.portRoles;
    const known = [...Object.values(roles), ...(none === undefined ? [] : [none])];
    return [...new Set([...rows.flatMap(({ words }) => words), ...known])].slice(0, most);
  }

  private field(own: string): HTMLSelectElement {
    const { roles, unused: none } = this.board.portRoles;
    const now = Object.entries(roles).find(([, word]) => word === own)?.[0] ?? (none === own ? unused : '');
    const options = [
      ['', 'not known'],
      [unused, 'no use of it'],
      ...this.board.meanings.portParameters.map(({ means, title }) => [means, title] as const),
    ] as const;
    return element(
      'select',
      { 'aria-label': `${own} is` },
      ...options.map(([value, text]) => element('option', { value, selected: value === now }, text)),
    );
  }
}

/** A board has hardly more uses for a port. */
const most = 40;
