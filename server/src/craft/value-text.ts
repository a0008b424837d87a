import type { Parameter } from '../catalog/model/parameter';
import { bareLiteral } from '../language/own-line';
import { quoted } from '../language/quoted-text';
import { plainNumber } from '../units/number-text';
import { exactText } from '../units/quantity';
import type { Value } from './value';

/** Writes a value as a script would. */
export function valueText(value: Value, parameter: Parameter): string {
  switch (value.kind) {
    case 'quantity':
      return exactText(value.value, value.unit);
    case 'count':
      return plainNumber(value.value);
    case 'flag':
      return value.value ? 'on' : 'off';
    case 'word':
    case 'date':
      return value.value;
    case 'words':
      return `[${value.value.join(', ')}]`;
    case 'range':
      return rangeText(value.low, value.high, value.unit);
    case 'place':
      return `[${value.row}, ${value.column}]`;
    case 'text':
      return quoted(value.value);
    case 'bare':
      return bareLiteral(value.value);
    case 'curve': {
      if (parameter.kind !== 'curve') return '';
      const { across, up } = parameter;
      return value.points
        .map(({ x, y }) => `${exactText(x, across.unit)} -> ${exactText(y, up.unit)}`)
        .join(', ');
    }
  }
}

/** `1750..2050 us`: one unit serves both ends. */
export function rangeText(low: number, high: number, unit: string): string {
  return `${exactText(low, unit).split(' ')[0]}..${exactText(high, unit)}`;
}
