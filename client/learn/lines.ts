import type { BoardLesson, BoardMeanings } from '../../server/src/lsp/learn-protocol';
import { element } from '../page/element';
import { ask } from './extension-side';
import { labelledButton } from './fields';

/** Lines that were not understood, each with what it may be said to be; null where there are none. */
export function leftLines(
  { left, leftCount }: BoardMeanings,
  announce: (text: string) => void,
): HTMLElement | null {
  if (left.length === 0) return null;
  const more = leftCount - left.length;
  return element(
    'section',
    { class: 'left-lines' },
    element('header', {}, element('h2', {}, `Lines that were not understood (${leftCount})`)),
    element(
      'p',
      { class: 'aside' },
      'Say what a line is, and all like it are read so. Where the line does not show it, type its value, what its comment begins with, or its group.',
    ),
    element(
      'ul',
      {},
      ...left.map(({ line, text, reason }) => leftLine(line, text, reason, announce)),
      ...(more === 0 ? [] : [element('li', { class: 'aside' }, `and ${more} more`)]),
    ),
  );
}

const kinds = [
  ['setting', 'A Setting'],
  ['comment', 'A Comment'],
  ['heading', 'A Heading'],
] as const;

/** What a line may be said to be. */
export function leftLine(
  line: number,
  text: string,
  reason: string,
  announce: (text: string) => void,
): HTMLElement {
  const answer = element('div', { class: 'aside', role: 'status' }, reason);
  const part = element('input', {
    type: 'text',
    'aria-label': `Its part, of line ${line + 1}`,
    placeholder: 'its value, name=value, mark or group',
  });
  const say = async (kind: BoardLesson['kind']): Promise<void> => {
    const told = await ask('lesson', { lesson: { kind, line, part: part.value.trim() } });
    announce(told.kind === 'taught' ? told.said : told.message);
    if (told.kind === 'taught') return;
    answer.textContent = told.message;
    if (told.asks) part.focus();
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
        labelledButton(title, `Line ${line + 1} is ${title.toLowerCase()}`, () => void say(kind)),
      ),
      part,
    ),
  );
}
