import assert from 'node:assert/strict';
import { craftOf, findingsOf, summaryOf } from '../../../support/findings';
import { mended } from '../../../support/mended';

describe('what a script is taken for, where no other includes it', () => {
  const told = (text: string) =>
    findingsOf(craftOf(text, {}, () => false))
      .map(summaryOf)
      .filter(({ id }) => id === 'safe/craft-unsaid' || id === 'safe/read-as-part')
      .map(({ id, marked, message, fixes }) => [id, marked, message, ...fixes]);

  it('is told where [craft] was forgotten, with a way to write it', () => {
    const text = '# Finch\n[pack.sprint]\ncells = 6\n[receiver]\nlink = crsf\n';
    assert.deepEqual(told(text), [
      [
        'safe/craft-unsaid',
        '# Finch',
        'There is no [craft] here, but the script has packs, a receiver: it was checked as a whole craft.',
        'Write [craft] with the name "main"',
      ],
    ]);
    const better = mended(text, 'safe/craft-unsaid', {}, () => false);
    assert.deepEqual(better, [`${text}[craft]\nname = "main"\n`]);
    assert.deepEqual(told(better[0] ?? ''), []);
  });

  it('is told of a part that may be a craft, and not of a few lines, a craft or of what says nothing', () => {
    const much = '[gyro]\nrate = 4 kHz\n[esc]\n[arming]\nbeep = on\n';
    const [part, ...others] = [much, '[gyro]\nrate = 4 kHz\n[esc]\n', '[craft]\n', ''].map(told);
    assert.deepEqual(part, [
      [
        'safe/read-as-part',
        '[gyro]',
        'This script speaks of arming, esc and gyro, but has no [craft], packs, motors, propellers or receiver: it was read as a part, and what a whole craft needs was not checked.',
        'Write [craft] with the name "main"',
      ],
    ]);
    assert.deepEqual(others, [[], [], []]);
  });
});
