import { element } from '../page/element';
import { markdownIn } from './markdown';

export interface TabContent {
  readonly element: HTMLElement;
}

export interface Tab {
  readonly title: string;
  show(): void;
  close(): void;
  rename(title: string): void;
}

/** What stands beside the script, one at a time: the build sheet and what was opened since. */
export class Tabs {
  private readonly tabs: TabOnPage[] = [];
  private shown: TabOnPage | null = null;

  /** `onShown`: the tabs are wanted in sight. */
  constructor(
    private readonly list: HTMLElement,
    private readonly panes: HTMLElement,
    private readonly onShown: () => void,
  ) {
    list.addEventListener('keydown', (event) => this.moved(event));
  }

  /** `onClosed`: null for what can't be closed. */
  add(title: string, { element: content }: TabContent, onClosed: (() => void) | null): Tab {
    const tab = new TabOnPage(title, content, this.tabs.length === 0 ? 'first' : 'later', {
      show: () => this.show(tab),
      close: onClosed === null ? null : () => this.close(tab, onClosed),
    });
    this.tabs.push(tab);
    this.list.append(tab.head);
    this.panes.append(tab.pane);
    if (this.tabs.length === 1) this.select(tab);
    else this.show(tab);
    return tab;
  }

  private show(tab: TabOnPage): void {
    this.select(tab);
    this.onShown();
  }

  private select(tab: TabOnPage): void {
    this.shown?.select(false);
    this.shown = tab;
    tab.select(true);
    tab.head.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }

  private close(tab: TabOnPage, onClosed: () => void): void {
    this.tabs.splice(this.tabs.indexOf(tab), 1);
    tab.head.remove();
    tab.pane.remove();
    const next = this.tabs.at(-1);
    if (this.shown === tab && next !== undefined) this.select(next);
    onClosed();
  }

  /** Closes what is shown, where that can be closed. */
  closeShown(): void {
    this.shown?.close();
  }

  private moved(event: KeyboardEvent): void {
    if (event.key === 'Delete') {
      this.closeShown();
      this.shown?.button.focus();
    }
    const step = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
    if (step === undefined || this.shown === null) return;
    const next = this.tabs.at((this.tabs.indexOf(this.shown) + step) % this.tabs.length);
    next?.show();
    next?.button.focus();
  }
}

let count = 0;

class TabOnPage implements Tab {
  readonly head: HTMLElement;
  readonly button: HTMLElement;
  readonly pane: HTMLElement;

  constructor(
    public title: string,
    content: HTMLElement,
    which: 'first' | 'later',
    private readonly does: { readonly show: () => void; readonly close: (() => void) | null },
  ) {
    count += 1;
    const id = `pane-${count}`;
    this.button = element(
      'button',
      {
        type: 'button',
        role: 'tab',
        id: `${id}-tab`,
        'aria-controls': id,
        tabindex: '-1',
        onclick: does.show,
      },
      title,
    );
    // A list of tabs holds nothing but tabs: those who don't see the cross have a key and the menu.
    const close =
      does.close === null
        ? null
        : element(
            'span',
            { class: 'close', 'aria-hidden': 'true', title: 'Close', onclick: does.close },
            '✕',
          );
    if (does.close !== null) this.button.setAttribute('aria-keyshortcuts', 'Delete');
    this.head = element('div', { class: `tab ${which}`, role: 'presentation' }, this.button, close);
    this.pane = element(
      'div',
      { id, class: 'pane', role: 'tabpanel', 'aria-labelledby': `${id}-tab` },
      content,
    );
    this.pane.hidden = true;
  }

  select(isShown: boolean): void {
    this.button.setAttribute('aria-selected', String(isShown));
    this.button.tabIndex = isShown ? 0 : -1;
    this.head.classList.toggle('shown', isShown);
    this.pane.hidden = !isShown;
  }

  show(): void {
    this.does.show();
  }

  close(): void {
    this.does.close?.();
  }

  rename(title: string): void {
    this.title = title;
    this.button.textContent = title;
  }
}

/** A text that is only read: as it is, or as Markdown. */
export function textContent(kind: 'plain' | 'markdown') {
  const inside = element(kind === 'plain' ? 'pre' : 'article', { class: `read-only ${kind}`, tabindex: '0' });
  return {
    content: { element: inside },
    show: (text: string) => {
      if (kind === 'plain') inside.textContent = text;
      else inside.replaceChildren(markdownIn(document, text));
    },
  };
}
