import type { Finding } from '../../checks/report/finding';
import { listed } from '../../checks/report/listed';
import type { Craft } from '../../craft/craft';
import type { Unfiltered } from './answer';
import { offText } from './hold-text';
import type { Movable } from './movable';
import { raisedBy, spokenUp } from './raised';
import { type PackReading, Tuning } from './tuning';
import type { Holds } from './wish';
import { setupLines, type Work } from './work';

/** Whether the craft needs a filter at all; null where none of them may be turned off. */
export function unfilteredOf(
  craft: Craft,
  movables: readonly Movable[],
  { tuning, trial, wish, measured, shift }: Work,
  findings: readonly Finding[],
  check: (craft: Craft) => readonly Finding[],
): Unfiltered | null {
  if (!movables.some(({ kind }) => kind === 'switch')) return null;
  const bare = new Tuning(trial.with([]), movables, wish.packs, measured, shift);
  const setup = movables.map(({ kind, now }) => (kind === 'switch' ? 0 : now));
  const readings = bare.readings(setup);
  const raised = raisedBy(findings, check(trial.with(setupLines(movables, setup))));
  const { delay, noise, missed } = bare.weigh(setup, wish.holds.toneLeft);
  const near = bare.loops.tooNear(setup, wish.holds);
  const isEnough = missed === 0 && near === null && raised.length === 0;
  return {
    point: { delay, noise },
    readings,
    raised,
    isEnough,
    text: unfilteredText(
      tuning.hasTones ? readings : [],
      wish.holds,
      raised.length === 0
        ? null
        : spokenUp(
            craft,
            raised.map(({ id }) => id),
          ),
      isEnough,
    ),
  };
}

function unfilteredText(
  readings: readonly PackReading[],
  { toneLeft }: Holds,
  raised: string | null,
  isEnough: boolean,
): string {
  if (isEnough) return 'Without any filter that may be turned off, everything still holds.';
  const loudest = Math.max(...readings.flatMap(({ tones }) => tones.map(({ left }) => left)));
  const loud =
    toneLeft !== null && loudest > toneLeft
      ? [
          `${loudest > -0.05 ? 'nothing' : `only ${offText(loudest)} dB`} would be off the loudest motor tone (${offText(toneLeft)} dB are asked for)`,
        ]
      : [];
  const why = [...loud, ...(raised === null ? [] : [raised])];
  return `It needs filtering: without any filter that may be turned off, ${why.length === 0 ? 'its margins would not hold' : listed(why)}.`;
}
