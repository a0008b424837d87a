import type { AxisResponse, MeasuredAnswer, MeasuredSpan } from '../../server/src/recording/report';

/** What is told, with a span of so much to either side. */
export function toldSpan(
  likely: number,
  half: number,
  unit: string,
  basis = '30 s',
): MeasuredAnswer<MeasuredSpan> {
  return { told: { likely, low: likely - half, high: likely + half, unit }, basis };
}

const withheld = { told: null, reason: 'Not flown.', advice: 'Fly it.' } as const;

/** Of an axis of which nothing can be told, but for what is given. */
export function responseOf(axis: AxisResponse['axis'], given: Partial<AxisResponse> = {}): AxisResponse {
  return {
    axis,
    curve: withheld,
    bandwidth: withheld,
    peak: withheld,
    phaseDelay: withheld,
    step: withheld,
    delay: withheld,
    lag: withheld,
    margins: withheld,
    ...given,
  };
}

/** Margins with this much phase left, deg. */
export function marginsWith(phase: number): AxisResponse['margins'] {
  const span = (likely: number, unit: string) => ({ likely, low: likely - 2, high: likely + 2, unit });
  return {
    told: {
      by: 'controller',
      crossover: span(20, 'Hz'),
      phaseMargin: span(phase, 'deg'),
      gainMargin: null,
      sensitivityPeak: { likely: 1.6, low: 1.5, high: 1.7, unit: '' },
    },
    basis: '30 s',
  };
}
