import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { SentPieces } from '../../../client/src/sent-pieces';
import { drawnSheet } from '../../../server/src/sheet/drawn-sheet';
import { craftOf, findingsOf } from '../../support/findings';

const club = { 'club-habits.craft': readFileSync('test/demo/club-habits.craft', 'utf8') };
const sandmartin = readFileSync('test/demo/sandmartin.craft', 'utf8');

function sheetOf(text: string) {
  const craft = craftOf(text, club);
  return drawnSheet(craft, findingsOf(craft), 'sprint');
}

describe('what a page is sent of a sheet', () => {
  it('is every part with its drawings, for a page that is new', () => {
    const sheet = sheetOf(sandmartin);
    const sent = new SentPieces();
    for (const time of ['first', 'again']) {
      const { pieces, name } = sent.of(sheet);
      assert.equal(name, 'Sandmartin', time);
      const read = pieces.map(({ json }) => JSON.parse(json ?? 'null'));
      assert.deepEqual(
        read.map(({ part }) => part),
        JSON.parse(JSON.stringify(sheet.parts)),
        time,
      );
      const plots = read.flatMap((piece) => piece.plots);
      assert.equal(plots.length, sheet.plots.length, time);
      sent.forget();
    }
  });

  it('is what an edit changes, and of all else the name', () => {
    const sent = new SentPieces();
    sent.of(sheetOf(sandmartin));
    const slower = sandmartin.replace(/^(cutoff += )2\.5 /m, '$12.4 ');
    const changed = (text: string) =>
      sent.of(sheetOf(text)).pieces.flatMap(({ id, json }) => (json === null ? [] : [id]));
    const first = changed(slower);
    assert.ok(first.includes('how-late'), first.join());
    assert.ok(!first.includes('my-hands') && !first.includes('which-pack'), first.join());
    assert.deepEqual(changed(slower), []);
    assert.deepEqual(changed(sandmartin), first);
  });

  it('is a part again that was away meanwhile and has changed', () => {
    const sent = new SentPieces();
    sent.of(sheetOf(sandmartin));
    sent.of(sheetOf('[gyro]\nrate = 8 kHz\n'));
    const back = sent.of(sheetOf(sandmartin)).pieces.filter(({ json }) => json !== null);
    assert.deepEqual(
      back.map(({ id }) => id),
      ['can-it-fly'],
    );
  });

  it('leaves a page that keeps what it has with all of each sheet, its lines counted as they stand now', () => {
    const sent = new SentPieces();
    const page = new Map<string, string>();
    const later = `# Flown on Sunday\n\n${sandmartin}`;
    const flown = (text: string) => text.replace(/^(cutoff += )2\.5 /m, '$12.4 ');
    for (const text of [
      sandmartin,
      later,
      flown(later),
      flown(sandmartin),
      sandmartin.replace(/\n/g, '\n\n'),
    ]) {
      const sheet = sheetOf(text);
      for (const { id, json } of sent.of(sheet).pieces) if (json !== null) page.set(id, json);
      for (const { id, json } of new SentPieces().of(sheet).pieces) assert.equal(page.get(id), json);
    }
  });
});
