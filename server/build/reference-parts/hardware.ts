import type { Bundle } from '../../src/catalog/model/bundle';
import { code, plain, sourceOf, table } from './table';

type Rows = readonly (readonly string[])[];

/** What the catalogue knows of the world outside a craft: one table a kind, each row with its source. */
export function hardwareSections(bundle: Bundle): readonly string[] {
  return [
    `## Tables`,
    ...links(bundle),
    ...signals(bundle),
    ...chemistries(bundle),
    ...gauges(bundle),
    ...bands(bundle),
    ...grids(bundle),
    ...regions(bundle),
  ];
}

function section(title: string, heads: readonly string[], rows: Rows): readonly string[] {
  return [`### ${title}`, table([...heads, 'source'], rows)];
}

function links({ links: all }: Bundle): readonly string[] {
  return section(
    'Serial links',
    ['link', 'for', 'speed', 'bits, parity, stop', 'inverted', 'way', 'frame', 'supply'],
    all.map((one) => [
      code(one.name),
      one.uses.join(', '),
      one.baud,
      `${one.dataBits}, ${one.parity}, ${one.stopBits}`,
      one.inverted ? 'yes' : 'no',
      one.directions,
      `${one.frameBytes} bytes every ${one.frameInterval}`,
      one.supply.join(', '),
      sourceOf(one.source),
    ]),
  );
}

function signals({ signals: all }: Bundle): readonly string[] {
  return section(
    'Motor signals',
    ['signal', 'what it is', 'a command'],
    all.map((one) => [
      code(one.name),
      plain(one.title),
      one.kind === 'pulse'
        ? `a pulse of ${one.shortest} to ${one.longest}`
        : `${one.frameBits} bits at ${one.bitRate}`,
      sourceOf(one.source),
    ]),
  );
}

function chemistries({ chemistries: all }: Bundle): readonly string[] {
  return section(
    'Chemistries, volts a cell',
    ['chemistry', 'full', 'nominal', 'warn', 'land', 'storage', 'empty'],
    all.map((one) => [
      code(one.name),
      ...[one.full, one.nominal, one.warn, one.land, one.storage, one.empty],
      sourceOf(one.source),
    ]),
  );
}

function gauges({ gauges: all }: Bundle): readonly string[] {
  return section(
    'Wire gauges',
    ['gauge', 'diameter', 'resistance', 'usual current'],
    all.map((one) => [code(one.name), one.diameter, one.resistance, one.usualCurrent, sourceOf(one.source)]),
  );
}

function bands({ bands: all }: Bundle): readonly string[] {
  return section(
    'Video bands',
    ['band', 'channels in order', 'taken on either side'],
    all.map((one) => [code(one.name), one.channels.join(', '), one.halfWidth, sourceOf(one.source)]),
  );
}

function grids({ grids: all }: Bundle): readonly string[] {
  return section(
    'Overlay grids',
    ['grid', 'columns', 'rows'],
    all.map((one) => [code(one.name), `${one.columns}`, `${one.rows}`, sourceOf(one.source)]),
  );
}

function regions({ regions: all }: Bundle): readonly string[] {
  const caution =
    'What a region permits, as far as the source goes. Local rules and your licence decide; this is no legal advice.';
  const rows = all.flatMap(({ name, permits }) =>
    permits.map((one) => [
      code(name),
      `${one.from} to ${one.to}`,
      one.limit,
      one.licence,
      plain(one.unsure === undefined ? one.text : `${one.text} Not sure: ${one.unsure}.`),
      sourceOf(one.source),
    ]),
  );
  const [title = '', ...rest] = section(
    'Regions',
    ['region', 'from, to', 'most', 'licence', 'what for'],
    rows,
  );
  return [title, caution, ...rest];
}
