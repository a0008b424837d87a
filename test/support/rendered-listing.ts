import { strict as assert } from 'node:assert';
import type { ListedSetting, Listing } from '../../server/src/board/listing/listing';
import { readListing } from '../../server/src/board/listing/read-listing';

/** What a text says, a setting a line, as a reader would say it: `north › rate = 5`. */
export function rendered(text: string): string {
  return read(text).settings.map(renderedSetting).join('\n');
}

/** The same without a look at places, for a text in which a session left signs within what it says. */
export function renderedAsShown(text: string): string {
  return readListing(text, null).settings.map(renderedSetting).join('\n');
}

/** Reads a text by forms found from it, and holds what must be true of every listing. */
function read(text: string): Listing {
  const listing = readListing(text, null);
  holdsPlaces(listing);
  // A text is read in the same way by the forms that were found from it.
  assert.deepEqual(readListing(text, listing.forms), listing);
  return listing;
}

function renderedSetting({ groups, name, occurrence, value, style, stated }: ListedSetting): string {
  const count = occurrence > 1 ? ` (${occurrence})` : '';
  const written = style.kind === 'quoted' ? `${style.mark}${value}${style.mark}` : value;
  const said = [
    ...(stated?.range == null ? [] : [`${stated.range.low} to ${stated.range.high}`]),
    ...(stated?.words == null ? [] : [stated.words.join('|')]),
    ...(stated?.default == null ? [] : [`else ${stated.default}`]),
    ...(stated?.unit == null ? [] : [`in ${stated.unit}`]),
    ...(stated?.remark == null ? [] : [`"${stated.remark}"`]),
  ];
  return `${[...groups, name].join(' › ')}${count} = ${written}${said.length === 0 ? '' : `  (${said.join('; ')})`}`;
}

/** Places lie in the text, in order, and hold what is said to stand there. */
function holdsPlaces({ text, settings }: Listing): void {
  for (const { name, value, style, at } of settings) {
    // Entries of a list have no written name: they are counted.
    if (at.name.end > at.name.start) assert.equal(text.slice(at.name.start, at.name.end), name);
    const written = text.slice(at.value.start, at.value.end);
    if (style.kind === 'presence')
      assert.equal(written.trim(), (value === 'off' ? style.negation : (style.affirmation ?? '')).trim());
    else if (!/[\r\n]/.test(written)) assert.equal(written, value);
  }
}
