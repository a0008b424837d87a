import { strict as assert } from 'node:assert';
import { documentLinks } from '../../../../server/src/features/navigation/document-links';
import { snapshotOf } from '../../../support/snapshot';

describe('document links', () => {
  it('cover the paths of includes without their quotes', () => {
    const { snapshot } = snapshotOf('include "parts/club habits.craft" # ours\nx = "no.craft"\n');
    assert.deepEqual(documentLinks(snapshot), [
      {
        range: { start: { line: 0, character: 9 }, end: { line: 0, character: 32 } },
        target: 'test:///work/parts/club%20habits.craft',
        tooltip: 'Open club habits.craft',
      },
    ]);
  });

  it('lead nowhere for paths that are no relative ones', () => {
    const { snapshot } = snapshotOf(
      'include "/etc/x"\ninclude "http://x/y"\ninclude "../../../x"\ninclude ""',
    );
    assert.deepEqual(documentLinks(snapshot), []);
  });
});
