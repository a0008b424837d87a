import type { FoundParameter } from '../../catalog/catalog';
import type { Evaluated, Value } from '../../craft/value';
import { isPlain } from '../../units/dimension';
import { dimensionNames, dimensionPhrase } from '../../units/dimension-names';
import { shortNumber } from '../../units/number-text';
import { exactText, readableUnit, shortText } from '../../units/quantity';

/** What an expression comes to, in the unit that it was written in or else in one that reads well. */
export function evaluatedText({ value, dimension, unit }: Evaluated): string {
  if (unit !== null) return shortText(value, unit);
  if (isPlain(dimension)) return shortNumber(value);
  const name = dimensionNames.find((one) => one.dimension.key === dimension.key);
  return name === undefined
    ? `${shortNumber(value)} in base units (${dimensionPhrase(dimension)})`
    : shortText(value, readableUnit(value, name.name));
}

/** Units that pilots translate into another one. Where only the decimal point would move there is nothing to say. */
const translations: ReadonlyMap<string, string> = new Map([
  ['in', 'mm'],
  ['mW', 'dBm'],
  ['W', 'dBm'],
  ['dBm', 'mW'],
  ['m/s', 'km/h'],
  ['km/h', 'm/s'],
  ['rad', 'deg'],
  ['rad/s', 'deg/s'],
]);

/**
 * A value in the unit that it is often thought of in, `= 88.9 mm` or `≈ 14 dBm`; null where there is none. What was
 * written in that unit is told in the setting's own, `≈ 1.22 in`.
 */
export function otherUnitText(
  value: Value | null,
  { dimensionName }: FoundParameter,
  written: string | null = null,
): string | null {
  if (value?.kind !== 'quantity' || dimensionName === undefined) return null;
  const translated = translations.get(value.unit);
  const unit = translated !== undefined && written === translated ? value.unit : translated;
  const isNothing = value.value === 0 && unit === 'dBm';
  if (unit === undefined || isNothing) return null;
  const short = shortText(value.value, unit);
  return `${short === exactText(value.value, unit) ? '=' : '≈'} ${short}`;
}
