import type { MeasuredSpan } from '../../server/src/lsp/recording-protocol';
import { measuredNumber, shortNumber } from '../../server/src/units/number-text';

/** "186.3 Hz": no more digits than its span lets stand. */
export function likelyText(measured: MeasuredSpan): string {
  return withUnitBehind(digits(measured.likely, measured), measured.unit);
}

/** "185.1 to 187.6 Hz"; empty where there is no span. */
export function spanText(measured: MeasuredSpan): string {
  const { low, high, unit } = measured;
  if (low === high) return '';
  return withUnitBehind(`${digits(low, measured)} to ${digits(high, measured)}`, unit);
}

/** "186.3 Hz (185.1 to 187.6 Hz)" */
export function measuredText(measured: MeasuredSpan): string {
  const span = spanText(measured);
  return span === '' ? likelyText(measured) : `${likelyText(measured)} (${span})`;
}

/** A share as a percentage: small ones are not rounded away. */
export function shareText(share: number): string {
  const percent = 100 * share;
  return percent > 0 && percent < 0.1 ? 'under 0.1 %' : `${shortNumber(Number(percent.toPrecision(2)))} %`;
}

function withUnitBehind(text: string, unit: string): string {
  return unit === '' ? text : `${text} ${unit}`;
}

function digits(value: number, span: MeasuredSpan): string {
  return signed(measuredNumber(value, span));
}

function signed(text: string): string {
  return text.replace('-', '−');
}
