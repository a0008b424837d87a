import type { FoundParameter } from '../../../catalog/catalog';
import type { Counts } from '../../../catalog/model/board-profile';
import { lookOf } from '../../listing/value-look';
import { countedIn, type UnitCount, unitNamed } from '../../meaning/board-units';
import { unitFor } from '../../meaning/counting';
import { isReciprocal, reciprocalOf } from '../../meaning/reciprocal';
import { endBracketOf } from '../words/end-bracket';
import { countsIn, isScaleless } from './scales';
import { secondReading } from './second-reading';
import type { Ground, TakenAs } from './taken';

/** A unit that the listing states, and where. */
export interface StatedCount {
  readonly counts: Counts;
  /** The end of a sentence. */
  readonly why: string;
}

/** How the listing itself says that a setting is counted: behind its value, beside it, in its name, in its remark. */
export function statedCount(
  taken: TakenAs,
  found: FoundParameter,
  { manner: { decimal } }: Ground,
): StatedCount | null {
  if (taken.counted !== undefined) return { counts: taken.counted, why: 'you say so' };
  const { dimensionName } = found;
  if (dimensionName === undefined) return null;
  const own = statedIn(dimensionName, unitFor(found.parameter), taken, found, decimal);
  if (own !== null) return own;
  // A rate whose listing says a time is counted by its period.
  const other = reciprocalOf(dimensionName);
  const said = other === null ? null : statedIn(other, '', taken, found, decimal);
  const isCounted = said !== null && isReciprocal(said.counts.unit ?? '', found.parameter);
  return isCounted ? { ...said, why: `${said.why}, one over what is set` } : null;
}

/** The same for units of one dimension; `own`: the parameter's. */
function statedIn(
  dimension: string,
  own: string,
  taken: TakenAs,
  found: FoundParameter,
  decimal: Ground['manner']['decimal'],
): StatedCount | null {
  const { value, name, groups, stated } = taken.setting;
  const count = (text: string | null | undefined) => countedIn(text ?? '', dimension, own);
  const look = lookOf(value, decimal);
  const behind = look.kind === 'measure' ? unitNamed(look.unit, dimension) : null;
  if (look.kind === 'measure' && behind !== null)
    return {
      counts: { ...countsIn({ unit: behind, scale: 1 }, own), behind: look.gap + look.unit },
      why: `${look.unit} stands behind it`,
    };
  const number = look.kind === 'number' ? look.value : Number.NaN;
  const reading = secondReading(number, stated?.remark ?? '', found, decimal);
  if (reading !== null) return { counts: reading.counts, why: `the listing says that it is ${reading.text}` };
  const beside = count(stated?.unit);
  if (beside !== null)
    return { counts: countsIn(beside, own), why: `the listing says ${stated?.unit ?? ''}` };
  const bracket = endBracketOf(name)?.inner ?? '';
  // A thousandth says of no gain of what it is one.
  const inBracket = isScaleless(found) && /^[\d/.,]*$/.test(bracket) ? null : count(bracket);
  if (inBracket !== null) return { counts: countsIn(inBracket, own), why: `its name says ${bracket}` };
  const [word, inName] = unitInName(name, groups.length > 0, dimension) ?? ['', null];
  if (inName !== null)
    return { counts: countsIn({ unit: inName, scale: 1 }, own), why: `its name says ${word}` };
  const [clause, inRemark] = unitInRemark(stated?.remark ?? '', count) ?? ['', null];
  return inRemark === null ? null : { counts: countsIn(inRemark, own), why: `its remark says ${clause}` };
}

/** Words that are units and something else as well: `min` is the least, `in` goes on. */
const ambiguous: ReadonlySet<string> = new Set([
  'in',
  'min',
  'h',
  'c',
  'm',
  'g',
  's',
  'k',
  'a',
  'v',
  'w',
  'b',
  'n',
]);

/** `delay_ms`, `cutoffHz`; `hz` alone in a group that says of what. */
function unitInName(
  name: string,
  isGrouped: boolean,
  dimension: string,
): readonly [word: string, unit: string] | null {
  const words = name.replace(/([a-z])([A-Z])/g, '$1 $2').split(/[\s_./-]+/);
  const last = words.length < 2 && !isGrouped ? '' : (words.at(-1) ?? '');
  const unit = ambiguous.has(last.toLowerCase()) ? null : unitNamed(last, dimension);
  return unit === null ? null : [last, unit];
}

/** `in tenths of a volt`, `ms, after the last frame`, `delay (0.1 s)`. */
function unitInRemark(
  remark: string,
  count: (text: string) => UnitCount | null,
): readonly [clause: string, count: UnitCount] | null {
  const clauses = remark.split(/[,;:()[\]]|\.\s/).map((clause) => clause.trim());
  for (const clause of clauses) {
    const said = behindIn(clause);
    // An amount is what a value comes to, and only a part of one, or ten of them, how it counts.
    const [amount] = /^\d+(?:[.,/]\d+)?/.exec(said) ?? [];
    const isAmount =
      amount !== undefined && said === clause && !/^(?:10*|0[.,]0*[1-9]\d?|1\/\d+)$/.test(amount);
    const found = isAmount || (ambiguous.has(said.toLowerCase()) && said === clause) ? null : count(said);
    if (found !== null) return [said, found];
  }
  return null;
}

/** What follows the last `in` of a clause; the whole clause where none does. */
function behindIn(clause: string): string {
  const words = clause.split(/\s+/);
  const at = words.slice(0, -1).findLastIndex((word) => /^(?:in|en)$/i.test(word));
  return at < 0 ? clause : words.slice(at + 1).join(' ');
}
