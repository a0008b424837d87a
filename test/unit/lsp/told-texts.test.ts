import { strict as assert } from 'node:assert';
import { adviceOf, messageOf } from '../../../server/src/checks/render';
import { ToldTexts } from '../../../server/src/lsp/told-texts';
import { craftOf, findingsOf } from '../../support/findings';

const text = ['[gyro]', ...Array.from({ length: 40 }, (_, index) => `wobble-${index} = ${index}`)].join('\n');

describe('what findings say', () => {
  it('is what their check says of them, however few sentences are kept', () => {
    for (const capacity of [1, 7, 2048]) {
      const told = new ToldTexts(capacity);
      for (const finding of [...findingsOf(craftOf(text)), ...findingsOf(craftOf(text))])
        assert.equal(told.textOf(finding), `${messageOf(finding)}\n${adviceOf(finding)}`);
    }
  });

  it('is not mixed up between packs, reasons and values', () => {
    const [finding] = findingsOf(craftOf('[gyro]\nwobble = 1\n'));
    assert.ok(finding);
    const told = new ToldTexts();
    const all = [
      finding,
      { ...finding, pack: 'sprint' },
      { ...finding, accepted: 'one hover' },
      { ...finding, accepted: 'another' },
      { ...finding, values: { ...finding.values, name: 'wabble' } },
    ];
    const texts = all.map((one) => told.textOf(one));
    assert.equal(new Set(texts).size, all.length);
    assert.deepEqual(
      all.map((one) => told.textOf(one)),
      texts,
    );
    assert.match(texts[2] ?? '', /^Accepted \(one hover\): /);
  });
});
