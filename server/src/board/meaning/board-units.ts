import { findDimensionName } from '../../units/dimension-names';
import { parseUnit } from '../../units/unit';

/** How a number is counted, as far as its unit says so. */
export interface UnitCount {
  readonly unit: string;
  /** What the value in that unit is multiplied by. */
  readonly scale: number;
}

/** What boards write for the units of a script, in small letters. */
const written: readonly (readonly [unit: string, spellings: string])[] = [
  ['s', 'sec secs second seconds sekunde sekunden seconde secondes'],
  ['ms', 'msec msecs millis millisecond milliseconds millisekunden'],
  ['us', '\u00b5s \u03bcs usec usecs micros microsecond microseconds mikrosekunden'],
  ['min', 'mins minute minutes minuten'],
  ['h', 'hour hours stunde stunden heure heures'],
  ['Hz', 'hz hertz 1/s'],
  ['kHz', 'khz kilohertz'],
  ['%', 'pct percent prozent pourcent'],
  ['deg', '\u00b0 degree degrees grad degr\u00e9s'],
  ['deg/s', '\u00b0/s dps deg/sec degrees/s grad/s'],
  ['deg/s^2', '\u00b0/s\u00b2 deg/s\u00b2 \u00b0/s^2'],
  ['rpm', 'rpm u/min tr/min 1/min'],
  ['degC', '\u00b0c celsius'],
  ['degF', '\u00b0f fahrenheit'],
  ['K', 'kelvin'],
  ['V', 'volt volts'],
  ['mV', 'millivolt millivolts'],
  ['A', 'amp amps ampere amperes'],
  ['mA', 'milliamp milliamps milliampere'],
  ['ohm', '\u03c9 \u2126 ohms'],
  ['kohm', 'k\u03c9 k\u2126 kohms'],
  ['m', 'metre metres meter meters m\u00e8tre m\u00e8tres'],
  ['cm', 'centimetres centimeters zentimeter'],
  ['mm', 'millimetres millimeters millimeter'],
  ['m/s^2', 'm/s\u00b2'],
  ['cm^2', 'cm\u00b2'],
  ['g', 'gram grams gramm grammes'],
];

const unitOfSpelling: ReadonlyMap<string, string> = new Map(
  written.flatMap(([unit, spellings]) => spellings.split(' ').map((one) => [one, unit] as const)),
);

/** Parts of one, as words. */
const parts: readonly (readonly [share: number, words: RegExp])[] = [
  [0.1, /^(?:tenths?|zehntel|dixi\u00e8mes?)(?: (?:of |von |de )?(?:an? )?|$)/i],
  [0.01, /^(?:hundredths?|hundertstel|centi\u00e8mes?)(?: (?:of |von |de )?(?:an? )?|$)/i],
  [0.001, /^(?:thousandths?|tausendstel|milli\u00e8mes?)(?: (?:of |von |de )?(?:an? )?|$)/i],
];

const longest = 60;

/**
 * How numbers are counted beside which a board writes this: `Hz`, `0.1 V`, `tenths of a volt`, `‰`. Null where that is
 * no unit of the dimension. `own`: the unit for a part of one without a unit, such as `1/100`.
 */
export function countedIn(text: string, dimensionName: string, own: string): UnitCount | null {
  const said = text.trim();
  if (said === '' || said.length > longest) return null;
  const plain = unitNamed(said, dimensionName);
  if (plain !== null) return { unit: plain, scale: 1 };
  if (dimensionName === 'ratio' && /^(?:\u2030|per ?mille?|promille)$/i.test(said))
    return { unit: '%', scale: 10 };
  const [share, rest] = shareBefore(said) ?? sharedUnit(said) ?? [null, ''];
  if (share === null || !(share > 0)) return null;
  const unit = rest === '' ? unitOfPart(said, dimensionName, own) : unitNamed(rest, dimensionName);
  return unit === null ? null : { unit, scale: Number((1 / share).toPrecision(12)) };
}

/** `1/1024` of a share is a part of one, and of anything else of its own unit. */
function unitOfPart(said: string, dimensionName: string, own: string): string {
  return dimensionName === 'ratio' && /^1\//.test(said) ? '' : own;
}

/** Units of which boards count in tenths and hundredths by a prefix of the SI, `dHz` or `cV`; those of minutes and hours mean other things. */
const prefixed = /^([dc])(Hz|V|A|s|deg|deg\/s|degC)$/;

/** Whether a word is a unit with such a prefix. */
export function isPartOfUnit(word: string): boolean {
  return prefixed.test(word);
}

/** A part of a unit: `dHz` is a tenth of `Hz` (SI Brochure, 9th edition (BIPM), section 3), `us/8` an eighth of `us`. */
function sharedUnit(text: string): readonly [share: number, rest: string] | null {
  const [, prefix, symbol] = prefixed.exec(text) ?? [];
  if (symbol !== undefined) return [prefix === 'd' ? 0.1 : 0.01, symbol];
  const [, unit, parts] = /^([^\d\s].*?)\s?\/\s?([1-9]\d{0,5})$/.exec(text) ?? [];
  return unit === undefined ? null : [1 / Number(parts), unit];
}

/** A part of one, and what follows it: `0.1 V` is a tenth and `V`. */
function shareBefore(text: string): readonly [share: number, rest: string] | null {
  for (const [share, words] of parts) {
    const found = words.exec(text);
    if (found !== null) return [share, text.slice(found[0].length).trim()];
  }
  const [, over = '', under = '1', rest = ''] =
    /^(\d{1,6}(?:[.,]\d{1,6})?)(?:\/(\d{1,6}))?((?:[^\d.,/].*)?)$/.exec(text) ?? [];
  const share = over === '' ? Number.NaN : Number(over.replace(',', '.')) / Number(under);
  return Number.isFinite(share) ? [share, rest.trim()] : null;
}

/** The unit of a script that a board's text is, of this dimension; null where it is none. */
export function unitNamed(text: string, dimensionName: string): string | null {
  const name = findDimensionName(dimensionName);
  if (name === undefined) return null;
  const lower = text.toLowerCase();
  const asSaid = dimensionName === 'temperature' && lower === 'c' ? 'degC' : text;
  const known = [asSaid, unitOfSpelling.get(lower), lower].flatMap((one) => {
    const { unit } = parseUnit(one ?? '');
    const fits = unit?.dimension.key === name.dimension.key && unit.family === (name.family ?? null);
    return one === undefined || one === '' || !fits ? [] : [one];
  });
  return known[0] ?? null;
}
