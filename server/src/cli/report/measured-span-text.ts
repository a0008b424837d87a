import type { MeasuredSpan } from '../../recording/report';
import { measuredNumber } from '../../units/number-text';

/** `152 Hz (150 to 154)` */
export function spanText(measured: MeasuredSpan): string {
  const { likely, low, high, unit } = measured;
  const number = (value: number) => measuredNumber(value, measured);
  const unitText = unit === '' ? '' : ` ${unit}`;
  const [from, to] = [number(low), number(high)];
  const span = from === to ? '' : ` (${from} to ${to})`;
  return `${number(likely)}${unitText}${span}`;
}
