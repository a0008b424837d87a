import type { WayToWrite } from '../../server/src/sheet/not-known';
import { writeButtons } from '../page/write-buttons';
import { send } from './extension-side';

/** Presses that write lines into the sheet's script; null where there is nothing to write. */
export function wayButtons(ways: readonly WayToWrite[]): HTMLElement | null {
  return ways.length === 0 ? null : writeButtons(ways, (paths) => send({ kind: 'write-lines', paths }));
}
