import { strict as assert } from 'node:assert';
import { type BoardLayer, scriptTextOf } from '../../../server/src/board/layer/layer';
import { LayerReader } from '../../../server/src/board/layer/layer-reader';
import { placeInScript, rangeOfScript } from '../../../server/src/board/layer/places';
import { boardNameOf } from '../../../server/src/board/layer/profile-of-text';
import { profileOf } from '../../../server/src/board/profile/profile';
import { testCatalog } from '../../support/catalog';

function read(text: string): BoardLayer {
  return new LayerReader(testCatalog, null).read(text);
}

describe('a board’s text as a layer', () => {
  it('is a script with a line for each setting, as its board writes it', () => {
    const text = ['[gyro]', 'rate = 8000', '"cut off" = 1,5', '', '[Kreisel α]', 'rate = 0x1F', 'rate = ""'];
    assert.equal(
      scriptTextOf(read(text.join('\n'))),
      [
        'own.gyro.rate = 8000',
        'own.gyro."cut off" = 1,5',
        'own."Kreisel α".rate = 0x1F',
        'own."Kreisel α".rate."#2" = ""',
        '',
      ].join('\n'),
    );
  });

  it('has what a profile gives a meaning as that, where its first part stands', () => {
    const heron = profileOf(testCatalog.board('heron') ?? assert.fail('no heron'));
    const text = ['in levers:', 'arming live from is 1750;', 'arming live to is 2050;', 'wobble is 3;'];
    const layer = new LayerReader(testCatalog, heron).read(text.join('\n'));
    assert.equal(
      scriptTextOf(layer),
      'switch.arm.on = 1750..2050 us\n\nown.levers.wobble = 3\nboard.profile = heron',
    );
  });

  it('leads from each place of the text to its setting and back', () => {
    const layer = read('pace: 12; reach: 7\nlamp: dim; horn: loud');
    for (const [index, { at }] of layer.settings.entries())
      for (const range of [at.name, at.value]) {
        const start = placeInScript(layer, range.start);
        assert.equal(start.line, index);
        assert.deepEqual(rangeOfScript(layer, start, placeInScript(layer, range.end)), range);
      }
  });

  it('goes by the profile that has the name of its file', () => {
    assert.equal(boardNameOf('dipper.boardtext'), 'dipper');
    assert.equal(boardNameOf('Größe 2 am Heck.boardtext'), 'gro-e-2-am-heck');
    assert.equal(boardNameOf('2024.txt'), null);
  });
});
