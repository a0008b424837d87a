import { parseQuantity } from '../units/quantity';
import type { Parameter, ParameterFile } from './model/parameter';

/** Two ends, both included; in SI, or whole numbers for a count. */
export interface Span {
  readonly low: number;
  readonly high: number;
}

/** A parameter of the catalogue with what its texts say in numbers. */
export interface KnownParameter {
  /** As the catalogue spells it: `pack.<name>.cells`. */
  readonly name: string;
  readonly group: string;
  /** The words of the name; an open part stands as `<name>`. */
  readonly words: readonly string[];
  readonly parameter: Parameter;
  /** Outside is refused. Quantities, counts, ranges; a curve's output. */
  readonly range?: Span;
  /** Outside is a risk. */
  readonly usual?: Span;
  /** A curve's input. */
  readonly across?: Span;
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

type Numbers = Omit<KnownParameter, 'name' | 'group' | 'words' | 'parameter'>;

function numbersOf(parameter: Parameter): Numbers {
  switch (parameter.kind) {
    case 'quantity':
      return { ...spans(parameter), ...assumed(parameter.default?.value, parseQuantityValue) };
    case 'count':
      return {
        range: { low: parameter.range[0], high: parameter.range[1] },
        usual: { low: parameter.usual[0], high: parameter.usual[1] },
        ...assumed(parameter.default?.value, Number),
      };
    case 'range':
      return spans(parameter);
    case 'curve':
      return { ...spans(parameter.up), across: span(parameter.across.range) };
    default:
      return {};
  }
}

type Ends = readonly [string, string];

function spans(parameter: { dimension: string; unit: string; range: Ends; usual: Ends }): Numbers {
  return {
    range: span(parameter.range),
    usual: span(parameter.usual),
    dimensionName: parameter.dimension,
    unit: parameter.unit,
  };
}

function span([low, high]: Ends): Span {
  return { low: inBase(low), high: inBase(high) };
}

function parseQuantityValue(text: string): number {
  return parseQuantity(text)?.value ?? Number.NaN;
}

/** A default may also be a word, such as `auto`: then there is no number. */
function assumed(text: string | undefined, read: (text: string) => number): Numbers {
  const value = text === undefined ? Number.NaN : read(text);
  return Number.isNaN(value) ? {} : { assumed: value };
}
