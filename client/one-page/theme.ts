import { isWide, wide } from './width';

export type Theme = 'light' | 'dark';

const system = matchMedia('(prefers-color-scheme: dark)');
/** What a person has chosen; null: as the system has it. */
let chosen: Theme | null = null;
/** This page and its frames have the same colours. */
const colours = document.getElementById('theme')?.textContent ?? '';
const followers = new Set<WeakRef<Document>>();

function theme(): Theme {
  return chosen ?? (system.matches ? 'dark' : 'light');
}

export function chooseTheme(to: Theme | null): void {
  chosen = to;
  apply();
}

/** The other one; where the system has that one itself, the page follows it again. Gives what is to be remembered. */
export function switchTheme(): Theme | null {
  const other = theme() === 'dark' ? 'light' : 'dark';
  chooseTheme(system.matches === (other === 'dark') ? null : other);
  return chosen;
}

/** Has a document take the theme's colours, with styles of its own. */
export function follow(one: Document, styles: readonly string[]): void {
  const view = one.defaultView;
  if (view === null) return;
  one.adoptedStyleSheets = [colours, ...styles].map((text) => {
    // A sheet belongs to the window that made it.
    const sheet = new (view as typeof window).CSSStyleSheet();
    sheet.replaceSync(text);
    return sheet;
  });
  followers.add(new WeakRef(one));
  apply();
}

function apply(): void {
  document.documentElement.dataset.theme = theme();
  for (const follower of followers) {
    const one = follower.deref();
    if (one === undefined) followers.delete(follower);
    else {
      one.documentElement.dataset.theme = theme();
      // A frame does not see how much room the page has.
      one.documentElement.toggleAttribute('data-narrow', !isWide());
      // As an editor says it to the pages that it shows.
      for (const kind of ['light', 'dark']) one.body.classList.toggle(`vscode-${kind}`, kind === theme());
    }
  }
}

system.addEventListener('change', apply);
wide.addEventListener('change', apply);
