import { Tabs } from './tabs';

/** Where one is on a narrow page, which shows one of these at a time. */
type NarrowView = 'script' | 'findings' | 'views';

/** The page's own frame: its bar, its places, its tabs. */
export class Shell {
  readonly tabs: Tabs;

  constructor() {
    this.tabs = new Tabs(part('tabs'), part('panes'), () => this.at('views'));
    for (const button of document.querySelectorAll<HTMLElement>('.places button'))
      button.addEventListener('click', () => this.at(button.dataset.at as NarrowView));
    this.at('script');
  }

  at(place: NarrowView): void {
    document.body.dataset.at = place;
    for (const button of document.querySelectorAll<HTMLElement>('.places button'))
      if (button.dataset.at === place) button.setAttribute('aria-current', 'true');
      else button.removeAttribute('aria-current');
    if (place === 'findings') part('findings').scrollIntoView({ block: 'nearest' });
  }

  named(name: string): void {
    part('script-name').textContent = name;
    document.title = `${name} · Propsoff`;
  }

  trouble(why: string | null): void {
    part('trouble').hidden = why === null;
    part('trouble').textContent = why ?? '';
  }
}

/** An element that the page's own markup has. */
export function part(id: string): HTMLElement {
  const found = document.getElementById(id);
  if (found === null) throw new Error(`the page has no ${id}`);
  return found;
}
