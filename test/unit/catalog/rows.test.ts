import assert from 'node:assert/strict';
import { hover } from '../../../server/src/features/hover/hover';
import { plainText } from '../../../server/src/features/markdown';
import { snapshotOf } from '../../support/snapshot';
import { shippedData } from './shipped';

const { links, signals, chemistries, gauges, grids, bands, regions } = shippedData().bundle;

/** Every row of the tables with its sources; a region's are those of what it permits. */
const rows = [
  ...[links, signals, chemistries, gauges, grids, bands]
    .flat()
    .map(({ name, source }) => ({ name, sources: [source] })),
  ...regions.map(({ name, permits }) => ({ name, sources: permits.map(({ source }) => source) })),
];

describe('a row of the hardware tables', () => {
  for (const { name, sources } of rows) {
    it(`${name} tells its sources, each with a date or the year in which it was known`, () => {
      assert.ok(sources.length > 0);
      for (const { text, date } of sources) {
        assert.ok(text.length >= 12, text);
        assert.match(date ?? '', /\b(19|20)\d\d\b/, text);
      }
    });
  }

  it('of a chemistry, link or signal that many craft fly is there', () => {
    const names = new Set(rows.map(({ name }) => name));
    const expected = `lipo high-voltage-lipo li-ion lifepo4 sbus crsf mavlink nmea dshot300 pal ntsc
      european-union united-kingdom united-states canada australia japan elsewhere`;
    assert.deepEqual(
      expected.split(/\s+/).filter((name) => !names.has(name)),
      [],
    );
  });
});

describe('a region', () => {
  for (const { name, summary } of regions) {
    it(`${name} says that local rules decide, and that it is no legal advice`, () => {
      assert.match(summary, /local rules and the licence decide/i);
      assert.match(summary, /no legal advice/);
    });
  }
});

describe('hovering a word that names a row', () => {
  const lines = [
    'receiver.link = cr|sf',
    'receiver.link = s|bus',
    'telemetry.link = mav|link',
    'position.protocol = nm|ea',
    'pack.sprint.chemistry = li-|ion',
    'pack.sprint.chemistry = life|po4',
    'pack.sprint.chemistry = high-|voltage-lipo',
    'esc.signal = dsh|ot300',
    'video.band = |f',
    'video.control = half-|duplex',
    'video.standard = p|al',
    'rules.region = united-s|tates',
    'rules.region = jap|an',
    'rules.region = else|where',
    'board.profile = her|on',
  ];
  for (const line of lines) {
    it(`tells source and date: ${line}`, () => {
      const { snapshot, position } = snapshotOf(line);
      const word = line.split('= ')[1]?.replace('|', '') ?? '';
      const sources =
        rows.find(({ name }) => name === word)?.sources ??
        shippedData().bundle.boards.flatMap(({ name, source }) => (name === word ? (source ?? []) : []));
      assert.ok(sources.length > 0);
      const told = plainText(hover(snapshot, position)?.markdown ?? '');
      for (const { text, date } of sources) {
        assert.ok(told.includes(text), `${text}\n${told}`);
        if (date !== undefined) assert.ok(told.includes(date), `${date}\n${told}`);
      }
    });
  }
});
