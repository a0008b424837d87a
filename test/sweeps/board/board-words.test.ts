import { strict as assert } from 'node:assert';
import { applied, checked } from '../../support/checked-board';
import { faultyText } from '../../support/faulty-board-text';

describe('what is found in a board’s text', () => {
  it('has fixes that say what they write, and that mend it', async () => {
    const { findings } = await checked(faultyText);
    let tried = 0;
    for (const finding of findings)
      for (const fix of finding.fixes) {
        for (const { newText } of fix.edits) assert.ok(fix.title.includes(newText.trim()), fix.title);
        const now = await checked(applied(faultyText, fix), false);
        const isThere = now.findings.some(
          ({ id, message }) => id === finding.id && message === finding.message,
        );
        assert.ok(!isThere, `${fix.title} leaves ${finding.message}`);
        tried += 1;
      }
    assert.ok(tried > 20, `only ${tried} fixes`);
  });
});
