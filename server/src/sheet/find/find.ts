import type { Finding } from '../../checks/report/finding';
import type { Craft } from '../../craft/craft';
import { ofAxes } from '../../figures/axis-names';
import type { MeasuredLoops } from '../../recording/measured-flight';
import type { MeasuredNoise } from '../../recording/measured-noise';
import type { MeasuredAnswer } from '../../recording/report';
import { shortNumber } from '../../units/number-text';
import { type NotKnown, notKnown, type WayToWrite } from '../not-known';
import { withheldFigures } from '../withheld-figures';
import type { FoundValues, ProposedValues, TradePoint } from './answer';
import { askFigures } from './ask-figures';
import { bounded } from './bounded';
import { inTheWay } from './in-the-way';
import { loopShift, loopText } from './measured-loop';
import { noRecording, weighedText } from './measured-text';
import { type Movable, movablesOf } from './movable';
import { askedForTuning } from './pack-tuning';
import { during, type FindProgress } from './progress';
import { proposalOf, setupReadings } from './proposal';
import { spread, survey } from './search';
import { type ThreeSetups, threeSetups } from './three-setups';
import { tonesText } from './tones-text';
import { TrialCraft } from './trial';
import { unfilteredOf } from './unfiltered';
import { voltagesFor } from './voltages';
import type { Wish } from './wish';
import { Work } from './work';

const caution =
  'Found on a model of the craft, by its likely figures: a test hover decides, then feel the motors. Propellers off until everything is checked on the bench.';

/** A flight to weigh by; null: none was asked for. */
export interface FlightWeighed {
  readonly noise: MeasuredAnswer<MeasuredNoise>;
  readonly loops: MeasuredAnswer<MeasuredLoops> | null;
}

/**
 * "What should I set?" Three setups on the trade-off between delay and noise with which everything holds that is asked
 * for, or what stands in the way of it. `findings`: what is found in the craft now; `check` finds it in another. The
 * craft must stay as it is while this works: it is a generator that pauses every few milliseconds, and can be left.
 * `flight`: its noise, to be weighed beside the model, and how its loops answered; or why there is none.
 */
export function* find(
  craft: Craft,
  wish: Wish,
  findings: readonly Finding[],
  check: (craft: Craft) => readonly Finding[],
  flight: FlightWeighed = { noise: noRecording, loops: null },
): Generator<FindProgress, FoundValues> {
  const unknown = unknownOf(craft, wish);
  if (unknown.length > 0) return notEnoughKnown(craft, wish, unknown);
  const base = craft.copied();
  const voltages = yield* during(voltagesFor(base, wish, findings, check), 0.02, 'voltages');
  const movables = movablesOf(base, wish);
  if (movables.length === 0 && voltages.lines.length === 0)
    return withoutAnswer(wish, nothingMoves(wish), voltages.inTheWay);
  const trial = new TrialCraft(base);
  yield* during(askFigures(trial.with([])), 0.03, 'figures as they are');
  const bounds = yield* during(bounded(trial, movables, findings, check), 0.05, 'what the checks leave open');
  const scratch = base.copied();
  yield* during(askedForTuning(scratch, wish.packs), 0.15, 'what the setups share');
  const shift = flight.loops?.told == null ? null : loopShift(scratch, flight.loops.told);
  const work = new Work(
    trial,
    wish,
    bounds.movables,
    findings,
    check,
    voltages.lines,
    scratch,
    flight.noise.told,
    shift,
  );
  const surveyed = yield* during(survey(work.space, spread(work.space)), 0.2, 'setups all over');
  const found = yield* threeSetups(work, surveyed);
  const common = {
    wish,
    measured: flightText(flight, work),
    now: work.pointOf(work.tuning.now),
    nowReadings: setupReadings(work.tuning, work.tuning.now),
    unfiltered: unfilteredOf(craft, movables, work, findings, check),
    tones: null,
    ways: [],
    moving: [...new Set(work.tuning.movables.flatMap(movedPaths)), ...voltages.lines.map(({ path }) => path)],
    heldBack: bounds.heldBack,
    caution,
  };
  if (found === null || voltages.inTheWay.length > 0) {
    const reasons = found === null ? inTheWay(work.tuning, wish.holds, surveyed) : [];
    return {
      ...common,
      answer: 'What is asked for can’t be had with what may move.',
      front: [],
      proposals: [],
      inTheWay: [...voltages.inTheWay, ...reasons],
    };
  }
  yield* during(askFigures(craft), 0.9, 'figures as they are');
  const proposals = yield* proposed(craft, work, found, findings, check);
  return { ...common, answer: answerOf(proposals, common.now), front: found.front, proposals, inTheWay: [] };
}

