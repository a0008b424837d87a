import { benchCardRequest } from '../../server/src/lsp/flight-protocol';
import { takenFrom } from '../../server/src/sheet/bench-card/taken';
import { about } from '../src/about';
import { cardKey } from '../src/bench-card';
import { showMessage } from './ask';
import { thePage } from './host/page';

/** Prints the bench card of the script that is shown, as the page that can be saved: A4 or A5, whatever the theme. */
export async function printCard(): Promise<void> {
  const { texts, client, store } = thePage();
  const script = texts.active?.place;
  const answer =
    script === undefined
      ? null
      : await client.request(benchCardRequest, {
          ...about(script),
          taken: takenFrom(store.remembered(cardKey(script))),
        });
  if (answer === null) {
    void showMessage('information', 'Open a craft script first: the card is made from it.');
    return;
  }
  const frame = document.createElement('iframe');
  frame.className = 'printed';
  frame.title = 'Bench card to print';
  frame.srcdoc = '<!doctype html><html lang="en"><head></head><body></body></html>';
  frame.addEventListener('load', () => fill(frame, answer.page), { once: true });
  document.body.append(frame);
}

function fill(frame: HTMLIFrameElement, page: string): void {
  const { contentDocument: made, contentWindow: view } = frame;
  if (made === null || view === null) return;
  // Styles in markup are refused here, whatever they are: they are taken out of the page first.
  const { bare, styles } = withoutStyles(page);
  const card = new DOMParser().parseFromString(bare, 'text/html');
  made.title = card.title;
  made.adoptedStyleSheets = styles.map((style) => {
    const sheet = new (view as Window & typeof globalThis).CSSStyleSheet();
    sheet.replaceSync(style);
    return sheet;
  });
  made.body.replaceChildren(...card.body.childNodes);
  view.addEventListener('afterprint', () => frame.remove());
  view.print();
}

/** A page of ours, and what stood in its styles. */
function withoutStyles(page: string): { readonly bare: string; readonly styles: readonly string[] } {
  const pieces = page.split('</style>');
  const last = pieces.pop() ?? '';
  const parted = pieces.map((piece) => {
    const start = piece.lastIndexOf('<style');
    return { before: piece.slice(0, start), style: piece.slice(piece.indexOf('>', start) + 1) };
  });
  return {
    bare: parted.map(({ before }) => before).join('') + last,
    styles: parted.map(({ style }) => style),
  };
}
