import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { confirmable } from '../../../server/src/board/learn/confirm';
import { learnedProfile } from '../../../server/src/board/learn/learned-profile';
import { learnedSettings, settingName } from '../../../server/src/board/learn/learned-settings';
import { confirmedAs } from '../../../server/src/board/learn/said';
import { readListing } from '../../../server/src/board/listing/read-listing';
import { learned } from '../../../server/src/features/board/learning';
import { splitLines } from '../../../server/src/language/split-lines';
import { workspaceWithBoard } from '../../support/additions';
import { testCatalog } from '../../support/catalog';
import { capture } from '../inputs/board-texts';
import { target } from '../target';

interface Listing {
  readonly text: string;
  /** Which of the proposals a person confirms: every so many. */
  readonly confirms: number;
}

const names = [...testCatalog.parameters.keys()].filter(
  (name) => confirmable(name, testCatalog) !== undefined,
);

/** Listings that nobody has seen before. */
export const learning = target<Listing>(
  {
    name: 'learning',
    share: 3,
    holds: 'a listing is learned, and the profile made of it is one that the workspace takes',
  },
  fc.record({ text: capture, confirms: fc.nat(4) }),
  ({ text, confirms }) => {
    const listing = readListing(text, null);
    const count = splitLines(text).length;
    const { rows } = learned(listing, testCatalog);
    assert.equal(rows.length, listing.settings.length);
    const confirmed = confirmedAs(
      rows.flatMap(({ key, proposals }, index) => {
        const parameter = proposals[0]?.parameter ?? names[index];
        return confirms > 0 && index % confirms === 0 && parameter !== undefined
          ? [[key, parameter] as const]
          : [];
      }),
    );
    const made = learnedProfile(listing, 'kestrel', confirmed, testCatalog);
    if (made === null) return assert.equal(listing.settings.length, 0);
    const keys = new Set(learnedSettings(listing).map(settingName));
    for (const key of made.mapped) assert.ok(keys.has(key), key);
    if (count > 12) return;
    const additions = workspaceWithBoard('boards/kestrel.json', made.profile);
    assert.deepEqual(additions.problems.get('boards/kestrel.json'), []);
  },
);
