import type { BenchCard, CardStep } from '../../server/src/sheet/bench-card/card';
import {
  benchParts,
  type CardTaken,
  isTicked,
  notTicked,
  progress,
  tickLost,
} from '../../server/src/sheet/bench-card/taken';
import { element } from '../page/element';
import { elementId } from './fields';

/** How far a card is: a bar with what comes next, what has lost its tick, and what is open before propellers go on. */
export class CardProgress {
  private card: BenchCard | null = null;
  private readonly bar = element('progress', { 'aria-label': 'Steps done' });
  private readonly count = element('span', { id: 'count' });
  private readonly next = element('button', { type: 'button', class: 'value', onclick: () => this.goOn() });
  private readonly lost = element('p', { class: 'lost', id: 'lost' });
  private readonly saying = element('p', { class: 'aside saying' });
  private readonly before = element('p', { class: 'before' });
  private nextStep: CardStep | undefined;

  made(card: BenchCard): HTMLElement {
    this.card = card;
    return element('div', { class: 'progress' }, this.bar, this.count, this.next, this.saying);
  }

  /** Which steps have lost their ticks. */
  lostTicks(): HTMLElement {
    return this.lost;
  }

  /** Stands above the steps with propellers on. */
  beforePropellers(): HTMLElement {
    return this.before;
  }

  show(taken: CardTaken): void {
    if (this.card === null) return;
    const { parts } = this.card;
    const steps = parts.flatMap((part) => part.steps);
    const { done, all } = progress(steps, taken);
    this.bar.max = all;
    this.bar.value = done;
    this.count.textContent = `${done} of ${all} steps done`;
    this.nextStep = steps.find((step) => !isTicked(step, taken));
    this.next.textContent = this.nextStep === undefined ? '' : `Next: ${this.nextStep.title}`;
    this.next.hidden = this.nextStep === undefined;
    const again = steps.filter((step) => tickLost(step, taken) !== null).map(({ title }) => `“${title}”`);
    this.lost.textContent =
      again.length === 0 ? '' : `Changed since they were ticked, and to be done again: ${again.join(', ')}.`;
    this.showBefore(taken);
  }

  /** What was just done, beside the bar. */
  said(text: string): void {
    this.saying.textContent = text;
  }

  private showBefore(taken: CardTaken): void {
    const parts = this.card === null ? [] : benchParts(this.card);
    const open = notTicked({ parts }, taken);
    const isOpen = open !== '';
    this.before.classList.toggle('open', isOpen);
    this.before.textContent = isOpen
      ? `Propellers stay off until the steps above are done. Not ticked: ${open}.`
      : `All ${parts.flatMap(({ steps }) => steps).length} steps with the propellers off are ticked.`;
  }

  private goOn(): void {
    if (this.nextStep === undefined) return;
    const box = document.getElementById(elementId(`tick ${this.nextStep.id}`));
    box?.scrollIntoView({ block: 'center' });
    box?.focus();
  }
}
