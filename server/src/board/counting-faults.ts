import type { Fault } from '../catalog/faults/fault';
import { readQuantity, unitFaults } from '../catalog/faults/quantities';
import type { KnownParameter } from '../catalog/known-parameter';
import type { BoardSetting } from '../catalog/model/board-text';
import { countingOf, inBoard } from './counting';

/** What is wrong with how a row says that its board counts: a step that leads nowhere, limits that let nothing in. */
export function countingFaults(row: BoardSetting, known: KnownParameter): readonly Fault[] {
  const unreadable = [...unitOfRow(row, known), ...stepFaults(row, known), ...limitFaults(row, known)];
  return [...(unreadable.length > 0 ? unreadable : grainFaults(row, known)), ...acrossFaults(row, known)];
}

function dimensionOf({ parameter, dimensionName }: KnownParameter): string | undefined {
  return parameter.kind === 'curve' ? parameter.up.dimension : dimensionName;
}

/** A number of the row in SI; whole for a count. */
function read(text: string, known: KnownParameter) {
  if (known.parameter.kind !== 'count') return readQuantity(text, dimensionOf(known) ?? 'ratio');
  return /^-?\d{1,15}$/.test(text) ? { value: Number(text) } : { problem: `"${text}" is no whole number` };
}

function unitOfRow({ unit }: BoardSetting, known: KnownParameter): readonly Fault[] {
  const dimension = dimensionOf(known);
  return unit === undefined || dimension === undefined ? [] : unitFaults(['unit'], unit, dimension);
}

function stepFaults({ step }: BoardSetting, known: KnownParameter): readonly Fault[] {
  const problem = step === undefined ? undefined : read(step, known).problem;
  return problem === undefined ? [] : [{ at: ['step'], message: problem }];
}

function limitFaults({ limits }: BoardSetting, known: KnownParameter): readonly Fault[] {
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

/** Smaller steps are lost in the digits that are written. */
const leastGrain = 1e-12;

/** The step in the board's own numbers, with its unit and its scale: more than nothing, and room for two of it. */
function grainFaults(row: BoardSetting, known: KnownParameter): readonly Fault[] {
  const { step, limits } = row;
  if (step === undefined) return [];
  const counting = countingOf(row, known.parameter);
  const { unit, grain } = counting;
  const inUnit = unit === '' ? '' : ` in ${unit}`;
  if (grain === null || !Number.isFinite(grain) || grain < leastGrain)
    return [{ at: ['step'], message: `${step} is no step${inUnit}: it must be more than nothing` }];
  const [low, high] = endsOf(limits, known).map((end) => inBoard(counting, end));
  if (low === undefined || high === undefined || grain <= Math.abs(high - low) * (1 + 1e-9)) return [];
  return [{ at: ['step'], message: `a step of ${step} leaves ${known.name} one value at the most` }];
}

/** What the board takes of what the parameter can be; nothing where neither has ends. */
function endsOf(limits: BoardSetting['limits'], known: KnownParameter): readonly number[] {
  const { range } = known;
  const [low, high] = (limits ?? []).map((text) => read(text, known).value);
  const lows = [low, range?.low].filter((end) => end !== undefined);
  const highs = [high, range?.high].filter((end) => end !== undefined);
  return lows.length === 0 || highs.length === 0 ? [] : [Math.max(...lows), Math.min(...highs)];
}

/** The points at which a curve is told: each possible, and each further than the one before. */
function acrossFaults(
  { at: points = [] }: BoardSetting,
  { parameter, across }: KnownParameter,
): readonly Fault[] {
  const dimension = parameter.kind === 'curve' ? parameter.across.dimension : 'ratio';
  let before = Number.NEGATIVE_INFINITY;
  return points.flatMap((text, index): readonly Fault[] => {
    const at = ['at', index];
    const { value, problem } = readQuantity(text, dimension);
    if (value === undefined) return [{ at, message: problem }];
    const isFurther = value > before;
    before = value;
    if (!isFurther) return [{ at, message: `${text} does not rise above the point before` }];
    if (across === undefined || (value >= across.low && value <= across.high)) return [];
    return [{ at, message: `${text} lies beyond the end of the curve` }];
  });
}
