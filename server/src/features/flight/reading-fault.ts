import type { Catalog } from '../../catalog/catalog';
import { sentenceOf } from '../../checks/report/render';
import { evaluate } from '../../craft/evaluate';
import { isExpression } from '../../craft/interpret-number';
import { noNames } from '../../craft/line-check';
import type { Problem } from '../../language/ast';
import { parseLine } from '../../language/parser';
import type { CardReading } from '../../sheet/bench-card/card';
import { capitalised } from '../../units/capitals';
import { sameDimension } from '../../units/dimension';
import { dimensionPhrase } from '../../units/dimension-names';
import { withUnit } from '../../units/number-text';
import { unitOf } from '../../units/unit';
import { answerFault, flightPath, valueFault } from './note-flight';

/** Of a field of the card: what tells which readings it takes. */
export type CardField = Pick<CardReading, 'unit' | 'setting' | 'script'>;

/** Why what was typed into a field of the card can't be what was read off, in a sentence; null if it can. */
export function readingFault(
  catalog: Catalog,
  { unit, setting, script }: CardField,
  typed: string,
): string | null {
  const text = asTyped(typed);
  if (text === '') return null;
  if (/\d,\d{3}$/.test(text)) return `${text} may be read in two ways: write it without the comma.`;
  if (script !== null) return valueFault(catalog, script, text);
  if (setting !== null)
    return catalog.parameter(flightPath(setting)) === undefined
      ? null
      : answerFault(catalog, { setting, typed: text });
  return unit === '' ? null : figureFault(catalog, unit, text);
}

/** A phone's keys for numbers may have a comma alone: between digits it is the decimal point. */
export function asTyped(typed: string): string {
  const text = typed.trim().replace(/\s+/g, ' ');
  return /\d,\d{3}$/.test(text) ? text : text.replace(/^([+-]?\d*),(\d+)/, '$1.$2');
}

/** A figure with a unit or without; a meter may show no more than that it is above or below something. */
function figureFault(catalog: Catalog, unit: string, text: string): string | null {
  const wanted = unitOf(unit);
  const phrase = dimensionPhrase(wanted.dimension);
  const example = `${capitalised(phrase)} is wanted, in ${unit} or with its unit behind it`;
  const statement = parseLine(`reading = ${withUnit(text.replace(/^[<>] ?/, ''), unit)}`);
  if (statement.kind !== 'setting') return `${example}.`;
  const told = (problem: Problem) => {
    const check = catalog.check(problem.id);
    return check?.level === 'must-fix' ? `${sentenceOf(check.message, problem.values)} ${example}.` : null;
  };
  for (const problem of statement.problems) {
    const message = told(problem);
    if (message !== null) return message;
  }
  if (statement.value === null || !isExpression(statement.value)) return `${example}.`;
  const { value, problem } = evaluate(statement.value, noNames, wanted);
  if (problem !== null) return told(problem) ?? `${example}.`;
  if (value === null || value.kind === 'bare') return `${example}.`;
  if (sameDimension(value.dimension, wanted.dimension)) return null;
  return `This is ${dimensionPhrase(value.dimension)}. ${example}.`;
}
