import { readInterval, readQuantity } from '../../src/catalog/faults/quantities';
import {
  chemistryFaults,
  hardwareNumberFaults,
  linkFaults,
  regionFaults,
} from '../../src/catalog/faults/tables';
import type { Bundle } from '../../src/catalog/model/bundle';
import type { Signal } from '../../src/catalog/model/hardware';
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
  checkGauges(bundle, expect, problems);
  checkBands(bundle, expect);
  checkNames(bundle, problems);
  return problems;
}

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
