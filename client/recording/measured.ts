import type { MeasuredSpan } from '../../server/src/lsp/recording-protocol';
import { element } from '../page/element';
import { likelyText, spanText } from './measured-text';

/** What is likely, with its span set back. */
export function measuredWords(measured: MeasuredSpan): HTMLElement {
  const span = spanText(measured);
  return element(
    'span',
    { class: 'figure' },
    element('b', {}, likelyText(measured)),
    span === '' ? null : element('span', { class: 'aside' }, span),
  );
}
