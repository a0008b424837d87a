import { EventEmitter } from './host/values';
import { follow } from './theme';

/**
 * A page of the extension, run as it is in a frame of its own: the same script, style and markup, which may do no more
 * than this page may. It is given what an editor gives it: a way to send messages, and the theme's colours.
 */
export class PageFrame {
  readonly element = document.createElement('iframe');
  private readonly sent = new EventEmitter<never>();
  /** The page says something. */
  readonly onSent = this.sent.event;

  constructor(private readonly parts: ReadonlyMap<string, string>) {}

  /** `html`: the page as the extension writes it; the scripts and styles that it names are those inside this page. */
  load(html: string): void {
    this.element.addEventListener('load', () => this.fill(html), { once: true });
    this.element.srcdoc = '<!doctype html><html lang="en"><head></head><body></body></html>';
  }

  private fill(html: string): void {
    const asked = new DOMParser().parseFromString(html, 'text/html');
    const { contentDocument: made, contentWindow: view } = this.element;
    if (made === null || view === null) return;
    this.element.title = asked.title;
    made.title = asked.title;
    const names = (selector: string, attribute: string) =>
      [...asked.querySelectorAll(selector)].map(
        (one) => one.getAttribute(attribute)?.split('/').at(-1) ?? '',
      );
    follow(
      made,
      names('link[rel=stylesheet]', 'href').map((name) => this.parts.get(name) ?? ''),
    );
    Object.assign(view, {
      acquireVsCodeApi: () => ({ postMessage: (message: never) => this.say(message) }),
    });
    for (const script of asked.querySelectorAll('script')) script.remove();
    made.body.replaceChildren(...asked.body.children);
    const script = made.createElement('script');
    script.textContent = this.parts.get('views.js') ?? '';
    made.body.append(script);
  }

  post(message: unknown): void {
    // As between an editor and its pages: a copy, in a turn of its own.
    this.element.contentWindow?.postMessage(message, '*');
  }

  private say(message: never): void {
    const copy = structuredClone(message);
    queueMicrotask(() => this.sent.fire(copy));
  }
}
