import type { Told } from '../../server/src/lsp/recording-protocol';
import type { RecordingQuestion } from '../../server/src/sheet/compare/recordings';
import { element } from '../page/element';

/** What a pilot asks, in this order. */
export const questions: Readonly<Record<RecordingQuestion, string>> = {
  shake: 'Does it shake, and from what?',
  motors: 'Do the motors work alike?',
  pack: 'What does the pack give?',
  hover: 'How did it hover?',
  link: 'Did the link hold?',
};

/** One of the pilot's questions with its short answer, what answers it at length, and what that rests on. */
export function question<T>(
  id: RecordingQuestion,
  answer: Told<T>,
  short: (told: T) => string,
  inside: (told: T) => readonly (HTMLElement | null)[],
): HTMLElement {
  const brief = 'reason' in answer ? 'not known' : short(answer.told);
  return element(
    'section',
    { id, 'aria-labelledby': `${id}-title` },
    element(
      'h2',
      { id: `${id}-title` },
      questions[id],
      brief === '' ? null : element('span', { class: 'brief' }, ` ${brief}`),
    ),
    ...('reason' in answer
      ? [withheld(answer.reason, answer.advice)]
      : [...inside(answer.told), restsOn(answer.basis)]),
  );
}

/** Why something is not told, and what to do for it. */
export function withheld(reason: string, advice: string): HTMLElement {
  return element('p', { class: 'withheld' }, reason, ' ', element('span', { class: 'aside' }, advice));
}

/** What an answer rests on, as a sentence. */
export function restsOn(basis: string): HTMLElement {
  return element('p', { class: 'aside' }, `Rests on ${basis}${basis.endsWith('.') ? '' : '.'}`);
}
