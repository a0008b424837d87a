import type { MeasuredSpan, RecordingReport } from '../recording/report';

/** What a recording answers beside an estimate of the build sheet. */
export interface AnswerBeside {
  /** The id of the figure: `roll-phase-margin`. */
  readonly figure: string;
  readonly text: string;
}

type SpanText = (measured: MeasuredSpan) => string;

/**
 * Measured margins, waits and overshoot, by the figures of the build sheet that estimate the same. `text`: how one is
 * written where it is shown.
 */
export function answersBeside({ responses }: RecordingReport, text: SpanText): readonly AnswerBeside[] {
  const axes = responses.told ?? [];
  const beside = (figure: string, measured: MeasuredSpan | null): readonly AnswerBeside[] =>
    measured === null ? [] : [{ figure, text: text(measured) }];
  const waits = axes.flatMap(({ axis, delay, lag }) =>
    delay.told === null
      ? []
      : [
          `about ${axis} ${text(delay.told)} from motor command to gyro${lag.told === null ? '' : `, and a time constant of ${text(lag.told)}`}`,
        ],
  );
  return [
    ...(waits.length === 0 ? [] : [{ figure: 'loop-delay', text: waits.join('; ') }]),
    ...axes.flatMap(({ axis, margins: { told }, step }) => [
      ...(told === null
        ? []
        : [
            ...beside(`${axis}-crossover`, told.crossover),
            ...beside(`${axis}-phase-margin`, told.phaseMargin),
            ...beside(`${axis}-gain-margin`, told.gainMargin),
          ]),
      ...(step.told === null
        ? []
        : [{ figure: `${axis}-overshoot`, text: `about ${overshootText(step.told.share)}` }]),
    ]),
  ];
}

/** By how much the highest stands above what was asked for. */
function overshootText(share: readonly number[]): string {
  const most = share.reduce((one, other) => Math.max(one, other), 1);
  return `${Math.round(100 * (most - 1))} %`;
}
