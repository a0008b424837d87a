import { strict as assert } from 'node:assert';
import { readListing } from '../../../../server/src/board/listing/read-listing';
import { programListings } from '../../../support/program-listings';

/** Of the settings that a program prints, at least so many are found with their values. */
const leastFound = 0.98;
/** What these print is not settings alone: options without values, strings with commas in them, lists of files. */
const hard: ReadonlySet<string> = new Set(['gcc', 'infocmp', 'update-alternatives']);

describe('what programs print', () => {
  for (const { program, text, settings } of programListings()) {
    const least = hard.has(program) ? 0.7 : leastFound;
    it(`${program}: its settings are found, each on its line`, () => {
      const read = readListing(text, null);
      const lineOf = (place: number) => text.slice(0, place).split('\n').length - 1;
      const lines = new Set(read.settings.map(({ at }) => lineOf(Math.max(at.name.start, at.value.start))));
      const found = settings.filter(({ line }) => lines.has(line));
      assert.ok(found.length >= least * settings.length, `${found.length} of ${settings.length}`);
      assert.ok(read.settings.length >= least * settings.length, `${read.settings.length} settings`);
      assert.deepEqual(readListing(text, read.forms).settings, read.settings);
    });
  }
});
