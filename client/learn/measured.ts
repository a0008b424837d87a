import type { CountsMeasured, FamilyMeasured, MeaningRow } from '../../server/src/lsp/learn-protocol';
import { capitalised } from '../../server/src/units/capitals';
import { element } from '../page/element';
import type { Board } from './board';
import { ask } from './extension-side';

const gain = /^control\.(?:roll|pitch|yaw)\.(?:proportional|integral|derivative)$/;

/** Gains of which nobody has said how they count: a flight with enough movement tells it. */
export class MeasuredCounts {
  readonly element: HTMLElement;
  private readonly told = element('div', { class: 'told', role: 'status' });
  private answer: CountsMeasured | null = null;

  constructor(private readonly board: Board) {
    this.element = element(
      'section',
      { class: 'measured' },
      element('header', {}, element('h2', {}, 'What 1 is, by a flight')),
      element(
        'p',
        { class: 'aside' },
        'A recording of a flight with enough movement tells what these gains did to the motors, and so how they count.',
      ),
      element(
        'button',
        { type: 'button', id: 'measure', onclick: () => void this.measure() },
        'Look at a Recorded Flight…',
      ),
      this.told,
    );
    this.changed();
  }

  /** Shown while there are such gains, or something was told of them. */
  changed(): void {
    if (this.answer !== null) this.show(this.answer);
    this.element.hidden =
      this.told.childElementCount === 0 && !this.board.rows().some((row) => this.isOpen(row));
  }

  private isOpen(row: MeaningRow): boolean {
    if (row.said !== null) return row.said.isRole && gain.test(row.said.means);
    const offer = this.board.offer(row);
    return offer !== null && offer.row === null && gain.test(offer.means) && row.sureness !== 'possible';
  }

  /** Whether it is said how a setting counts. */
  private counts(key: string): boolean {
    const said = this.board.row(key)?.said;
    return said != null && !said.isRole;
  }

  private async measure(): Promise<void> {
    this.answer = null;
    this.told.replaceChildren(element('p', { class: 'aside' }, 'The recording is being read…'));
    const answer = await ask('measured', {});
    if (answer === null) this.told.replaceChildren();
    else if (answer.kind === 'refused')
      this.told.replaceChildren(element('p', { class: 'reason' }, answer.message));
    else {
      this.answer = answer;
      this.show(answer);
    }
  }

  private show({ rests, families }: CountsMeasured): void {
    this.told.replaceChildren(
      ...(families.length === 0
        ? [element('p', { class: 'reason' }, 'No gain is left of which it is not known how it counts.')]
        : [element('p', {}, rests), ...families.map((family) => this.family(family))]),
    );
  }

  private family({ term, taken, evidence, numbers }: FamilyMeasured): HTMLElement {
    const said = numbers.flatMap(({ key, row }) => (row === null ? [] : [{ key, row }]));
    const becomes = numbers.flatMap(({ value, quantity }) =>
      quantity === null ? [] : [`${value} is ${quantity}`],
    );
    const text = `Flown with This Text: 1 Is ${taken ?? ''}`;
    const button = element(
      'button',
      {
        type: 'button',
        class: 'main',
        'data-measured': term,
        'aria-label': `${text}, of ${term}`,
        onclick: () => void this.board.say(said),
      },
      text,
    );
    return element(
      'div',
      { class: 'family' },
      element('b', {}, capitalised(term)),
      element('p', {}, evidence),
      said.length === 0 ? null : element('p', { class: 'becomes' }, [...new Set(becomes)].join(', ')),
      said.length === 0
        ? null
        : said.every(({ key }) => this.counts(key))
          ? element('p', { class: 'aside' }, 'Said.')
          : button,
    );
  }
}
