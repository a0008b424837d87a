import type { Catalog } from '../../../catalog/catalog';
import type { AskedSetting } from './asked';
import { oppositesIn, opposition } from './conflicts';
import { fitOf, type ValueFit } from './fit';
import type { Matcher, WordMatch } from './matching';
import { familyOf, type StandsFor } from './proposal';
import type { KnownTarget, Targets } from './targets';

/** A target of a setting with what speaks for it. */
export interface Weighed extends StandsFor {
  readonly known: KnownTarget;
  readonly match: WordMatch;
  readonly fit: ValueFit;
  readonly family: string;
  /** What must be one setting's alone. */
  readonly key: string;
  /** Whether a number in the name is left that the target does not account for. */
  readonly hasSpareNumber: boolean;
  readonly score: number;
}

const most = 6;
const least = 0.3;

/** What a setting may stand for by itself, the likeliest first. */
export function candidatesOf(
  asked: AskedSetting,
  targets: Targets,
  matcher: Matcher,
  catalog: Catalog,
): readonly Weighed[] {
  const found: Weighed[] = [];
  const opposites = oppositesIn(asked, catalog);
  for (const match of matcher.matches(asked)) {
    const known = targets.all[match.target];
    if (known === undefined) continue;
    const fit = fitOf(known, asked, catalog);
    const score =
      match.score * fit.factor * opposition(opposites, known) * holders[known.known.parameter.heldBy];
    if (score < least) continue;
    found.push(weighed(known, match, fit, asked, score));
  }
  return found.sort((one, other) => other.score - one.score || (one.key < other.key ? -1 : 1)).slice(0, most);
}

/** A board's text holds what the board holds; what others hold stands there now and then. */
const holders = { board: 1, device: 0.99, transmitter: 0.97, fact: 0.95 } as const;

function weighed(
  known: KnownTarget,
  match: WordMatch,
  fit: ValueFit,
  asked: AskedSetting,
  score: number,
): Weighed {
  const { parameter, part, member, numbersUsed, isNumberUnsaid } = placed(known, asked);
  const spare = asked.ownNumbers - numbersUsed;
  return {
    known,
    parameter,
    member,
    part,
    match,
    fit,
    family: familyOf(parameter),
    key: JSON.stringify([parameter, member, part]),
    hasSpareNumber: spare > 0 || isNumberUnsaid,
    score: score * (spare > 0 ? spareNumber : 1) * (isNumberUnsaid && !known.isNumbered ? pointless : 1),
  };
}

interface PlacedTarget extends StandsFor {
  /** So many numbers of the name say which member or part it is. */
  readonly numbersUsed: number;
  readonly isNumberUnsaid: boolean;
}

/** Which member, and which part, of its parameter a setting holds, as far as a number in its name says. */
function placed(
  { parameter, member, part, isNumbered, known }: KnownTarget,
  asked: AskedSetting,
): PlacedTarget {
  const [number] = asked.numbers;
  const whole = { parameter, member, part, numbersUsed: 0, isNumberUnsaid: false };
  if (isNumbered) {
    const named = memberOf(number);
    return { ...whole, member: named ?? '1', numbersUsed: 1, isNumberUnsaid: named === null };
  }
  const { kind } = known.parameter;
  const { look } = asked.setting;
  if (kind === 'curve' && look === 'number')
    return number === undefined || number > 100
      ? { ...whole, isNumberUnsaid: true }
      : { ...whole, part: { at: `${number} %` }, numbersUsed: 1 };
  if (
    kind === 'words' &&
    part === null &&
    (look === 'word' || look === 'words' || look === 'number') &&
    asked.ownNumbers > 0 &&
    number !== undefined &&
    number <= mostEntries
  )
    return { ...whole, part: { entry: number }, numbersUsed: 1 };
  return whole;
}

const spareNumber = 0.96;
/** A curve is held by numbers for its points: one that does not say for which is hardly one of them. */
const pointless = 0.7;
const mostEntries = 8;

function memberOf(number: number | undefined): string | null {
  return number !== undefined && Number.isInteger(number) && number >= 1 && number <= 32
    ? String(number)
    : null;
}
