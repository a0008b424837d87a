import type { Place } from '../checks/report/finding';
import { placeIn } from '../checks/report/place';
import type { PlacedLine } from '../craft/setting';
import type { CraftView } from '../craft/view';

/** Where a figure or a finding leads in a script. 0-based, UTF-16. */
export interface Target {
  readonly uri: string;
  readonly line: number;
  readonly character: number;
}

export function targetOf({ script, line, start }: Place): Target {
  return { uri: script.uri, line: script.lineNumber(line), character: start };
}

/** The line that sets a parameter; null where none does. */
export function targetOfPath(view: CraftView, path: string): Target | null {
  const origin = view.setting(path)?.origin;
  return origin === undefined ? null : targetOfLine(origin);
}

/** The value on a line. */
export function targetOfLine(line: PlacedLine): Target {
  return targetOf(placeIn(line, 'value'));
}
