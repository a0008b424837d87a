import { shortNumber } from '../../../server/src/units/number-text';

/** "12.4 ms", "−3.1 dB"; a dash where there is nothing. */
export function figureText(value: number | null, unit: string): string {
  if (value === null) return '–';
  const number = shortNumber(Number(value.toPrecision(3))).replace('-', '−');
  return unit === '' ? number : `${number} ${unit}`;
}

/** Under an axis on which every digit counts, such as megahertz. */
export function wholeText(value: number): string {
  return String(Math.round(value));
}

/** 500, 1k, 2k: what fits under an axis. */
export function tickText(value: number): string {
  const isThousands = Math.abs(value) >= 1000 && value % 100 === 0;
  return (isThousands ? `${shortNumber(value / 1000)}k` : shortNumber(value)).replace('-', '−');
}
