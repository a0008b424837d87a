import { measuredNumber, shortNumber, withUnit } from '../../units/number-text';
import type { MeasuredSpan } from '../report';

/** `21.3 mohm (18 to 24.6)` */
export function measuredText(span: MeasuredSpan): string {
  const number = (value: number) => measuredNumber(value, span);
  return `${withUnit(number(span.likely), span.unit)} (${number(span.low)} to ${number(span.high)})`;
}

/** `21.3 mohm` */
export function likelyText({ likely, unit }: MeasuredSpan, digits = 3): string {
  return withUnit(shortNumber(likely, digits), unit);
}

/** `12 dB` */
export function decibelText(value: number): string {
  return `${Math.round(value)} dB`;
}

/** `12 %` of a share. */
export function shareText(share: number): string {
  return withUnit(shortNumber(100 * share, 2), '%');
}
