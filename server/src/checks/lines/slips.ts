import type { Craft } from '../../craft/craft';
import type { Problem } from '../../language/ast';
import { problem, replacement } from '../../language/problem';
import type { ScriptLine } from '../../language/script-line';
import { couldHold, knownSetting } from './setting';

const digitsFor: ReadonlyMap<string, string> = new Map([
  ['l', '1'],
  ['I', '1'],
  ['o', '0'],
  ['O', '0'],
]);

/** `l80 Hz`: a letter that looks like a digit begins a name, and the unit behind it surprises. */
export function letterForDigit(_: Craft, { text }: ScriptLine, found: Problem): Problem | null {
  const written = /(?:^|[=\s([,])([lIoO])(\d[\d.]*)\s*$/.exec(text.slice(0, found.start));
  if (written === null) return null;
  const [whole, letter = '', rest = ''] = written;
  const digit = digitsFor.get(letter) ?? letter;
  const start = written.index + whole.indexOf(letter);
  const span = { start, end: start + 1 };
  const values = { found: `the letter \`${letter}\``, expected: `the digit ${digit} of a number` };
  return problem('line/not-understood', span, values, [replacement(`Write {to}${rest}`, span, digit)]);
}

/** `1700 to 2100 us`: what people say between the ends of a range. */
export function saidRange(_: Craft, __: ScriptLine, found: Problem): Problem | null {
  if (!['to', 'till', 'until'].includes(found.values.unit ?? '')) return null;
  const values = { found: `\`${found.values.unit}\``, expected: '`..` between the ends of a range' };
  return problem('line/not-understood', found, values, [replacement('Write `..`', found, '..')]);
}

/** `8 mhz` for a gyro rate: of the units that are spelled alike, the one with which the value is possible. */
export function possibleUnit(craft: Craft, line: ScriptLine, found: Problem): Problem | null {
  const known = knownSetting(craft, line);
  const { value } = known?.statement ?? {};
  if (known === null || value !== null) return null;
  const before = numberBefore(line.text, found.start);
  if (before === '') return null;
  const written = (found.values.unit ?? '').toLowerCase();
  const candidates = [...(found.values.suggestion ?? '').split(', '), ...unitsOf(known.found.parameter)];
  const possible = candidates.filter(
    (unit) => unit !== '' && couldHold(craft, known.found, `${before} ${unit}`),
  );
  const nearest = [...new Set(possible)].sort(
    (one, other) => Number(isLike(other, written)) - Number(isLike(one, written)),
  );
  const [suggestion] = nearest;
  if (suggestion === undefined || suggestion === found.values.suggestion) return null;
  return problem(
    found.id,
    found,
    { ...found.values, suggestion },
    nearest.slice(0, 2).map((unit) => replacement('Write {to}', found, unit)),
  );
}

/** The digits that stand before a place, blanks between; read backwards, so that it costs no more than they are long. */
function numberBefore(text: string, place: number): string {
  const before = text.slice(0, place).trimEnd();
  let start = before.length;
  while (start > 0 && '.0123456789'.includes(before.charAt(start - 1))) start -= 1;
  return before.slice(start);
}

function unitsOf(parameter: object): readonly string[] {
  return 'unit' in parameter && typeof parameter.unit === 'string' ? [parameter.unit] : [];
}

function isLike(unit: string, written: string): boolean {
  return unit.toLowerCase() === written;
}
