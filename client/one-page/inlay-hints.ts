import { type Extension, StateEffect } from '@codemirror/state';
import {
  Decoration,
  type DecorationSet,
  type EditorView,
  ViewPlugin,
  type ViewUpdate,
  WidgetType,
} from '@codemirror/view';
import type { InlayHint } from 'vscode-languageclient';
import { element } from '../page/element';
import { offsetIn } from './texts';

interface LineRange {
  readonly start: { readonly line: number; readonly character: number };
  readonly end: { readonly line: number; readonly character: number };
}

type Ask = (range: LineRange) => Promise<readonly InlayHint[] | null>;

/** A text was checked again: what stands behind its values may be another. */
export const checkedAgain = StateEffect.define<null>();
const came = StateEffect.define<DecorationSet>();

/** What the server adds behind values, such as what a calculated one comes to: seen, and no part of the text. */
export function inlayHints(ask: Ask): Extension {
  return ViewPlugin.define((view) => new Hints(view, ask), { decorations: (hints) => hints.shown });
}

class Hints {
  shown: DecorationSet = Decoration.none;
  private isGone = false;

  constructor(
    view: EditorView,
    private readonly ask: Ask,
  ) {
    void this.look(view);
  }

  update({ view, changes, viewportChanged, transactions }: ViewUpdate): void {
    this.shown = this.shown.map(changes);
    const effects = transactions.flatMap((one) => one.effects);
    for (const effect of effects) if (effect.is(came)) this.shown = effect.value;
    if (viewportChanged || effects.some((effect) => effect.is(checkedAgain))) void this.look(view);
  }

  destroy(): void {
    this.isGone = true;
  }

  /** Of the lines that are drawn; an answer about a text that has changed meanwhile is of no use. */
  private async look(view: EditorView): Promise<void> {
    const { doc } = view.state;
    const { from, to } = view.viewport;
    const end = doc.lineAt(to);
    const range = {
      start: { line: doc.lineAt(from).number - 1, character: 0 },
      end: { line: end.number - 1, character: end.length },
    };
    const hints = await this.ask(range);
    if (hints === null || this.isGone || view.state.doc !== doc) return;
    const widgets = hints.map((hint) =>
      Decoration.widget({ widget: new HintWidget(hint), side: 1 }).range(offsetIn(doc, hint.position)),
    );
    view.dispatch({ effects: came.of(Decoration.set(widgets, true)) });
  }
}

class HintWidget extends WidgetType {
  private readonly words: string;
  private readonly why: string;

  constructor({ label, tooltip = '' }: InlayHint) {
    super();
    this.words = typeof label === 'string' ? label : label.map(({ value }) => value).join('');
    this.why = typeof tooltip === 'string' ? tooltip : tooltip.value;
  }

  override eq({ words, why }: HintWidget): boolean {
    return words === this.words && why === this.why;
  }

  /** The words are drawn by its style: whoever copies the text, or has it read out, gets the text alone. */
  override toDOM(): HTMLElement {
    return element('span', {
      class: 'hint',
      title: this.why,
      'data-words': this.words,
      'aria-hidden': 'true',
    });
  }
}
