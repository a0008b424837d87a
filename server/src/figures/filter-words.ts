import { type DigitalFilter, lowpassCorner, notchPlace } from '../physics/filter';
import { fine } from './why';

/** Filters in words, equal ones counted: `first-order low-pass at 90 Hz, 4 × notch of 12 Hz at 122.5 Hz`. */
export function filtersText(filters: readonly DigitalFilter[]): string {
  const counts = new Map<string, number>();
  for (const filter of filters) {
    const words = filterText(filter);
    counts.set(words, (counts.get(words) ?? 0) + 1);
  }
  return [...counts].map(([words, count]) => (count === 1 ? words : `${count} × ${words}`)).join(', ');
}

/** Most filters are the same objects from one edit to the next, and one stands in a chain for each motor. */
const known = new WeakMap<DigitalFilter, string>();

function filterText(filter: DigitalFilter): string {
  const text = known.get(filter) ?? textOf(filter);
  known.set(filter, text);
  return text;
}

function textOf(filter: DigitalFilter): string {
  const place = notchPlace(filter);
  if (place !== null) return `notch of ${fine(place.width, 'Hz')} at ${fine(place.centre, 'Hz')}`;
  const { order, cutoff } = lowpassCorner(filter);
  return `${order}-order low-pass at ${fine(cutoff, 'Hz')}`;
}
