import type { MeaningChoice, MeaningRow } from '../../server/src/lsp/learn-protocol';
import { element } from '../page/element';
import type { Board } from './board';
import { labelledButton } from './fields';
import { foldButton } from './fold';
import { manners, portFamily, type RowFamily, type SectionName, sectionOf, wayIn } from './offers';
import { type RowActions, rowElement, wayButtons } from './row';

const titles: Readonly<Record<SectionName, string>> = {
  sure: 'Sure',
  counting: 'Clear what they are; how do they count?',
  likely: 'Likely',
  own: 'The board’s own',
  said: 'Said',
};

/** So many rows are drawn at once; more come when they are scrolled to. */
const slice = 60;

/** A part of the page: families of rows, drawn as far as they are looked at. */
export class FamilySection {
  readonly element: HTMLElement;
  private readonly grid: HTMLElement;
  private readonly end: HTMLElement;
  private readonly tools = element('div', { class: 'tools' });
  private readonly watch: IntersectionObserver;
  private drawn = 0;
  private isOpen: boolean;

  constructor(
    private readonly board: Board,
    readonly name: SectionName,
    private readonly families: readonly RowFamily[],
    private readonly act: RowActions,
  ) {
    this.isOpen = name !== 'own' && name !== 'said';
    this.grid = element('div', { role: 'grid', 'aria-label': titles[name] });
    this.end = element('div', { class: 'end' });
    this.watch = new IntersectionObserver((seen) => {
      if (seen.some(({ isIntersecting }) => isIntersecting)) this.more();
    });
    this.element = element('section', { class: `part-${name}` }, this.heading(), this.grid, this.end);
    this.drawTools();
    if (this.isOpen) this.open();
    else this.grid.hidden = true;
  }

  get rows(): readonly MeaningRow[] {
    return this.families.flatMap(({ rows }) => rows);
  }

  private heading(): HTMLElement {
    const count = this.rows.length;
    const text =
      this.name === 'own' ? `${count} stay the board’s own: that is fine` : `${titles[this.name]} (${count})`;
    if (this.isOpen) return element('header', {}, element('h2', {}, text), this.tools);
    const button = foldButton(text, (isOpen) => {
      this.isOpen = isOpen;
      this.grid.hidden = !isOpen;
      if (isOpen) this.open();
      else this.watch.disconnect();
    });
    return element('header', {}, element('h2', {}, button), this.tools);
  }

  /** Draws the first rows, or opens what is folded. */
  private open(): void {
    if (this.drawn === 0) this.more();
    this.watch.observe(this.end);
  }

  /** Draws the next rows; false where there are none. */
  more(): boolean {
    if (!this.isOpen || this.drawn >= this.families.length) {
      this.watch.disconnect();
      return false;
    }
    let count = 0;
    while (count < slice && this.drawn < this.families.length) {
      const family = this.families[this.drawn];
      this.drawn += 1;
      if (family === undefined) break;
      count += family.rows.length;
      this.grid.append(this.group(family));
    }
    // What is still in view after that asks again.
    this.watch.unobserve(this.end);
    this.watch.observe(this.end);
    return true;
  }

  /** As they are known by now. */
  private now(rows: readonly MeaningRow[]): readonly MeaningRow[] {
    return rows.map((row) => this.board.row(row.key) ?? row);
  }

  private group(family: RowFamily): HTMLElement {
    const isFamily = family.rows.length > 1 && this.name !== 'said';
    return element(
      'div',
      { class: isFamily ? 'family' : 'alone', role: 'rowgroup' },
      isFamily ? this.head(family) : null,
      ...this.now(family.rows).map((row) => rowElement(this.board, row, isFamily, this.act)),
    );
  }

