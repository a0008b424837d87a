import type { Finding, Fix } from '../../server/src/checks/report/finding';
import type { Craft } from '../../server/src/craft/craft';
import { valueText } from '../../server/src/craft/value-text';
import { craftOf, findingsOf } from './findings';

type Files = Readonly<Record<string, string>>;

/** What a craft holds for a parameter, as a script would write it: `not set`, or `unknown` where it can't be told. */
export function held(craft: Craft, path: string, pack: string | null = null): string {
  const setting = craft.setting(path, pack);
  if (setting === undefined) return 'not set';
  return setting.value === null ? 'unknown' : valueText(setting.value, setting.found.parameter);
}

export function heldIn(text: string, path: string, pack: string | null = null, files: Files = {}): string {
  return held(craftOf(text, files), path, pack);
}

/**
 * The id, the marked text and the line after each fix, for every finding in a script but constants that nothing uses:
 * scripts that are tried with one value after the other have some at hand.
 */
export function lineFindings(text: string, files: Files = {}): readonly (readonly string[])[] {
  const found = findingsOf(craftOf(text, files)).filter(({ check }) => check.id !== 'line/constant-unused');
  return found.map((finding) => {
    const { line, start, end } = finding.place;
    const marked = line.text.slice(start, end);
    const sure = finding.fixes.filter(({ isHelp }) => isHelp !== true);
    return [finding.check.id, marked, ...sure.map((fix) => lineAfter(finding, fix))];
  });
}

function lineAfter({ place }: Finding, { edits }: Fix): string {
  return [...edits]
    .filter((edit) => edit.place.line === place.line)
    .sort((one, other) => other.place.start - one.place.start)
    .reduce(
      (text, edit) => text.slice(0, edit.place.start) + edit.newText + text.slice(edit.place.end),
      place.line.text,
    );
}
