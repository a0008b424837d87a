import { readInterval, readQuantity } from '../../src/catalog/faults/quantities';
import {
  chemistryFaults,
  hardwareNumberFaults,
  linkFaults,
  regionFaults,
} from '../../src/catalog/faults/tables';
import type { Bundle } from '../../src/catalog/model/bundle';
import type { Signal } from '../../src/catalog/model/hardware';
import type { MotorFile } from '../../src/catalog/model/motors';
import type { PackFile } from '../../src/catalog/model/packs';
import { parseQuantity } from '../../src/units/quantity';
import { unitOf } from '../../src/units/unit';
import { asLines, repeated } from './places';

/** Quantities of the hardware tables: of the right dimension, in the right order, each name once. */
export function hardwareProblems(bundle: Bundle): readonly string[] {
  const problems: string[] = [];
  const expect = (at: string, text: string | null | undefined, dimension: string): void => {
    const problem = text == null ? undefined : readQuantity(text, dimension).problem;
    if (problem !== undefined) problems.push(`${at}: ${problem}`);
  };
  for (const board of bundle.boards)
    problems.push(
      ...asLines(`schemas/boards/${board.name}.json: hardware`, hardwareNumberFaults(board.hardware ?? {})),
    );
  for (const signal of bundle.signals) checkSignal(signal, expect, problems);
  for (const link of bundle.links)
    problems.push(...asLines(`schemas/links.json: ${link.name}`, linkFaults(link)));
  for (const cell of bundle.chemistries)
    problems.push(...asLines(`schemas/chemistries.json: ${cell.name}`, chemistryFaults(cell)));
  for (const region of bundle.regions)
    problems.push(...asLines(`schemas/regions.json: ${region.name}`, regionFaults(region)));
  for (const [index, { diameter, pitch }] of bundle.propellers.entries()) {
    expect(`schemas/propellers.json: propellers[${index}].diameter`, diameter, 'length');
    expect(`schemas/propellers.json: propellers[${index}].pitch`, pitch, 'length');
  }
  if (bundle.packs !== null) problems.push(...packProblems(bundle.packs));
  checkGauges(bundle, expect, problems);
  checkBands(bundle, expect);
  checkNames(bundle, problems);
  return problems;
}

/** Quantities of the right dimension, spans in order, and temperatures that rise. */
function packProblems({ kinds, quickRating, inFlight, cold }: PackFile): readonly string[] {
  const at = 'schemas/packs.json';
  const rows = cold.charge.map((row) => row.temperature);
  const quantities = [
    ...Object.values(kinds).map(({ resistance }) => [resistance, 'resistance'] as const),
    [quickRating, 'discharge-rating'] as const,
    ...[cold.asKnown, cold.usual, ...rows].map((text) => [text, 'temperature'] as const),
  ];
  const unreadable = quantities.flatMap(([text, dimension]) => readQuantity(text, dimension).problem ?? []);
  const spans = [inFlight, cold.activation, ...cold.charge];
  const crossed = spans.filter(({ low, likely, high }) => low > likely || likely > high);
  const kelvin = rows.map((text) => parseQuantity(text)?.value ?? Number.NaN);
  const falls = kelvin.some((one, index) => one <= (kelvin[index - 1] ?? Number.NEGATIVE_INFINITY));
  return [
    ...unreadable.map((problem) => `${at}: ${problem}`),
    ...crossed.map(({ likely }) => `${at}: ${likely} is not within its span`),
    ...(falls ? [`${at}: cold.charge goes from the coldest up`] : []),
  ];
}

/** Of the motors from which laws are fitted: only what can be read is. */
export function motorProblems({ motors, underLoad }: MotorFile): readonly string[] {
  const of = (table: string, rows: readonly Readonly<Record<string, string | number>>[]) =>
    rows.flatMap((row, index) =>
      Object.entries(row).flatMap(([key, text]) => {
        const dimension = motorDimensions.get(key);
        if (dimension === undefined) return [];
        const { problem } = readQuantity(String(text), dimension);
        return problem === undefined ? [] : [`schemas/motors.json: ${table}[${index}].${key}: ${problem}`];
      }),
    );
  return [...of('motors', motors), ...of('underLoad', underLoad)];
}

const motorDimensions: ReadonlyMap<string, string> = new Map([
  ['statorDiameter', 'length'],
  ['statorHeight', 'length'],
  ['mass', 'mass'],
  ['kv', 'motor-constant'],
  ['kvUnderLoad', 'motor-constant'],
  ['resistance', 'resistance'],
  ['resistanceUnderLoad', 'resistance'],
  ['idleCurrent', 'current'],
]);

type Expect = (at: string, text: string | null | undefined, dimension: string) => void;

function checkSignal(signal: Signal, expect: Expect, problems: string[]): void {
  const at = `schemas/signals.json: ${signal.name}`;
  expect(`${at}.bitRate`, signal.bitRate, 'symbol-rate');
  expect(`${at}.gap`, signal.gap, 'time');
  expect(`${at}.answer.turnAround`, signal.answer?.turnAround, 'time');
  if (signal.kind === 'digital') {
    const complete =
      signal.frameBits !== undefined && signal.bitRate !== undefined && signal.gap !== undefined;
    if (!complete) problems.push(`${at}: a digital signal needs frameBits, bitRate and gap`);
  } else if (signal.shortest === undefined || signal.longest === undefined) {
    problems.push(`${at}: a pulse needs its shortest and its longest width`);
  } else {
    problems.push(...asLines(at, readInterval([], [signal.shortest, signal.longest], 'time').faults));
  }
}

function checkGauges(bundle: Bundle, expect: Expect, problems: string[]): void {
  const perLength = unitOf('ohm/m').dimension.key;
  for (const gauge of bundle.gauges) {
    const at = `schemas/gauges.json: ${gauge.name}`;
    expect(`${at}.diameter`, gauge.diameter, 'length');
    expect(`${at}.usualCurrent`, gauge.usualCurrent, 'current');
    const key = parseQuantity(gauge.resistance)?.dimension.key;
    if (key !== perLength) problems.push(`${at}.resistance: "${gauge.resistance}" is no resistance a length`);
  }
}

function checkBands(bundle: Bundle, expect: Expect): void {
  for (const band of bundle.bands) {
    const at = `schemas/video-bands.json: ${band.name}`;
    expect(`${at}.halfWidth`, band.halfWidth, 'frequency');
    for (const channel of band.channels) expect(`${at}.channels`, channel, 'frequency');
  }
}

function checkNames(bundle: Bundle, problems: string[]): void {
  const { boards, links, signals, chemistries, gauges, grids, bands, regions } = bundle;
  for (const table of [boards, links, signals, chemistries, gauges, grids, bands, regions]) {
    for (const name of repeated(table.map((row) => row.name)))
      problems.push(`${name}: stands in its table twice`);
  }
}
