import type { Interval } from '../units/interval';
import { parseQuantity } from '../units/quantity';
import type { Parameter, ParameterFile } from './model/parameter';

/** A parameter of the catalogue with what its texts say in numbers. */
export interface KnownParameter {
  /** As the catalogue spells it: `pack.<name>.cells`. */
  readonly name: string;
  readonly group: string;
  /** The words of the name; an open part stands as `<name>`. */
  readonly words: readonly string[];
  readonly parameter: Parameter;
  /** Outside is refused. Quantities, counts, ranges; a curve's output. */
  readonly range?: Interval;
  /** Outside is a risk. */
  readonly usual?: Interval;
  /** A curve's input. */
  readonly across?: Interval;
  /** A name of the table of dimensions; a curve's is that of its output. */
  readonly dimensionName?: string;
  /** The unit to offer first. */
  readonly unit?: string;
  /** The assumed value of a quantity or a count, where it is a number. */
  readonly assumed?: number;
}

/** A quantity of the data in SI. The data was checked when it was compiled: throws where it was not. */
export function inBase(text: string): number {
  const found = parseQuantity(text);
  if (found === undefined) throw new Error(`"${text}" in the catalogue is not a quantity`);
  return found.value;
}

export function knownParameters(file: ParameterFile): readonly KnownParameter[] {
  return file.parameters.map((parameter) => ({
    name: parameter.name,
    group: file.group,
    words: parameter.name.split('.'),
    parameter,
    ...numbersOf(parameter),
  }));
}

type ParameterNumbers = Omit<KnownParameter, 'name' | 'group' | 'words' | 'parameter'>;

function numbersOf(parameter: Parameter): ParameterNumbers {
  switch (parameter.kind) {
    case 'quantity':
      return { ...intervals(parameter), ...assumed(parameter.default?.value, parseQuantityValue) };
    case 'count':
      return {
        range: { low: parameter.range[0], high: parameter.range[1] },
        usual: { low: parameter.usual[0], high: parameter.usual[1] },
        ...assumed(parameter.default?.value, Number),
      };
    case 'range':
      return intervals(parameter);
    case 'curve':
      return { ...intervals(parameter.up), across: interval(parameter.across.range) };
    default:
      return {};
  }
}

type EndTexts = readonly [string, string];

function intervals(parameter: {
  dimension: string;
  unit: string;
  range: EndTexts;
  usual: EndTexts;
}): ParameterNumbers {
  return {
    range: interval(parameter.range),
    usual: interval(parameter.usual),
    dimensionName: parameter.dimension,
    unit: parameter.unit,
  };
}

function interval([low, high]: EndTexts): Interval {
  return { low: inBase(low), high: inBase(high) };
}

function parseQuantityValue(text: string): number {
  return parseQuantity(text)?.value ?? Number.NaN;
}

/** A default may also be a word, such as `auto`: then there is no number. */
function assumed(text: string | undefined, read: (text: string) => number): ParameterNumbers {
  const value = text === undefined ? Number.NaN : read(text);
  return Number.isNaN(value) ? {} : { assumed: value };
}
