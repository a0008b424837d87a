import { confirmedRows } from '../../board/learn/confirm';
import type { Ground } from '../../board/learn/convert/taken';
import { type LearnedSetting, settingName } from '../../board/learn/learned-settings';
import { familyOf } from '../../board/learn/propose/proposal';
import { type Confirmation, nothingConfirmed } from '../../board/learn/said';
import type { RowMeant } from '../../catalog/model/board-profile';
import { measuredText } from '../../recording/find/measured-text';
import type { MeasuredGain, MeasuredSpan } from '../../recording/report';
import { measuredNumber, plainNumber, shortNumber, withUnit } from '../../units/number-text';

/** A number of a board's text beside what it did in flight. */
export interface NumberFlown {
  /** `lean/grip` */
  readonly key: string;
  readonly means: string;
  /** As the board writes it. */
  readonly value: string;
  readonly measured: MeasuredSpan | null;
  /** Why nothing was measured of it; null where something was. */
  readonly why: string | null;
  /** What it comes to if the family is counted so; null where it is not. */
  readonly quantity: string | null;
  readonly row: RowMeant | null;
}

/** What the numbers of a family come to, by a recording. */
export interface FamilyMeasured {
  /** `control.*.proportional` */
  readonly family: string;
  /** `proportional` */
  readonly term: MeasuredGain['term'];
  /** What the board's 1 is; null: the axes do not agree, or nothing was measured. */
  readonly one: MeasuredSpan | null;
  /** `0.005 %/(deg/s)`: as it is taken. */
  readonly taken: string | null;
  /** What was found, as finished sentences; or why the family can't be counted so. */
  readonly evidence: string;
  readonly numbers: readonly NumberFlown[];
}

/** A setting with what it is taken for. */
export interface TakenFor {
  readonly setting: LearnedSetting;
  readonly means: string;
}

const gainPath = /^control\.(roll|pitch|yaw)\.(proportional|integral|derivative)$/;

/**
 * What the board's 1 is in each family of gains, by what a recording tells of the axes: those of a family are counted
 * alike, or nothing is proposed. `taken`: settings that are gains, or may be; only right if these numbers were flown.
 */
export function measuredCounts(
  taken: readonly TakenFor[],
  gains: readonly MeasuredGain[],
  ground: Ground,
): readonly FamilyMeasured[] {
  const families = new Map<string, TakenFor[]>();
  for (const one of taken)
    if (gainPath.test(one.means)) {
      const family = familyOf(one.means);
      families.set(family, [...(families.get(family) ?? []), one]);
    }
  return [...families].map(([family, members]) => familyMeasured(family, members, gains, ground));
}

interface GainMember extends TakenFor {
  readonly axis: string;
  readonly term: MeasuredGain['term'];
  readonly measured: MeasuredSpan | null;
  readonly why: string | null;
}

function memberOf(one: TakenFor, gains: readonly MeasuredGain[]): GainMember {
  const [, axis = '', term = ''] = gainPath.exec(one.means) ?? [];
  const found = gains.find((gain) => gain.axis === axis && gain.term === term);
  const gain = found?.gain ?? { told: null, reason: 'Nothing was measured about it.' };
  return {
    ...one,
    axis,
    term: term as MeasuredGain['term'],
    measured: gain.told,
    why: gain.told === null ? gain.reason : null,
  };
}

function familyMeasured(
  family: string,
  taken: readonly TakenFor[],
  gains: readonly MeasuredGain[],
  ground: Ground,
): FamilyMeasured {
  const members = taken.map((one) => memberOf(one, gains));
  const term = members[0]?.term ?? 'proportional';
  const telling = members.filter(({ measured, setting }) => measured !== null && setting.number !== 0);
  const one = inCommon(telling);
  const bare = (evidence: string): FamilyMeasured => ({
    family,
    term,
    one: null,
    taken: null,
    evidence,
    numbers: members.map((member) => ({ ...numberOf(member), quantity: null, row: null })),
  });
  if (telling.length === 0) return bare(nothingTold(members));
  if (one === null) return bare(disagreement(telling));
  const { rows, outcomes } = countedBy(one, members, ground);
  const left = outcomes.find(({ is }) => is !== 'taken');
  if (left !== undefined)
    return bare(`${evidenceOf(telling, one)} But ${left.key} can’t be counted so: ${left.why}.`);
  return {
    family,
    term,
    one,
    taken: takenText(one),
    evidence: `${evidenceOf(telling, one)}${alsoCounted(members)}`,
    numbers: members.map((member) => {
      const key = settingName(member.setting);
      const quantity =
        outcomes.find((outcome) => outcome.key === key)?.conversions[0]?.preview.quantity ?? null;
      return { ...numberOf(member), quantity, row: rows.get(key) ?? null };
    }),
  };
}

/** The rows that they come to where one of their numbers is this much. */
function countedBy(one: MeasuredSpan, members: readonly GainMember[], ground: Ground) {
  const counted = { unit: one.unit, scale: Number((1 / roundIn(one)).toPrecision(12)) };
  const said = new Map(
    members.map(({ setting, means }): [string, Confirmation[]] => [
      settingName(setting),
      [{ means, counted }],
    ]),
  );
  return confirmedRows(
    members.map(({ setting }) => setting),
    { ...nothingConfirmed, settings: said },
    ground,
  );
}