/** What the three setups write, and what each comes to. */
function* proposed(
  craft: Craft,
  work: Work,
  { three }: ThreeSetups,
  findings: readonly Finding[],
  check: (craft: Craft) => readonly Finding[],
): Generator<FindProgress, readonly ProposedValues[]> {
  const proposals: ProposedValues[] = [];
  for (const { id, setup } of three) {
    const share = 0.91 + 0.03 * proposals.length;
    const making = proposalOf({ craft, work, id, setup, findings, check });
    proposals.push(yield* during(making, share, 'figures and findings of what is proposed'));
  }
  return proposals;
}

/** How the flight is weighed, or why it is not. */
function flightText({ noise, loops }: FlightWeighed, { tuning, shift }: Work): string {
  const follows = { gyro: tuning.follows('gyro'), derivative: tuning.follows('derivative') };
  // Where the recording can't be used, both have one and the same reason: it is said once.
  const ofLoops = loops === null || loops === noise ? '' : ` ${loopText(loops, shift)}`;
  return weighedText(noise, follows) + ofLoops;
}

/** What has to be known for what is asked. */
function unknownOf(craft: Craft, { packs, holds }: Wish): readonly Pick<NotKnown, 'text' | 'ways'>[] {
  const ids = new Set([
    'gyro-filter-delay',
    ...(holds.toneLeft === null ? [] : ['hover-tone-left']),
    ...(holds.phaseMargin === null && holds.gainMargin === null ? [] : ofAxes('phase-margin')),
    ...(holds.minutes === null ? [] : ['minutes-to-landing']),
  ]);
  if (!craft.isWhole())
    return [
      {
        text: 'This script is no whole craft: values are found for a craft, with what it includes.',
        ways: [],
      },
    ];
  const withheld = withheldFigures(craft, ids).filter(
    ({ packs: without, id, needs }) =>
      (without === null || without.some((pack) => packs.includes(pack))) &&
      // An axis that swings, or has no gains, is no lack of knowledge.
      (needs.length > 0 || id === 'gyro-filter-delay'),
  );
  return notKnown(craft, withheld);
}

function notEnoughKnown(
  craft: Craft,
  wish: Wish,
  unknown: readonly Pick<NotKnown, 'text' | 'ways'>[],
): FoundValues {
  const texts = unknown.map(({ text }) => text);
  return {
    ...withoutAnswer(wish, 'Not enough is known to find values.', texts),
    tones: tonesText(craft, wish.packs),
    ways: mostOf(unknown.flatMap(({ ways }) => ways)),
  };
}

/** Without those of which another writes all. */
function mostOf(ways: readonly WayToWrite[]): readonly WayToWrite[] {
  return ways.filter(({ paths }, at) =>
    ways.every(
      (one, place) =>
        place === at ||
        !paths.every((path) => one.paths.includes(path)) ||
        (one.paths.length === paths.length && place > at),
    ),
  );
}

function withoutAnswer(wish: Wish, answer: string, inTheWay: readonly string[]): FoundValues {
  return {
    wish,
    measured: null,
    answer,
    now: null,
    nowReadings: [],
    unfiltered: null,
    tones: null,
    ways: [],
    moving: [],
    front: [],
    proposals: [],
    inTheWay: inTheWay.length > 0 ? inTheWay : ['Let something else move, or write what is missing.'],
    heldBack: [],
    caution,
  };
}

function nothingMoves({ moves, holds: { minutes } }: Wish): string {
  if (moves.some((name) => name !== 'voltages')) return 'Nothing of what may move stands in this script.';
  return minutes === null
    ? 'Only voltages may move, and they move for minutes alone: none are asked for.'
    : 'Only voltages may move, and they stay: the minutes that are asked for are had already, or none can be gained.';
}

function movedPaths(movable: Movable): readonly string[] {
  return movable.lines(movable.values.length - 1).map(({ path }) => path);
}

function answerOf(proposals: readonly ProposedValues[], now: TradePoint | null): string {
  const [first] = proposals;
  const last = proposals.at(-1);
  if (first === undefined || last === undefined) return 'Nothing is proposed.';
  const text = ({ delay, noise }: TradePoint) =>
    `${shortNumber(delay)} ms of delay with ${shortNumber(noise)} % of noise`;
  const from = now === null ? '' : `; now ${text(now)}`;
  return proposals.length === 1
    ? `One setup holds what is asked for: ${text(first.point)}${from}.`
    : `Everything that is asked for holds from ${text(first.point)} (least delay) to ${text(last.point)} (quietest)${from}.`;
}
