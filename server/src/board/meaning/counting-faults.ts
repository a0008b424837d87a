import type { Fault } from '../../catalog/faults/fault';
import { readQuantity, unitFaults } from '../../catalog/faults/quantities';
import type { KnownParameter } from '../../catalog/known-parameter';
import type { Counts } from '../../catalog/model/board-profile';
import { countingOf, inBoard } from './counting';
import { isReciprocal, reciprocalOf } from './reciprocal';

/** What is wrong with how a row says that its board counts: a step that leads nowhere, limits that let nothing in. */
export function countingFaults(counts: Counts, known: KnownParameter): readonly Fault[] {
  const unreadable = [
    ...unitOfRow(counts, known),
    ...stepFaults(counts, known),
    ...limitFaults(counts, known),
    ...tableFaults(counts, known),
  ];
  return unreadable.length > 0 ? unreadable : grainFaults(counts, known);
}

function dimensionOf({ parameter, dimensionName }: KnownParameter): string | undefined {
  return parameter.kind === 'curve' ? parameter.up.dimension : dimensionName;
}

/** A number of the row in SI; whole for a count. */
function read(text: string, known: KnownParameter) {
  if (known.parameter.kind !== 'count') return readQuantity(text, dimensionOf(known) ?? 'ratio');
  return /^-?\d{1,15}$/.test(text) ? { value: Number(text) } : { problem: `"${text}" is no whole number` };
}

function unitOfRow({ unit }: Counts, known: KnownParameter): readonly Fault[] {
  const dimension = dimensionOf(known);
  const isCounted = unit === undefined || dimension === undefined || isReciprocal(unit, known.parameter);
  return isCounted ? [] : unitFaults(['unit'], unit, dimension);
}

function stepFaults({ step, unit }: Counts, known: KnownParameter): readonly Fault[] {
  if (step === undefined) return [];
  const isOther = unit !== undefined && isReciprocal(unit, known.parameter);
  const { problem } = isOther
    ? readQuantity(step, reciprocalOf(dimensionOf(known)) ?? '')
    : read(step, known);
  return problem === undefined ? [] : [{ at: ['step'], message: problem }];
}

function limitFaults({ limits }: Counts, known: KnownParameter): readonly Fault[] {
  if (limits === undefined) return [];
  const [low, high] = limits.map((text) => read(text, known));
  const faults = [low, high].flatMap((end, index) =>
    end?.problem === undefined ? [] : [{ at: ['limits', index], message: end.problem }],
  );
  if (low?.value === undefined || high?.value === undefined) return faults;
  const text = limits.join(' to ');
  if (low.value >= high.value) return [{ at: ['limits'], message: `${text} does not rise` }];
  if (known.range !== undefined && (high.value < known.range.low || low.value > known.range.high))
    return [{ at: ['limits'], message: `${text} leaves nothing of what ${known.name} can be` }];
  return faults;
}

/** Each step of a table is a value of its own that the parameter can have; nothing else is said of it. */
function tableFaults({ table, ...others }: Counts, known: KnownParameter): readonly Fault[] {
  if (table === undefined) return [];
  const [besides] = Object.keys(others);
  if (besides !== undefined) return [{ at: [besides], message: 'a table of steps says all that is counted' }];
  const seen = new Map<number, string>();
  return Object.entries(table).flatMap(([word, text]): readonly Fault[] => {
    const at = ['table', word];
    const { value, problem } = read(text, known);
    if (value === undefined) return [{ at, message: problem ?? `"${text}" is no quantity` }];
    const { range } = known;
    const isOutside = range !== undefined && (value < range.low || value > range.high);
    if (isOutside) return [{ at, message: `${text} is nothing that ${known.name} can be` }];
    const before = seen.get(value);
    seen.set(value, word);
    return before === undefined ? [] : [{ at, message: `"${before}" and "${word}" are both ${text}` }];
  });
}

/** Smaller steps are lost in the digits that are written. */
const leastGrain = 1e-12;

/** The step in the board's own numbers, with its unit and its scale: more than nothing, and room for two of it. */
function grainFaults(counts: Counts, known: KnownParameter): readonly Fault[] {
  const { step, limits } = counts;
  if (step === undefined) return [];
  const counting = countingOf(counts, known.parameter);
  const { unit, grain } = counting;
  const inUnit = unit === '' ? '' : ` in ${unit}`;
  if (grain === null || !Number.isFinite(grain) || grain < leastGrain)
    return [{ at: ['step'], message: `${step} is no step${inUnit}: it must be more than nothing` }];
  const [low, high] = endsOf(limits, known).map((end) => inBoard(counting, end));
  if (low === undefined || high === undefined || grain <= Math.abs(high - low) * (1 + 1e-9)) return [];
  return [{ at: ['step'], message: `a step of ${step} leaves ${known.name} one value at the most` }];
}

/** What the board takes of what the parameter can be; nothing where neither has ends. */
function endsOf(limits: Counts['limits'], known: KnownParameter): readonly number[] {
  const { range } = known;
  const [low, high] = (limits ?? []).map((text) => read(text, known).value);
  const lows = [low, range?.low].filter((end) => end !== undefined);
  const highs = [high, range?.high].filter((end) => end !== undefined);
  return lows.length === 0 || highs.length === 0 ? [] : [Math.max(...lows), Math.min(...highs)];
}
