import { strict as assert } from 'node:assert';
import { textBeside } from '../../../server/src/host/text-beside';
import { withScratch } from '../../support/scratch';

describe('a text that lies beside the program', () => {
  it('is read as it is, in whatever script', () =>
    withScratch({ 'text.json': '"50 Hz · Größe · 大きさ · 🛩"' }, async (scratch) =>
      assert.equal(textBeside('text.json', scratch.path), '"50 Hz · Größe · 大きさ · 🛩"'),
    ));

  it('is told to be missing, with its path and what to do', () =>
    withScratch({}, async (scratch) =>
      assert.throws(
        () => textBeside('missing.json', scratch.path),
        ({ message }: Error) =>
          message.includes(scratch.file('missing.json')) && message.includes('install propsoff'),
      ),
    ));
});
