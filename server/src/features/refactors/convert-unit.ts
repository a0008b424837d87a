import type { NumberNode, Span } from '../../language/ast';
import type { ScriptLine } from '../../language/script-line';
import { type DimensionName, dimensionNames, findDimensionName } from '../../units/dimension-names';
import { plainNumber } from '../../units/number-text';
import { fromBase, isOnScale, toBase, type Unit, unitOf } from '../../units/unit';
import { rangeInLine } from '../range';
import type { Snapshot } from '../snapshot';
import type { Refactor } from './refactor';
import { type NodeAt, numberAt, valueOfLine } from './value-at';

/** The number under the cursor in every other unit of its kind in which it can be said exactly. */
export function convertUnit(snapshot: Snapshot, line: ScriptLine, at: Span): readonly Refactor[] {
  const found = numberAt(line, at);
  if (found === null) return [];
  const numbers = sharingUnit(found);
  const unit = numbers.findLast(({ unit: own }) => own !== null)?.unit ?? null;
  if (unit === null) return [];
  const isWhole = !found.within.some(({ kind }) => ['sum', 'product', 'call', 'negative'].includes(kind));
  const others = unitsOf(snapshot, line, unit).filter((other) => isWhole || !isWholeOnly(other));
  return others.flatMap((other): Refactor[] => {
    const texts = numbers.map(({ value }) => exactly(value, unit, other));
    const [first] = texts;
    if (first === undefined || texts.includes(null) || (!isWhole && isWholeOnly(unit))) return [];
    const written = numbers.map((node, index) => {
      const behind = node.unitSpan === null ? '' : ` ${other.text}`;
      return { node, text: `${texts[index]}${behind}` };
    });
    const shown = written.map(({ text }) => text).join('..');
    return [
      {
        title: `Write it as ${shown}`,
        kind: 'rewrite',
        edits: () => {
          const number = snapshot.script.lineNumber(line);
          const edits = written.map(({ node, text }) => ({
            range: rangeInLine(number, node),
            newText: text,
          }));
          return [{ uri: snapshot.script.uri, edits }];
        },
      },
    ];
  });
}

/** Both ends of `1650..2100 us`: the unit at the upper end serves the lower one too. */
function sharingUnit({ node, within }: NodeAt<NumberNode>): readonly NumberNode[] {
  const [around] = within;
  if (around?.kind !== 'range') return [node];
  const { low, high } = around;
  const isShared = low.kind === 'number' && high.kind === 'number' && low.unitSpan === null;
  return isShared ? [low, high] : [node];
}

/** Those in which pilots write what the number measures. */
function unitsOf({ catalog }: Snapshot, line: ScriptLine, unit: Unit): readonly Unit[] {
  const { settingPath } = line;
  const parameter = settingPath === null ? undefined : catalog.parameter(settingPath)?.parameter;
  // Of a whole value its parameter says what it measures: a temperature, or a difference of two.
  const said =
    parameter?.kind === 'quantity' && valueOfLine(line)?.kind === 'number'
      ? findDimensionName(parameter.dimension)
      : undefined;
  const measures =
    said !== undefined && isOf(said, unit) ? said : dimensionNames.find((one) => isOf(one, unit));
  // What is a difference has no zero of its own, whatever unit it is written in.
  if (measures === undefined || measures.isDifference === true) return [];
  return measures.units.filter((text) => text !== unit.text).map(unitOf);
}

function isOf({ dimension, family }: DimensionName, unit: Unit): boolean {
  return dimension.key === unit.dimension.key && (family ?? null) === unit.family;
}

/** Whether a unit can't stand in a calculation. */
function isWholeOnly(unit: Unit): boolean {
  return isOnScale(unit) || unit.decibelsAbove !== null;
}

/** A number in another unit; null where a script would have to round it, or nobody would write it so. */
function exactly(value: number, from: Unit, to: Unit): string | null {
  const number = fromBase(toBase(value, from), to);
  const size = Math.abs(number);
  if (number !== 0 && !(size >= smallest && size < largest)) return null;
  const text = plainNumber(number);
  const back = fromBase(toBase(Number(text), to), from);
  const isSame = Math.abs(back - value) <= 1e-14 * Math.abs(value);
  // As many digits as `plainNumber` writes are the sign of a number that goes on.
  return isSame && text.replace(/^-?0*\.?0*|\D/g, '').length < mostDigits ? text : null;
}

const mostDigits = 10;

/** Numbers that are easily read; the others are better in another unit. */
const [smallest, largest] = [0.001, 1_000_000];