function numberOf({ setting, means, measured, why }: GainMember): Omit<NumberFlown, 'quantity' | 'row'> {
  return { key: settingName(setting), means, value: setting.value, measured, why };
}

/** What one of the board's numbers is by each axis. */
function oneBy({ measured, setting }: GainMember): MeasuredSpan | null {
  if (measured === null) return null;
  const { likely, low, high, unit } = measured;
  const ends = [low / setting.number, high / setting.number];
  return { likely: likely / setting.number, low: Math.min(...ends), high: Math.max(...ends), unit };
}

/** Spans are of nine in ten: two that measure the same lie this many half spans apart at most, nearly always. */
const apart = 1.5;

/**
 * The mean of what each axis says, each with the weight of its span; null where one lies too far from the others. What all
 * of them are off by alike stays: a family is no surer than its surest axis.
 */
function inCommon(telling: readonly GainMember[]): MeasuredSpan | null {
  const all = telling.flatMap((member) => oneBy(member) ?? []);
  const [first] = all;
  if (first === undefined || all.some(({ likely }) => !(likely > 0))) return null;
  const off = ({ high, low }: MeasuredSpan) => Math.max((high - low) / 2, 1e-9 * Math.abs(high));
  const weights = all.map((one) => 1 / off(one) ** 2);
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  const likely = all.reduce((sum, one, at) => sum + one.likely * (weights[at] ?? 0), 0) / whole;
  if (all.some((one) => Math.abs(one.likely - likely) > apart * off(one))) return null;
  const half = Math.min(...all.map(off));
  return { likely, low: likely - half, high: likely + half, unit: first.unit };
}

/** What board makers count in, times a power of ten. Common practice. */
const rounds = [1, 2, 2.5, 5];

/** Boards count in round numbers: the one that lies in the span, if only one does; else as it was measured. */
function roundIn({ likely, low, high }: MeasuredSpan): number {
  const power = 10 ** Math.floor(Math.log10(likely));
  const within = [power / 10, power, 10 * power]
    .flatMap((by) => rounds.map((round) => Number((round * by).toPrecision(3))))
    .filter((round) => round >= low && round <= high);
  const [only, another] = within;
  return only === undefined || another !== undefined ? Number(likely.toPrecision(3)) : only;
}

/** Numbers so many times each other tell whether 0 is nothing. */
const farApart = 1.5;

/** `47 on roll was 0.235 %/(deg/s) (0.224 to 0.246), 47 on pitch 0.24 %/(deg/s) (0.23 to 0.25); so 1 is 0.005 %/(deg/s).` */
function evidenceOf(telling: readonly GainMember[], one: MeasuredSpan): string {
  const numbers = telling.map(({ setting }) => Math.abs(setting.number));
  const zero =
    Math.max(...numbers) >= farApart * Math.min(...numbers)
      ? ' Numbers far apart agree on it, so that 0 is nothing.'
      : '';
  return `${saidBy(telling)}; so 1 is ${takenText(one)} (measured: ${ends(one)}).${zero}`;
}

function takenText(one: MeasuredSpan): string {
  return withUnit(plainNumber(roundIn(one), 4), one.unit);
}

function ends(one: MeasuredSpan): string {
  return `${measuredNumber(one.low, one)} to ${measuredNumber(one.high, one)}`;
}

function saidBy(telling: readonly GainMember[]): string {
  return telling
    .flatMap(({ setting, axis, measured }, at) =>
      measured === null
        ? []
        : [`${setting.value} on ${axis}${at === 0 ? ' was' : ''} ${measuredText(measured)}`],
    )
    .join(', ');
}

/** Those of which nothing was measured go with the others, and it is said. */
function alsoCounted(members: readonly GainMember[]): string {
  const others = members
    .filter(({ measured, setting }) => measured === null && setting.number !== 0)
    .map(({ axis }) => axis);
  if (others.length === 0) return '';
  return ` On ${others.join(' and ')} nothing was measured: counted as the others.`;
}

function disagreement(telling: readonly GainMember[]): string {
  const each = telling
    .flatMap((member) => {
      const one = oneBy(member);
      return one === null ? [] : [`${withUnit(shortNumber(one.likely, 2), one.unit)} by ${member.axis}`];
    })
    .join(', ');
  return `${saidBy(telling)}: 1 would be ${each}. They are not counted alike, or these are not the numbers that were flown: nothing is proposed for them together.`;
}

function nothingTold(members: readonly GainMember[]): string {
  const zeros = members.filter(({ setting }) => setting.number === 0);
  if (zeros.length === members.length) return 'All of them are 0: nothing tells what 1 is.';
  const why = members.flatMap(({ axis, why }) => (why === null ? [] : [`${axis}: ${why}`]));
  return `Nothing was measured. ${[...new Set(why)].join(' ')}`;
}
