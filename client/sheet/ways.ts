import type { WayToWrite } from '../../server/src/sheet/not-known';
import { element } from '../page/element';
import { send } from './extension-side';

/** Presses that write lines into the script, to be filled in; null where there is nothing to write. */
export function wayButtons(ways: readonly WayToWrite[]): HTMLElement | null {
  if (ways.length === 0) return null;
  const buttons = ways.map(({ title, paths }) =>
    element('button', { type: 'button', onclick: () => send({ kind: 'write-lines', paths }) }, title),
  );
  return element('p', { class: 'ways' }, ...buttons);
}
