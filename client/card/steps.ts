import type { CardFigure, CardStep, WithPack } from '../../server/src/sheet/bench-card/card';
import { type CardTaken, isTicked, tickLost } from '../../server/src/sheet/bench-card/taken';
import { askedLine, assumedLine, expectedWords, onlyLine } from '../../server/src/sheet/bench-card/words';
import type { Target } from '../../server/src/sheet/target';
import { element } from '../page/element';
import { lineWords } from '../page/words';
import { type CardFields, elementId } from './fields';

interface StepRow {
  readonly step: CardStep;
  readonly item: HTMLElement;
  readonly box: HTMLInputElement;
  readonly lost: HTMLElement;
}

/** The steps of a card, each with its box. */
export class CardSteps {
  private drawn: StepRow[] = [];
  private home = '';

  constructor(
    private readonly fields: CardFields,
    private readonly tick: (step: CardStep, isDone: boolean) => void,
    private readonly go: (target: Target) => void,
  ) {}

  /** The card of a script is drawn anew. */
  begin(home: string): void {
    this.home = home;
    this.drawn = [];
  }

  /** Ticks what is done, and says which step is so no more. */
  show(taken: CardTaken): void {
    for (const { step, item, box, lost } of this.drawn) {
      box.checked = isTicked(step, taken);
      item.classList.toggle('done', box.checked);
      lost.textContent = tickLost(step, taken) ?? '';
    }
  }

  made(step: CardStep): HTMLElement {
    const { id, title, only, do: what, see, expected, readings, withPacks } = step;
    const { asked, unknown, assumed, source, target } = step;
    const box = element('input', {
      type: 'checkbox',
      id: elementId(`tick ${id}`),
      'aria-describedby': elementId(`lost ${id}`),
      onchange: () => this.tick(step, box.checked),
    });
    const lost = element('p', { class: 'lost', id: elementId(`lost ${id}`) });
    const item = element(
      'li',
      {},
      box,
      element(
        'div',
        {},
        target === null ? null : this.line(target),
        element('label', { for: elementId(`tick ${id}`) }, title),
        lost,
        only === null ? null : element('p', {}, element('b', {}, onlyLine(only))),
        element('p', {}, what),
        element('p', {}, element('b', {}, 'See: '), see),
        ...expected.map(expectedFigure),
        this.fields.all(readings),
        withPacks.length === 0
          ? null
          : element('div', { class: 'packs' }, ...withPacks.map((row) => this.packRow(row))),
        asked.length === 0 ? null : element('p', { class: 'aside' }, askedLine(asked)),
        this.fields.all(asked),
        ...unknown.map((text) => element('p', { class: 'aside' }, text)),
        assumed.length === 0 ? null : element('p', { class: 'aside' }, assumedLine(assumed)),
        source === null ? null : element('p', { class: 'aside' }, `From: ${source}`),
      ),
    );
    this.drawn.push({ step, item, box, lost });
    return item;
  }

  private line(target: Target): HTMLElement {
    const words = lineWords(target, this.home);
    return element('button', { type: 'button', class: 'link', onclick: () => this.go(target) }, words);
  }

  private packRow({ pack, expected, readings }: WithPack): HTMLElement {
    return element(
      'div',
      { role: 'group', 'aria-label': pack },
      element('b', {}, pack),
      element('div', {}, ...expected.map(expectedFigure), this.fields.all(readings, pack)),
    );
  }
}

function expectedFigure(figure: CardFigure): HTMLElement {
  const { about, text, between } = expectedWords(figure);
  const aside = between === '' ? null : element('span', { class: 'aside' }, between);
  return element('p', {}, `${about} `, element('b', {}, text), aside);
}
