import type { Finding } from '../../checks/report/finding';
import { listed } from '../../checks/report/listed';
import type { Craft } from '../../craft/craft';
import { ofAxes } from '../../figures/axis-names';
import type { MeasuredLoops } from '../../recording/measured-flight';
import type { MeasuredNoise } from '../../recording/measured-noise';
import type { MeasuredAnswer } from '../../recording/report';
import { shortNumber } from '../../units/number-text';
import { type NotKnown, notKnown, type WayToWrite } from '../not-known';
import { withheldFigures } from '../withheld-figures';
import type { FoundValues, ProposalId, ProposedValues, TradePoint, Unfiltered } from './answer';
import { askFigures } from './ask-figures';
import { bounded } from './bounded';
import { offText } from './hold-text';
import { inTheWay } from './in-the-way';
import { loopShift, loopText } from './measured-loop';
import { noRecording, weighedText } from './measured-text';
import { type Movable, movablesOf } from './movable';
import { askedForTuning } from './pack-tuning';
import { proposalOf, setupReadings } from './proposal';
import { raisedBy, spokenUp } from './raised';
import {
  best,
  type Goal,
  leastDelay,
  quietestWithin,
  type Setup,
  type Surveyed,
  spread,
  survey,
} from './search';
import { tonesText } from './tones-text';
import { TrialCraft } from './trial';
import { type PackReading, Tuning } from './tuning';
import { voltagesFor } from './voltages';
import type { Holds, Wish } from './wish';
import { setupLines, Work } from './work';

/** How far the work is, from 0 to 1, and what is being done. */
export interface FindProgress {
  readonly share: number;
  readonly doing: string;
}

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
 * Last: the noise of a flight, to be weighed beside the model, and how its loops answered; or why there is none.
 */
export function* find(
  craft: Craft,
  wish: Wish,
  findings: readonly Finding[],
  check: (craft: Craft) => readonly Finding[],
  { noise: measured, loops }: FlightWeighed = { noise: noRecording, loops: null },
): Generator<FindProgress, FoundValues> {
  const unknown = unknownOf(craft, wish);
  if (unknown.length > 0)
    return {
      ...withoutAnswer(
        wish,
        'Not enough is known to find values.',
        unknown.map(({ text }) => text),
      ),
      tones: tonesText(craft, wish.packs),
      ways: mostOf(unknown.flatMap(({ ways }) => ways)),
    };
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
  const shift = loops?.told == null ? null : loopShift(scratch, loops.told);
  const work = new Work(
    trial,
    wish,
    bounds.movables,
    findings,
    check,
    voltages.lines,
    scratch,
    measured.told,
    shift,
  );
  const surveyed = yield* during(survey(work.space, spread(work.space)), 0.2, 'setups all over');
  const found = yield* threeOf(work, surveyed);
  const common = {
    wish,
    measured:
      weighedText(measured, {
        gyro: work.tuning.follows('gyro'),
        derivative: work.tuning.follows('derivative'),
      }) + (loops === null || loops === measured ? '' : ` ${loopText(loops, shift)}`),
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
  const proposals: ProposedValues[] = [];
  for (const { id, setup } of found.three) {
    const share = 0.91 + 0.03 * proposals.length;
    const making = proposalOf({ craft, work, id, setup, findings, check });
    proposals.push(yield* during(making, share, 'figures and findings of what is proposed'));
  }
  return { ...common, answer: answerOf(proposals, common.now), front: found.front, proposals, inTheWay: [] };
}

interface Three {
  readonly three: readonly { readonly id: ProposalId; readonly setup: Setup }[];
  readonly front: readonly TradePoint[];
}

/** Between the two ends so many places are looked at; the one in the middle is proposed. */
const between = 5;

/** Null where nothing holds. */
function* threeOf(work: Work, surveyed: readonly Surveyed[]): Generator<FindProgress, Three | null> {
  const seek = (goal: Goal, share: number, known: readonly Surveyed[], most?: number) =>
    during(held(work, goal, known, most), share, 'the best of them');
  const least = yield* seek(leastDelay, 0.35, surveyed);
  if (least === null) return null;
  const quietest =
    (yield* seek(quietestWithin(Number.POSITIVE_INFINITY), 0.5, [...surveyed, least])) ?? least;
  const ends = [least.weighed.delay, quietest.weighed.delay] as const;
  const along: Surveyed[] = [least];
  for (let at = 1; at <= between; at += 1) {
    const most = betweenEnds(ends, at / (between + 1));
    const near = [...along.slice(-1), quietest, ...surveyed];
    const one = yield* seek(quietestWithin(most), 0.5 + (0.4 * at) / between, near);
    if (one !== null) along.push(one);
  }
  along.push(quietest);
  const middle = along[Math.floor(along.length / 2)] ?? least;
  const three = [
    { id: 'least-delay', setup: least.setup },
    { id: 'middle', setup: middle.setup },
    { id: 'quietest', setup: quietest.setup },
  ] as const;
  return {
    three: three.filter(({ setup }, at) =>
      three.slice(0, at).every((one) => one.setup.join(' ') !== setup.join(' ')),
    ),
    front: falling(along.map(({ weighed: { delay, noise } }) => ({ delay, noise }))),
  };
}

/** By equal factors, where nothing delays by equal steps. */
function betweenEnds([from, to]: readonly [number, number], share: number): number {
  return from > 0.01 ? from * (to / from) ** share : from + share * (to - from);
}

/** Only what is quieter than all that delays less. */
function falling(points: readonly TradePoint[]): readonly TradePoint[] {
  const rising = [...points].sort((one, other) => one.delay - other.delay);
  return rising.filter(({ noise }, at) => rising.slice(0, at).every((one) => one.noise > noise));
}

/** The best by a goal that also passes all checks. */
function* held(
  work: Work,
  goal: Goal,
  surveyed: readonly Surveyed[],
  most?: number,
): Generator<void, Surveyed | null> {
  const found = yield* best(work.space, goal, surveyed, most);
  if (found === null || work.isAllowed(found.setup)) return found;
  work.isStrict = true;
  return yield* best(work.space, goal, surveyed, most);
}

function* during<T>(work: Generator<void, T>, share: number, doing: string): Generator<FindProgress, T> {
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
    yield { share, doing };
  }
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

/** Whether the craft needs a filter at all; null where none of them may be turned off. */
function unfilteredOf(
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
