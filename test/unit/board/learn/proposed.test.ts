import assert from 'node:assert/strict';
import { learnedSettings } from '../../../../server/src/board/learn/learned-settings';
import { familyOf, meansOf, type Proposal } from '../../../../server/src/board/learn/propose/proposal';
import { proposals } from '../../../../server/src/board/learn/propose/propose';
import { readListing } from '../../../../server/src/board/listing/read-listing';
import { testCatalog } from '../../../support/catalog';

function proposed(...lines: readonly string[]): readonly (Proposal | null)[] {
  const settings = learnedSettings(readListing(lines.join('\n'), null));
  return proposals(settings, testCatalog);
}

/** `sure gyro.rate`, or `-` where nothing is near. */
function told(...lines: readonly string[]): readonly string[] {
  return proposed(...lines).map((one) => (one === null ? '-' : `${one.sureness} ${meansOf(one)}`));
}

describe('a proposal of what a setting stands for', () => {
  it('knows single letters where they stand with an axis, and is not sure of them elsewhere', () => {
    assert.deepEqual(told('[roll]', 'p = 47', 'i = 80', 'd = 32', '[pitch]', 'p = 51', 'i = 84', 'd = 36'), [
      'sure control.roll.proportional',
      'sure control.roll.integral',
      'sure control.roll.derivative',
      'sure control.pitch.proportional',
      'sure control.pitch.integral',
      'sure control.pitch.derivative',
    ]);
    for (const one of proposed('p = 47', 'w = 3', 'x = 12')) assert.notEqual(one?.sureness, 'sure');
  });

  it('takes no word for a quantity', () => {
    for (const one of proposed(
      'motor idle output = low',
      'control loop rate = fast',
      'arming delay = long',
    )) {
      const kind = testCatalog.parameters.get(one?.parameter ?? '')?.parameter.kind;
      assert.ok(kind !== 'quantity' && kind !== 'count', one?.parameter);
    }
  });

  it('takes a word that stands in place of a number for one, and is not sure', () => {
    const [one] = proposed('cell count = auto', 'arming delay = 2');
    assert.equal(one?.parameter, 'power.cells');
    assert.notEqual(one?.sureness, 'sure');
  });

  it('rests on no group alone', () => {
    assert.deepEqual(told('[gyro filter cutoff]', 'zzyzx = 200', 'qwop = 3', '[arming delay]', 'zzyzx = 2'), [
      '-',
      '-',
      '-',
    ]);
  });

  it('is not sure where the unit is one of something else', () => {
    const [delay] = proposed('arming delay = 25 deg', 'arming tilt limit = 25 deg');
    assert.notEqual(delay?.sureness, 'sure');
  });

  it('goes by the remark where the name says nothing', () => {
    const [first, second] = proposed(
      'a12 = 240   # gyro low-pass 2 cutoff',
      'a13 = 48    # proportional gain of roll',
      'a14 = 3     # colour of the third lamp',
    );
    assert.deepEqual([first?.parameter, first?.member], ['gyro.filter.<number>.cutoff', '2']);
    assert.equal(second?.parameter, 'control.roll.proportional');
  });

  it('goes by the group where the name is a unit alone', () => {
    assert.deepEqual(told('gyro/lowpass1/hz = 240', 'gyro/lowpass2/hz = 400', 'arming/delay/ms = 250'), [
      'sure gyro.filter.1.cutoff',
      'sure gyro.filter.2.cutoff',
      'sure arming.delay',
    ]);
  });

  it('goes by the group and the number that is its name', () => {
    assert.deepEqual(told('gyro/cut/1 = 180 Hz', 'gyro/cut/2 = 300 Hz', 'motor/magnets = 14'), [
      'sure gyro.filter.1.cutoff',
      'sure gyro.filter.2.cutoff',
      'sure motor.poles',
    ]);
  });

  it('is not sure of a range where more than two values stand', () => {
    assert.deepEqual(told('switch arm = 5 1700 2100', 'switch level = 1700 2100'), [
      'likely switch.arm.on',
      'sure switch.self-level.on',
    ]);
  });

  it('goes by the number that the value names', () => {
    const [channel, label] = told('switch arm channel = aux 2', 'switch arm label = bench two');
    assert.deepEqual([channel, label], ['likely switch.arm.channel', 'sure switch.arm.label']);
  });

  it('goes by the words that the value is one of', () => {
    const [height] = proposed('sensor source = barometer');
    const [current] = proposed('sensor source = shunt');
    assert.deepEqual(
      [height?.parameter, current?.parameter],
      ['position.height-from', 'power.current-measure'],
    );
  });

  it('gives a parameter to one setting, and its rivals to the others', () => {
    const all = proposed(
      '[gyro]',
      'low-pass cutoff 1 = 200',
      'lowpass 1 cutoff = 300',
      'cutoff lowpass 1 = 400',
    );
    const meant = all.map((one) => (one === null ? '' : JSON.stringify([one.parameter, one.member])));
    assert.equal(new Set(meant).size, meant.length);
    for (const one of all) assert.notEqual(one?.sureness, 'sure');
  });

  it('knows the short names of a document by the groups that they stand in', () => {
    const text = {
      gyro: { rate: 8000, filters: { 1: { cutoff: 240 }, 2: { centre: 190 } } },
      failsafe: { delay: 400 },
      switches: { arm: { channel: 5, from: 1700, to: 2100 } },
      lamps: { colour: 'green' },
    };
    assert.deepEqual(told(JSON.stringify(text)), [
      'sure gyro.rate',
      'sure gyro.filter.1.cutoff',
      'sure gyro.filter.2.centre',
      'sure signal-loss.hold',
      'sure switch.arm.channel',
      'sure switch.arm.on',
      'sure switch.arm.on',
      '-',
    ]);
  });

  it('says which end, which half and which point a setting holds', () => {
    const parts = proposed(
      'arm switch from = 1700',
      'arm switch to = 2100',
      'osd cell voltage row = 3',
      'osd cell voltage column = 12',
      'roll curve at 25 = 110',
    ).map((one) => [one === null ? '' : meansOf(one), one?.part]);
    assert.deepEqual(parts, [
      ['switch.arm.on', 'low'],
      ['switch.arm.on', 'high'],
      ['overlay.cell-voltage.place', 'row'],
      ['overlay.cell-voltage.place', 'column'],
      ['stick.roll.curve', { at: '25 %' }],
    ]);
  });

  it('says why, in words and by the value', () => {
    const [first] = proposed('[calm]', 'gyro low-pass 1 cutoff = 225', 'motor magnets = 14');
    assert.equal(first?.why, 'Its words say gyro, lowpass, cutoff; 225 is usual within 5 to 4000 Hz.');
    assert.equal(first?.rivals.length, 2);
  });

  it('belongs to a family that is counted alike', () => {
    assert.equal(familyOf('control.roll.proportional'), familyOf('control.yaw.proportional'));
    assert.equal(familyOf('gyro.filter.<number>.cutoff'), 'gyro.filter.*.cutoff');
    assert.notEqual(familyOf('control.roll.proportional'), familyOf('control.roll.integral'));
  });

  it('is the same whatever is proposed beside it is called', () => {
    const [, , channels] = proposed('[radio]', '__proto__ = 3', 'constructor = 4', 'channel count = 8');
    assert.equal(channels?.parameter, 'receiver.channels');
  });
});

describe('what a listing says beside a value', () => {
  it('speaks against what is measured in another unit, and what is never less than nothing', () => {
    const [first, second] = proposed(
      'arming delay = 25 [0..500] ; 0.1 deg',
      'level settle time = 5 [-100..100]',
      'arming tilt limit = 250 [0..900] ; 0.1 deg',
    );
    assert.notEqual(first?.sureness, 'sure');
    assert.notEqual(second?.sureness, 'sure');
    const [, settle] = proposed('arming delay = 25 [0..500]', 'level settle time = 5 [0..100]');
    assert.equal(settle?.sureness, 'sure');
  });
});
