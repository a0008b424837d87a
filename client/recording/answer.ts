import type { MeasuredAnswer } from '../../server/src/lsp/recording-protocol';
import {
  type RecordingQuestion,
  recordingQuestions,
} from '../../server/src/sheet/compare/recording-questions';
import { element } from '../page/element';

/** One of the pilot's questions with its short answer, what answers it at length, and what that rests on. */
export function question<T>(
  id: RecordingQuestion,
  answer: MeasuredAnswer<T>,
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
      recordingQuestions[id],
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
