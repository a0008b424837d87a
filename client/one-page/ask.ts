import { element } from '../page/element';

/** A small window over the page; it closes by Escape, by its cross, or when it has its answer. */
function openDialog<T>(
  title: string,
  fill: (answer: (value: T | undefined) => void) => readonly (HTMLElement | null)[],
): Promise<T | undefined> {
  return new Promise((resolve) => {
    let given: T | undefined;
    const answer = (value: T | undefined) => {
      given = value;
      dialog.close();
    };
    const close = element(
      'button',
      { type: 'button', class: 'close', 'aria-label': 'Close', onclick: () => answer(undefined) },
      '✕',
    );
    const dialog = element(
      'dialog',
      { class: 'ask', 'aria-label': title },
      element('div', { class: 'ask-head' }, element('h2', {}, title), close),
    );
    dialog.append(...fill(answer).filter((one) => one !== null));
    dialog.addEventListener('close', () => {
      dialog.remove();
      resolve(given);
    });
    dialog.addEventListener('click', (event) => {
      if (event.target === dialog) answer(undefined);
    });
    document.body.append(dialog);
    dialog.showModal();
  });
}

/** One of what can be picked; without `pick` a heading of those below it. */
export interface PickItem<T> {
  readonly label: string;
  readonly description?: string | undefined;
  readonly detail?: string | undefined;
  readonly pick?: T;
}

/** So many can be seen at a glance; of more, a person types a part of a word. */
const mostAtAGlance = 12;

export function pickOne<T>(
  title: string,
  choices: readonly PickItem<T>[],
  hint?: string,
): Promise<T | undefined> {
  return openDialog<T>(title, (answer) => {
    const rows = choices.map((choice) => ({ choice, shown: rowOf(choice, answer) }));
    const list = element('div', { class: 'choices-list' }, ...rows.map(({ shown }) => shown));
    const narrow = (typed: string) => {
      for (const { choice, shown } of rows)
        shown.hidden = typed !== '' && !wordsOf(choice).includes(typed.toLowerCase());
    };
    const field = element('input', {
      type: 'search',
      'aria-label': 'Narrow the list',
      placeholder: 'Type a part of a word',
      oninput: () => narrow(field.value),
    });
    return [
      hint === undefined ? null : element('p', { class: 'aside' }, hint),
      choices.length > mostAtAGlance ? field : null,
      list,
    ];
  });
}

function wordsOf({ label, description = '', detail = '' }: PickItem<unknown>): string {
  return `${label} ${description} ${detail}`.toLowerCase();
}

function rowOf<T>(choice: PickItem<T>, answer: (value: T) => void): HTMLElement {
  const { label, description, detail, pick } = choice;
  if (pick === undefined) return element('h3', {}, label);
  return element(
    'button',
    { type: 'button', class: 'choice', onclick: () => answer(pick) },
    element('span', {}, element('b', {}, label), description === undefined ? null : ` ${description}`),
    detail === undefined ? null : element('small', {}, detail),
  );
}

export interface TypedAsked {
  readonly title: string;
  readonly prompt?: string | undefined;
  readonly value?: string | undefined;
  readonly placeHolder?: string | undefined;
  /** A text of many lines, such as what a board has printed. */
  readonly isLong?: boolean;
  /** What is wrong with what is typed; nothing if it is fine. */
  readonly fault?: (typed: string) => string | null | undefined | Promise<string | null | undefined>;
}

export function askText({ title, prompt, value = '', placeHolder = '', isLong = false, fault }: TypedAsked) {
  return openDialog<string>(title, (answer) => {
    const attributes = {
      'aria-label': title,
      placeholder: placeHolder,
      spellcheck: 'false',
      autocapitalize: 'off',
    };
    const field = isLong
      ? element('textarea', { ...attributes, rows: '12' })
      : element('input', { ...attributes, type: 'text' });
    field.value = value;
    const wrong = element('p', { class: 'wrong', role: 'alert' });
    let asked = 0;
    const look = async () => {
      asked += 1;
      const mine = asked;
      const said = (await fault?.(field.value)) ?? null;
      if (mine === asked) wrong.textContent = said ?? '';
      return said === null || said === '';
    };
    field.addEventListener('input', () => void look());
    const form = element(
      'form',
      {
        onsubmit: (event) => {
          event.preventDefault();
          void look().then((isFine) => isFine && answer(field.value));
        },
      },
      prompt === undefined ? null : element('p', { class: 'aside' }, prompt),
      field,
      wrong,
      element('div', { class: 'buttons' }, element('button', { type: 'submit', class: 'main' }, 'OK')),
    );
    return [form];
  });
}

/** A question that must be answered before anything else. */
export function askButtons(message: string, detail: string, buttons: readonly string[]) {
  return openDialog<string>(message, (answer) => [
    detail === '' ? null : element('p', { class: 'detail' }, detail),
    element(
      'div',
      { class: 'buttons' },
      ...buttons.map((title, index) =>
        element(
          'button',
          { type: 'button', class: index === 0 ? 'main' : false, onclick: () => answer(title) },
          title,
        ),
      ),
    ),
  ]);
}

/** Files that a person picks on this device; none where they leave. */
export function askFiles(endings: readonly string[], isMany: boolean): Promise<readonly File[]> {
  return new Promise((resolve) => {
    const field = element('input', {
      type: 'file',
      hidden: true,
      multiple: isMany,
      accept: endings.length === 0 ? false : endings.map((ending) => `.${ending}`).join(','),
      onchange: () => done([...(field.files ?? [])]),
      oncancel: () => done([]),
    });
    const done = (files: readonly File[]) => {
      field.remove();
      resolve(files);
    };
    document.body.append(field);
    field.click();
  });
}

/** ms. So long a message is seen that asks nothing. */
const seen = 9000;

/** So many messages are seen at a time: the oldest makes room. */
const mostMessages = 2;

/** Says something at the edge of the page; resolves with the button that was pressed, if one was. */
export function showMessage(
  level: 'information' | 'warning' | 'error',
  message: string,
  buttons: readonly string[] = [],
): Promise<string | undefined> {
  return new Promise((resolve) => {
    const done = (answer?: string) => {
      clearTimeout(timer);
      note.remove();
      resolve(answer);
    };
    const note = element(
      'div',
      { class: `toast ${level}` },
      element('p', {}, message),
      ...buttons.map((title) => element('button', { type: 'button', onclick: () => done(title) }, title)),
      element(
        'button',
        { type: 'button', class: 'close', 'aria-label': 'Close', onclick: () => done() },
        '✕',
      ),
    );
    const timer =
      level === 'information' && buttons.length === 0 ? setTimeout(() => done(), seen) : undefined;
    const notes = document.getElementById('notes');
    notes?.append(note);
    const all = notes?.querySelectorAll<HTMLElement>('.toast:not(.working) > .close') ?? [];
    for (const close of [...all].slice(0, -mostMessages)) close.click();
  });
}

/** What was said before has been seen by somebody who turns to something else. */
export function closeMessages(): void {
  for (const close of document.querySelectorAll<HTMLElement>('#notes .close')) close.click();
}

/** Says that something is at work until it is done, where that takes a moment. */
export async function whileWorking<T>(title: string, work: () => Promise<T>): Promise<T> {
  const note = element('div', { class: 'toast working' }, element('p', {}, `${title}…`));
  const timer = setTimeout(() => document.getElementById('notes')?.append(note), 500);
  try {
    return await work();
  } finally {
    clearTimeout(timer);
    note.remove();
  }
}
