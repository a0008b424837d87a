import { strict as assert } from 'node:assert';
import { unequal, Way } from '../../../support/listing-shapes/way';

/** What is handed over after one setting of a listing was changed in the script, with what a proof against `then` finds. */
async function changed(text: string, more: string, then: string): Promise<string> {
  const way = new Way(text);
  const before = way.record(way.entries((await way.including()).view));
  const entries = way.entries((await way.includingWith(more)).view);
  const written = way.written(entries, before);
  assert.deepEqual(unequal(way.proof(entries, then)), []);
  assert.notDeepEqual(unequal(way.proof(entries, text)), []);
  return written.text;
}

describe('a change in the script, in the text of the board', () => {
  const marked = '+tern\n-plover\n+willow\nraven=5\n';

  it('turns a name off and on with the marks of the board', async () => {
    assert.equal(await changed(marked, '[own]\ntern = off\n', marked.replace('+tern', '-tern')), '-tern\n');
    assert.equal(
      await changed(marked, '[own]\nplover = on\n', marked.replace('-plover', '+plover')),
      '+plover\n',
    );
  });

  it('takes what the old value came to with it, and leaves how it counts', async () => {
    const read = 'cut = 1500 (1.5 kHz)\nidle = 550 (5.5 %)\nwait = 25 (0.1 s)\n';
    const then = 'cut = 1200 (1.2 kHz)\nidle = 550 (5.5 %)\nwait = 30 (0.1 s)\n';
    assert.equal(
      await changed(read, '[own]\ncut = 1200\nwait = 30\n', then),
      'cut = 1200\nwait = 30 (0.1 s)\n',
    );
  });

  it('is one value of a row, whose columns stay', async () => {
    const table = 'Bird    From   Upto\ntern    1700   2100\nplover  1300   1700\n';
    const then = table.replace('1300', '1350');
    assert.equal(await changed(table, '[own.plover]\nFrom = 1350\n', then), then);
  });
});
