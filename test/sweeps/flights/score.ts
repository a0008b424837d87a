import type { Case, Quantity } from './quantity';

/** How a quantity was told over many flights. */
export interface Score {
  readonly name: string;
  /** Flights that excite it, and those of them of which it was told. */
  readonly excited: number;
  readonly told: number;
  /** Told with a span that does not hold the truth. */
  readonly outside: number;
  /** Medians over what was told, in tolerances: distance of the likely value from the truth, and whole span. */
  readonly error: number;
  readonly span: number;
}

export function scoreOf({ name, tolerance }: Quantity, cases: readonly Case[]): Score {
  const told = cases.flatMap(({ truth, span, blind = 0 }) => (span === null ? [] : [{ truth, span, blind }]));
  const unit = (truth: number) =>
    tolerance === null ? 1 : 'off' in tolerance ? tolerance.off : tolerance.share * Math.abs(truth);
  return {
    name,
    excited: cases.length,
    told: told.length,
    outside: told.filter(({ truth, span }) => truth < span.low || truth > span.high).length,
    error: median(told.map(({ truth, span }) => Math.abs(span.likely - truth) / unit(truth))),
    span: median(told.map(({ truth, span, blind }) => (span.high - span.low - blind) / unit(truth))),
  };
}

function median(values: readonly number[]): number {
  const rising = [...values].sort((one, other) => one - other);
  return rising[Math.floor(rising.length / 2)] ?? Number.NaN;
}

export function tableOf(scores: readonly Score[]): string {
  const rows = scores.map(({ name, excited, told, outside, error, span }) =>
    [
      name.padEnd(22),
      `${excited}`.padStart(8),
      `${told}`.padStart(6),
      `${outside}`.padStart(9),
      error.toFixed(2).padStart(12),
      span.toFixed(2).padStart(11),
    ].join(''),
  );
  const head = `${''.padEnd(22)} excited  told  outside  median off     median span (in tolerances)`;
  return [head, ...rows].join('\n');
}
