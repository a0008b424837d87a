import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { ownPath, settingOfOwnPath } from '../../../../server/src/board/listing/own-path';

describe('the path of a setting that only the board knows', () => {
  it('is its groups and its name under own', () => {
    assert.deepEqual(ownPath({ groups: ['Kreisel α'], name: 'tiefpass 1', occurrence: 1 }), [
      'own',
      'Kreisel α',
      'tiefpass 1',
    ]);
  });

  it('counts the second and later ones of the same name', () => {
    assert.deepEqual(ownPath({ groups: [], name: 'port', occurrence: 3 }), ['own', 'port', '#3']);
  });

  it('keeps a name apart that looks like such a count', () => {
    assert.deepEqual(ownPath({ groups: ['port'], name: '#3', occurrence: 1 }), ['own', 'port', '##3']);
    assert.deepEqual(ownPath({ groups: ['port'], name: '#3', occurrence: 2 }), ['own', 'port', '#3', '#2']);
  });

  it('leads back to the setting', () => {
    const step = fc.oneof(fc.string(), fc.stringMatching(/^#{0,3}[0-9]{0,3}$/));
    const setting = fc.record(
      {
        groups: fc.array(step, { maxLength: 3 }),
        name: step,
        occurrence: fc.integer({ min: 1, max: 120 }),
      },
      { noNullPrototype: true },
    );
    fc.assert(fc.property(setting, (one) => assert.deepEqual(settingOfOwnPath(ownPath(one)), one)));
  });

  it('is of no setting where it is written in another way', () => {
    for (const steps of [
      [],
      ['own'],
      ['gyro', 'rate'],
      ['own', '#2'],
      ['own', 'port', '#1'],
      ['own', 'port', '#02'],
    ])
      assert.equal(settingOfOwnPath(steps), null, steps.join(' '));
  });
});
