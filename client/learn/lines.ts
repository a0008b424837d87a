import type { BoardLesson, BoardMeanings } from '../../server/src/lsp/board-protocol';
import { element } from '../page/element';
import { ask } from './extension-side';
import { labelledButton } from './fields';

/** Lines that were not understood, each with what it may be said to be; null where there are none. */
export function leftLines(
  { left, leftCount }: BoardMeanings,
  tell: (text: string) => void,
): HTMLElement | null {
  if (left.length === 0) return null;
  const more = leftCount - left.length;
  return element(
    'section',
    { class: 'left-lines' },
    element('header', {}, element('h2', {}, `Lines that were not understood (${leftCount})`)),
    element(
      'ul',
      {},
      ...left.map(({ line, text, reason }) => leftLine(line, text, reason, tell)),
      ...(more === 0 ? [] : [element('li', { class: 'aside' }, `and ${more} more`)]),
    ),
  );
}

const kinds = [
  ['setting', 'A Setting'],
  ['comment', 'A Comment'],
  ['heading', 'A Heading'],
] as const;

function leftLine(line: number, text: string, reason: string, tell: (text: string) => void): HTMLElement {
  const answer = element('div', { class: 'aside' }, reason);
  const say = async (kind: BoardLesson['kind'], part: string): Promise<void> => {
    const told = await ask('lesson', { lesson: { kind, line, part } });
    tell(told.kind === 'taught' ? told.said : told.message);
    if (told.kind === 'taught') return;
    answer.replaceChildren(told.message, ...(told.asks && part === '' ? [partField(kind, say)] : []));
  };
  return element(
    'li',
    {},
    element('div', {}, element('span', { class: 'aside' }, `${line + 1} `), element('code', {}, text)),
    answer,
    element(
      'div',
      { class: 'line' },
      ...kinds.map(([kind, title]) =>
        labelledButton(title, `Line ${line + 1} is ${title.toLowerCase()}`, () => void say(kind, '')),
      ),
    ),
  );
}

/** What the line does not show by itself. */
function partField(
  kind: BoardLesson['kind'],
  say: (kind: BoardLesson['kind'], part: string) => Promise<void>,
): HTMLElement {
  const field = element('input', { type: 'text', 'aria-label': 'The part of the line' });
  return element(
    'form',
    {
      class: 'line',
      onsubmit: (event) => {
        event.preventDefault();
        void say(kind, field.value);
      },
    },
    field,
    element('button', { type: 'submit' }, 'Say It'),
  );
}
