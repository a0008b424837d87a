import type { WayToWrite } from '../../server/src/sheet/not-known';
import { element } from './element';

/** Presses that write lines into the script, to be filled in. */
export function writeButtons(
  ways: readonly WayToWrite[],
  write: (paths: readonly string[]) => void,
): HTMLElement {
  const buttons = ways.map(({ title, paths }) =>
    element('button', { type: 'button', onclick: () => write(paths) }, title),
  );
  return element('p', { class: 'ways' }, ...buttons);
}
