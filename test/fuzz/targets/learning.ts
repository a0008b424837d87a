import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { canBeConfirmed, settingKey } from '../../../server/src/board/learn/confirm';
import { learnShape } from '../../../server/src/board/learn/shape';
import { profileSkeleton } from '../../../server/src/board/learn/skeleton';
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

const names = [...testCatalog.parameters.keys()].filter((name) => canBeConfirmed(testCatalog, name));

/** Listings that nobody has seen before. */
export const learning = target<Listing>(
  {
    name: 'learning',
    share: 3,
    holds: 'a listing is learned, and the profile made of it is one that the workspace takes',
  },
  fc.record({ text: capture, confirms: fc.nat(4) }),
  ({ text, confirms }) => {
    const shape = learnShape(text);
    const count = splitLines(text).length;
    assert.ok(shape.understood >= 0 && shape.understood <= 1, `${shape.understood}`);
    for (const { number } of shape.lines) assert.ok(number >= 0 && number < count, `${number} of ${count}`);
    const { rows } = learned(shape, testCatalog);
    assert.equal(rows.length, shape.settings.length);
    const confirmed = new Map(
      rows.flatMap(({ key, proposals }, index) => {
        const parameter = proposals[0]?.parameter ?? names[index];
        return confirms > 0 && index % confirms === 0 && parameter !== undefined
          ? [[key, parameter] as const]
          : [];
      }),
    );
    const skeleton = profileSkeleton(shape, 'kestrel', confirmed, testCatalog);
    if (skeleton === null) return assert.equal(shape.line, null);
    const keys = new Set(shape.settings.map(settingKey));
    for (const key of skeleton.mapped) assert.ok(keys.has(key), key);
    if (count > 12) return;
    const additions = workspaceWithBoard('boards/kestrel.json', skeleton.profile);
    assert.deepEqual(additions.problems.get('boards/kestrel.json'), []);
  },
);
