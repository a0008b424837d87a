import type { Bundle } from '../../src/catalog/model/bundle';
import type { Parameter } from '../../src/catalog/model/parameter';
import { placedParameters } from './places';
import { readQuantity, readSpan, unitTextProblem } from './quantities';

/** Ranges, usual ranges, units and defaults of the parameters: each inside the one around it. */
export function numberProblems(bundle: Bundle): readonly string[] {
  return placedParameters(bundle).flatMap(({ at, parameter }) => {
    const problems: string[] = [];
    check(at, parameter, problems);
    return problems;
  });
}

function check(at: string, parameter: Parameter, problems: string[]): void {
  switch (parameter.kind) {
    case 'quantity':
      checkQuantity(at, parameter, problems);
      break;
    case 'range':
      checkRange(at, parameter, problems);
      break;
    case 'count':
      checkCount(at, parameter, problems);
      break;
    case 'curve':
      checkCurve(at, parameter, problems);
      break;
    default:
  }
}

interface Spanned {
  readonly dimension: string;
  readonly unit: string;
  readonly range: readonly [string, string];
  readonly usual: readonly [string, string];
}

type Ends = readonly [number, number];

/** The usual ends, after checking that they lie in the range. */
function checkSpans(at: string, told: Spanned, problems: string[]): Ends | undefined {
  const unit = unitTextProblem(told.unit, told.dimension);
  if (unit !== undefined) problems.push(`${at}.unit: ${unit}`);
  const range = readSpan(`${at}.range`, told.range, told.dimension, problems);
  const usual = readSpan(`${at}.usual`, told.usual, told.dimension, problems);
  if (range !== undefined && usual !== undefined) checkInside(`${at}.usual`, usual, range, problems);
  return usual;
}

function checkInside(at: string, inner: Ends, outer: Ends, problems: string[]): void {
  if (inner[0] < outer[0] || inner[1] > outer[1]) problems.push(`${at}: reaches outside the range`);
}

type OfKind<K extends Parameter['kind']> = Extract<Parameter, { kind: K }>;

function checkQuantity(at: string, parameter: OfKind<'quantity'>, problems: string[]): void {
  const usual = checkSpans(at, parameter, problems);
  const text = parameter.default?.value;
  if (text === undefined || parameter.orWords?.some((word) => word.name === text)) return;
  const read = readQuantity(text, parameter.dimension);
  if (read.problem !== undefined) problems.push(`${at}.default: ${read.problem}`);
  else if (usual !== undefined) checkDefault(at, read.value, usual, problems);
}

function checkDefault(at: string, value: number, usual: Ends, problems: string[]): void {
  if (value < usual[0] || value > usual[1]) problems.push(`${at}.default: lies outside the usual range`);
}

function checkRange(at: string, parameter: OfKind<'range'>, problems: string[]): void {
  const usual = checkSpans(at, parameter, problems);
  if (parameter.default === null) return;
  const [low = '', high = ''] = parameter.default.value.split('..');
  const unit = high.replace(/^[\s\d.+-]+/, '');
  const lower = /[A-Za-z%]/.test(low) ? low : `${low.trim()} ${unit}`;
  const ends = readSpan(`${at}.default`, [lower, high], parameter.dimension, problems);
  if (ends !== undefined && usual !== undefined) checkInside(`${at}.default`, ends, usual, problems);
}

function checkCount(at: string, parameter: OfKind<'count'>, problems: string[]): void {
  const { range, usual, orWords } = parameter;
  if (range[0] >= range[1]) problems.push(`${at}.range: ${range.join(' to ')} does not rise`);
  if (usual[0] > usual[1]) problems.push(`${at}.usual: ${usual.join(' to ')} falls`);
  checkInside(`${at}.usual`, usual, range, problems);
  const text = parameter.default?.value;
  if (text === undefined || orWords?.some((word) => word.name === text)) return;
  if (/^-?\d+$/.test(text)) checkDefault(at, Number(text), usual, problems);
  else problems.push(`${at}.default: "${text}" is not a whole number`);
}

function checkCurve(at: string, { across, up, default: assumed }: OfKind<'curve'>, problems: string[]): void {
  const unit = unitTextProblem(across.unit, across.dimension);
  if (unit !== undefined) problems.push(`${at}.across.unit: ${unit}`);
  const width = readSpan(`${at}.across.range`, across.range, across.dimension, problems);
  const usual = checkSpans(`${at}.up`, up, problems);
  if (assumed === null) return;
  for (const point of assumed.value.split(',')) {
    const [from = '', to = ''] = point.split('->').map((text) => text.trim());
    const place = readQuantity(from, across.dimension);
    const height = readQuantity(to, up.dimension);
    for (const { problem } of [place, height]) {
      if (problem !== undefined) problems.push(`${at}.default: ${problem}`);
    }
    if (place.problem === undefined && width !== undefined) checkDefault(at, place.value, width, problems);
    if (height.problem === undefined && usual !== undefined) checkDefault(at, height.value, usual, problems);
  }
}
