import { strict as assert } from 'node:assert';
import { readListing } from '../../../../server/src/board/listing/read-listing';
import { unequal, Way } from '../../../support/listing-shapes/way';
import { programListings } from '../../../support/program-listings';

/** Of the settings that a program prints, at least so many come round. */
const least = 0.98;

describe('what programs of every kind print', () => {
  const listings = programListings();

  it('is a dozen of them and a thousand settings, at least', () => {
    assert.ok(listings.length >= 12);
    assert.ok(listings.reduce((sum, { settings }) => sum + settings.length, 0) > 1000);
  });

  for (const { program, text, settings } of listings) {
    it(`${program}: its settings are found, each on its line`, () => {
      const read = readListing(text, null);
      const lineOf = (place: number) => text.slice(0, place).split('\n').length - 1;
      const lines = new Set(read.settings.map(({ at }) => lineOf(Math.max(at.name.start, at.value.start))));
      const found = settings.filter(({ line }) => lines.has(line));
      assert.ok(found.length >= least * settings.length, `${found.length} of ${settings.length}`);
      assert.ok(read.settings.length >= least * settings.length, `${read.settings.length} settings`);
      assert.deepEqual(readListing(text, read.forms).settings, read.settings);
    });

    it(`${program}: they come back as they stand, and prove equal`, async () => {
      const way = new Way(text);
      assert.deepEqual(way.faults, []);
      const { view, mustFix } = await way.including();
      assert.deepEqual(mustFix, []);
      const entries = way.entries(view);
      const written = way.written(entries);
      const lines = new Set(written.text.split(/\r?\n/).map((line) => line.trimEnd()));
      const all = text.split(/\r?\n/).map((line) => line.trimEnd());
      const numbers = new Set(settings.map(({ line }) => line));
      const back = [...numbers].filter((number) => lines.has(all[number] ?? ''));
      assert.ok(back.length >= least * numbers.size, `${back.length} of ${numbers.size}`);
      assert.deepEqual(
        unequal(way.proof(entries, text)).filter((fault) => !fault.startsWith('line ')),
        [],
      );
    });
  }
});