  private head({ name, rows }: RowFamily): HTMLElement {
    const open = this.now(rows).filter(({ said }) => said === null);
    const choices = choicesOf(this.board, open);
    const ready = open.filter((row) => this.board.offer(row)?.row != null);
    const asking = open.filter((row) => this.board.offer(row)?.row === null);
    const [first] = rows.map((row) => this.board.offer(row));
    const title = choices[0]?.title ?? first?.title ?? name;
    return element(
      'div',
      { class: 'row head', role: 'row', tabindex: '-1', 'data-family': name },
      element(
        'div',
        { class: 'family-title', role: 'gridcell' },
        element('b', {}, title),
        ' ',
        element(
          'span',
          { class: 'aside' },
          open.length === 0
            ? `all ${rows.length} said`
            : name === portFamily
              ? 'choose one, and the others go with it'
              : `and ${rows.length - 1} that count alike`,
        ),
        asking.length === 0 ? null : wayButtons(asking, choicesOf(this.board, asking), this.act),
      ),
      element(
        'div',
        { class: 'actions', role: 'gridcell' },
        ready.length === 0
          ? null
          : labelledButton(
              ready.length === 1 ? 'Take One' : `Take ${ready.length}`,
              `Take ${ready.length} of ${title}`,
              () => this.act.take(ready),
            ),
      ),
    );
  }

  /** Draws the families of these rows anew, where they stand; true if one of them is here. */
  redraw(keys: ReadonlySet<string>): boolean {
    let isHere = false;
    for (const [index, family] of this.families.entries()) {
      if (!family.rows.some(({ key }) => keys.has(key))) continue;
      isHere = true;
      this.grid.children[index]?.replaceWith(this.group(family));
    }
    if (isHere) this.drawTools();
    return isHere;
  }

  /** Draws until a row is there. */
  drawTo(key: string): void {
    if (!this.rows.some((row) => row.key === key)) return;
    if (!this.isOpen) this.element.querySelector<HTMLElement>('.fold')?.click();
    while (this.grid.querySelector(`[data-key="${CSS.escape(key)}"]`) === null && this.more());
  }

  dispose(): void {
    this.watch.disconnect();
  }

  private drawTools(): void {
    if (this.name === 'counting') this.tools.replaceChildren(...this.mannerButtons(), ...this.roleButton());
    if (this.name !== 'sure') return;
    // Also those whose family stands further down, for others of it are less sure.
    const ready = this.board.rows().filter((row) => sectionOf(row) === 'sure');
    this.tools.replaceChildren(
      ...(ready.length === 0
        ? []
        : [
            element(
              'button',
              { type: 'button', class: 'main', id: 'take-sure', onclick: () => this.act.take(ready) },
              `Take All ${ready.length} That Are Sure`,
            ),
          ]),
    );
  }

  /** What is left plays its part: one press, and no figure hangs on any of it. */
  private roleButton(): readonly HTMLElement[] {
    const rows = this.now(this.rows).filter((row) => {
      const offer = this.board.offer(row);
      return row.said === null && offer?.row === null && offer.takesRole;
    });
    if (rows.length === 0) return [];
    return [
      element(
        'button',
        {
          type: 'button',
          id: 'take-roles',
          title: 'Each plays its part; how it counts can be said later.',
          onclick: () => this.act.takeRole(rows),
        },
        `Take ${rows.length === 1 ? 'the one left' : `the ${rows.length} left`} with scale unknown`,
      ),
    ];
  }

  /** A board mostly counts in one manner throughout: one press says so of all families that are usual by it. */
  private mannerButtons(): readonly HTMLElement[] {
    const families = this.families
      .map(({ rows }) =>
        this.now(rows).filter((row) => row.said === null && this.board.offer(row)?.row === null),
      )
      .filter((rows) => rows.length > 0);
    return manners.flatMap((manner) => {
      const fit = families.flatMap((rows) => {
        const way = wayIn(manner, choicesOf(this.board, rows));
        return way === undefined ? [] : [{ rows, way }];
      });
      const count = fit.reduce((sum, { rows }) => sum + rows.length, 0);
      if (count === 0) return [];
      return [
        element(
          'button',
          {
            type: 'button',
            'data-manner': manner,
            title: 'Takes each family that has usual values so; the others stay.',
            onclick: () =>
              this.act.takeWay(
                fit.flatMap(({ rows }) => rows),
                {
                  title: manner,
                  ways: fit.flatMap(({ way }) => way.ways),
                  isUsual: true,
                },
              ),
          },
          `${count} ${count === 1 ? 'is' : 'are'} usual in ${manner}: take ${count === 1 ? 'it' : 'them'} so`,
        ),
      ];
    });
  }
}

function choicesOf(board: Board, rows: readonly MeaningRow[]): readonly MeaningChoice[] {
  return rows.flatMap((row) => board.offer(row) ?? []);
}
