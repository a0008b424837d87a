import { element } from '../page/element';
import { figureText } from '../sheet/plots/figure-text';
import { canvas, shape } from '../sheet/plots/frame';
import type { DrawnSpectrum } from './spectrum-data';

/** Names of the lines with a piece of each, and room for a value read off. */
export function legendOf({ lines, filters }: DrawnSpectrum) {
  const place = element('span', { class: 'read' });
  const entries = [
    ...lines.map(({ name, frequencies, decibels }, index) => ({
      name,
      style: `curve curve-${index % 4}`,
      valueAt: (frequency: number) => decibels[nearest(frequencies, frequency)] ?? null,
    })),
    ...(filters?.lines ?? []).slice(0, 1).map(({ values }) => ({
      name: 'what the script’s filters leave (scale at the right)',
      style: 'filter',
      valueAt: (frequency: number) => values[nearest(filters?.at ?? [], frequency)] ?? null,
    })),
  ].map((entry) => ({ ...entry, value: element('span', { class: 'read' }) }));
  const rows = entries.map(({ name, style, value }) =>
    element('li', {}, canvas(18, 8, shape('path', { class: style, d: 'M0 4H18' })), name, ' ', value),
  );
  return {
    element: element('ul', { class: 'legend' }, ...rows, element('li', {}, place)),
    read(frequency: number | null): string {
      place.textContent = frequency === null ? '' : `at ${figureText(frequency, 'Hz')}`;
      for (const { value, valueAt } of entries)
        value.textContent = frequency === null ? '' : figureText(valueAt(frequency), 'dB');
      if (frequency === null) return '';
      const read = entries.map(({ name, valueAt }) => `${name} ${figureText(valueAt(frequency), 'dB')}`);
      return `${figureText(frequency, 'Hz')}: ${read.join(', ')}`;
    },
  };
}

/** Which of values that rise is nearest. */
export function nearest(at: readonly number[], value: number): number {
  const after = at.findIndex((one) => one >= value);
  if (after < 0) return Math.max(0, at.length - 1);
  const before = Math.max(0, after - 1);
  return value - (at[before] ?? 0) < (at[after] ?? 0) - value ? before : after;
}
