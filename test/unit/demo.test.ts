import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { findingsIn } from '../support/findings';

const folder = 'test/demo';
const files = Object.fromEntries(
  readdirSync(folder)
    .filter((name) => name.endsWith('.craft'))
    .map((name) => [name, readFileSync(join(folder, name), 'utf8')]),
);

/** What the demo means to show: one risk that is accepted with its reason. */
const meant: Readonly<Record<string, readonly string[]>> = {
  'sandmartin.craft': ['tune/derivative-unfiltered, accepted'],
};

describe('the demo', () => {
  it('holds three craft and what they share', () => assert.equal(Object.keys(files).length, 4));

  for (const [name, text] of Object.entries(files)) {
    it(`${name} has no findings that are not meant`, () => {
      const found = findingsIn(text, files).map(
        ({ id, accepted }) => `${id}${accepted === null ? '' : ', accepted'}`,
      );
      assert.deepEqual(found, meant[name] ?? []);
    });
  }
});
