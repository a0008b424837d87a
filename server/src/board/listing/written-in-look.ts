import { inCaseOf } from '../../units/capitals';
import type { DecimalMark, NumberLook } from './number-look';
import { numberLook } from './number-look';
import { lookOf } from './value-look';

/**
 * A value in the look of another: its base, decimals, sign, thousands, unit, words of its pair, marks of its list.
 * No digit is lost: decimals that `like` does not have are kept. Null where it can't be written so.
 */
export function writtenInLook(value: string, like: string, mark: DecimalMark = '.'): string | null {
  const look = lookOf(like, mark);
  switch (look.kind) {
    case 'number':
      return inNumber(value, look);
    case 'measure': {
      const given = lookOf(value, mark);
      if (given.kind === 'measure' && given.unit !== look.unit) return null;
      const amount =
        given.kind === 'measure' ? value.slice(0, value.length - given.unit.length).trimEnd() : value;
      const number = inNumber(amount, look.number);
      return number === null ? null : number + look.gap + look.unit;
    }
    case 'flag':
      return inFlag(value, like, look.pair);
    case 'list':
    case 'tuple': {
      const given = lookOf(value, mark);
      const items = given.kind === 'list' || given.kind === 'tuple' ? given.items : [value];
      const list = items.join(look.between);
      return look.kind === 'list' ? list : look.open + list + look.close;
    }
    default:
      return value;
  }
}

function inNumber(text: string, look: NumberLook): string | null {
  const given = numberLook(text) ?? numberLook(text, look.point === ',' ? ',' : '.');
  if (given === null || Number.isNaN(given.value)) return null;
  if (look.base !== 10) return inBase(given.value, look);
  if (given.base !== 10 && !Number.isInteger(given.value)) return null;
  if (look.exponent !== null) return withSign(given.value, exponential(Math.abs(given.value), look), look);
  const decimals = Math.max(
    look.decimals,
    given.exponent === null ? given.decimals : decimalsOf(given.value),
  );
  const [whole = '', after = ''] = Math.abs(given.value).toFixed(Math.min(decimals, 20)).split('.');
  const padded = look.hasLeadingZeros ? whole.padStart(look.digits, '0') : whole;
  return withSign(given.value, thousandsIn(padded, look) + (after === '' ? '' : look.point + after), look);
}

function inBase(value: number, look: NumberLook): string | null {
  if (!Number.isSafeInteger(value)) return null;
  const digits = Math.abs(value).toString(look.base);
  const padded = look.hasLeadingZeros ? digits.padStart(look.digits, '0') : digits;
  return withSign(value, look.prefix + (look.isUpperCase ? padded.toUpperCase() : padded), look);
}

function exponential(size: number, { decimals, point, exponent }: NumberLook): string {
  const shortest = size.toExponential().split('e')[0]?.split('.')[1]?.length ?? 0;
  const [digits = '', power = '0'] = size.toExponential(Math.max(decimals, shortest)).split('e');
  const amount = power.replace(/^[+-]/, '').padStart(exponent?.digits ?? 1, '0');
  const sign = power.startsWith('-') ? '-' : exponent?.sign === '+' ? '+' : '';
  return `${digits.replace('.', point)}${exponent?.letter ?? 'e'}${sign}${amount}`;
}

function decimalsOf(value: number): number {
  const [digits = '', power = '0'] = value.toExponential().split('e');
  return Math.max(0, (digits.split('.')[1]?.length ?? 0) - Number(power));
}

function thousandsIn(digits: string, { thousands }: NumberLook): string {
  if (thousands === '') return digits;
  const groups: string[] = [];
  for (let end = digits.length; end > 0; end -= 3) groups.unshift(digits.slice(Math.max(0, end - 3), end));
  return groups.join(thousands);
}

function withSign(value: number, size: string, { sign }: NumberLook): string {
  if (value < 0) return (sign === '\u2212' ? sign : '-') + size;
  return sign === '+' ? `+${size}` : size;
}

function inFlag(value: string, like: string, pair: readonly [on: string, off: string]): string | null {
  const given = lookOf(value);
  const isOn = given.kind === 'flag' ? given.isOn : value === '1' ? true : value === '0' ? false : null;
  if (isOn === null) return null;
  return inCaseOf(isOn ? pair[0] : pair[1], like);
}
