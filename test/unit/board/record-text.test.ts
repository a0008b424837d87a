import { strict as assert } from 'node:assert';
import { recordText } from '../../../server/src/board/writing/record-text';
import { readHandOver } from '../../../server/src/catalog/model/hand-over';

describe('the record of a hand-over', () => {
  it('holds as many settings as a board may have, in a file that is read again', () => {
    const settings = Array.from({ length: 100_000 }, (_, index) => ({
      groups: [`block ${index % 1000}`],
      name: `setting ${index}`,
      value: String(index % 977),
    }));
    const record = { version: 1, board: 'plover', pack: null, reason: null, settings } as const;
    const text = recordText({ ...record, settings });
    assert.ok(text.length < 10_000_000);
    assert.deepEqual(readHandOver(text), record);
  });

  it('of nothing is read again', () => {
    const record = { version: 1, board: 'plover', pack: null, reason: null, settings: [] } as const;
    assert.deepEqual(readHandOver(recordText({ ...record, settings: [] })), record);
  });
});
