import type { Reading, Soaked } from './session';

/** The heap may grow by this much between the second reading and the last ones, for caches that fill up. */
export const mostGrowth = 3_000_000;

/** What a soak shows that must not be; nothing where all is well. */
export function faultsOf({ readings, exitCode, isLeft }: Soaked): readonly string[] {
  return [
    ...(['edits', 'openings'] as const).flatMap((phase) =>
      grown(readings.filter((reading) => reading.phase === phase)),
    ),
    ...(exitCode === 0 ? [] : [`the server ended with ${exitCode}`]),
    ...(isLeft ? ['the server’s process is left'] : []),
  ];
}

/** The first reading is for what is loaded late; the least of the last three is not led astray by one. */
function grown(readings: readonly Reading[]): readonly string[] {
  const [, first] = readings;
  const last = readings.slice(-3);
  if (first === undefined || readings.length < 5) return ['there are too few readings'];
  const heap = Math.min(...last.map((reading) => reading.heap)) - first.heap;
  const least = (name: 'handles' | 'listeners') =>
    Math.min(...last.map((reading) => reading[name])) - first[name];
  return [
    ...(heap > mostGrowth ? [`after ${first.phase} the heap holds ${megabytes(heap)} MB more`] : []),
    ...(['handles', 'listeners'] as const).flatMap((name) =>
      least(name) > 0 ? [`after ${first.phase} there are ${least(name)} ${name} more`] : [],
    ),
  ];
}

export function megabytes(bytes: number): string {
  return (bytes / 1e6).toFixed(2);
}
