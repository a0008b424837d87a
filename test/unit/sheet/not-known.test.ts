import assert from 'node:assert/strict';
import { notKnown, withheldOf } from '../../../server/src/sheet/not-known';
import { craftOf } from '../../support/findings';
import { wholeCraft } from '../../support/whole-craft';

/** The whole craft without lines that begin so, and with others behind them. */
function craftWithout(paths: readonly string[], more: readonly string[] = []) {
  const lines = wholeCraft.filter((line) => !paths.some((path) => line.startsWith(path)));
  return craftOf([...lines, ...more].join('\n'));
}

function told(paths: readonly string[], more: readonly string[] = []): readonly string[] {
  return notKnown(craftWithout(paths, more)).map(({ text }) => text);
}

const aerials = ['video.antenna-gain = 2 dBi', 'video.receiver-antenna-gain = 8 dBi'];
const picture = [...aerials, 'video.receiver-sensitivity = -90 dBm'];

describe('what is not known of a craft', () => {
  it('is nothing where all is written', () => {
    assert.deepEqual(told([], picture), []);
  });

  it('is told together where the same would make it known, and with what more it takes', () => {
    assert.deepEqual(
      told(['prop.pitch', 'control.roll.proportional', 'esc.signal', 'stick.roll.curve'], picture),
      [
        'Hover, thrust, minutes, flying time, range, currents, brown-outs of the board, speeds, the motors’ heat, motor tones, the motor tone at idle, what filters leave of the tones, motor lag and delay of filters: not known yet. Write prop.pitch.',
        'Margins: not known yet. Write control.roll.proportional and esc.signal as well.',
        'Rates at the sticks: not known yet. Write stick.roll.curve.',
        'Delays: not known yet. Write esc.signal as well.',
        'Least time between two motor commands: not known yet. Write esc.signal.',
      ],
    );
  });

  it('offers to write all lines that a sentence is about', () => {
    const [first, second] = notKnown(craftWithout(['prop.pitch', 'control.roll.proportional'], picture));
    assert.deepEqual(first?.ways, [{ title: 'Write this line', paths: ['prop.pitch'] }]);
    const paths = ['control.roll.proportional', 'prop.pitch'];
    assert.deepEqual(second?.ways, [{ title: 'Write these 2 lines', paths }]);
  });

  it('says what all packs lack once, and names the packs where only some lack it', () => {
    const second = ['pack.two.chemistry = lipo', 'pack.two.cells = 4', 'pack.two.mass = 200 g'];
    const [both] = told(['pack.one.capacity'], [...picture, ...second]);
    assert.match(both ?? '', /^Hover, .*: not known yet\. Write pack\.<name>\.capacity of every pack\.$/);
    const [one] = told([], [...picture, ...second]);
    assert.match(one ?? '', /^Hover, .* with pack two: not known yet\. Write pack\.two\.capacity\.$/);
  });

  it('says what will do in place of it, and offers to write that', () => {
    const resistance = 'motor.resistance and motor.idle-current';
    const size = 'motor.stator-diameter and motor.stator-height';
    const rows =
      'three rows of the maker’s table \\(motor\\.bench\\.<number>\\) with voltage, current, speed and torque';
    const without = ['motor.resistance', 'motor.idle-current'];
    const [alone] = told(without, picture);
    assert.match(
      alone ?? '',
      new RegExp(`: not known yet\\. Write ${size}, or motor\\.mass, or ${resistance}, or ${rows}\\.$`),
    );
    const [among] = notKnown(craftWithout([...without, 'prop.pitch'], picture));
    assert.match(
      among?.text ?? '',
      new RegExp(
        `Write .*prop\\.pitch\\. In place of ${size}: motor\\.mass, or ${resistance}, or ${rows}\\.$`,
      ),
    );
    assert.deepEqual(among?.ways.slice(1, 3), [
      { title: 'Write motor.mass instead', paths: ['motor.mass', 'prop.pitch'] },
      { title: `Write ${resistance} instead`, paths: [...without, 'prop.pitch'] },
    ]);
    assert.deepEqual(among?.ways[3]?.paths.slice(0, 2), ['motor.bench.1.voltage', 'motor.bench.1.current']);
    assert.equal(among?.ways[3]?.paths.length, 13);
    assert.equal(among?.ways[3]?.title, 'Write three rows of the maker’s table instead');
  });

  it('is a pack with what it takes where the craft has none', () => {
    const [first] = told(['pack.'], picture);
    assert.match(first ?? '', /Write pack\.<name>\.cells, .*pack\.<name>\.mass/);
  });

  it('says that a loop swings, that a line is refused, and that nothing hovers', () => {
    const wild = told(
      ['control.roll.proportional'],
      [...picture, 'control.roll.proportional = 0.9 %/(deg/s)'],
    );
    assert.equal(wild.length, 1);
    assert.match(
      wild[0] ?? '',
      /^Margins: not known\. The loop of roll swings by itself at [\d.]+ Hz, .*\.$/,
    );
    const [refused] = told(['prop.pitch'], [...picture, 'prop.pitch = 4 kg']);
    assert.match(refused ?? '', /: not known\. prop\.pitch can’t be read as written: mend its line first\.$/);
    const [empty] = told(['prop.pitch'], [...picture, 'prop.pitch =']);
    assert.match(empty ?? '', /: not known\. Fill in prop\.pitch\.$/);
    const [heavy] = told(['craft.mass'], [...picture, 'craft.mass = 20 kg']);
    assert.match(heavy ?? '', /^Hover, .*: not known\. Motors and pack can’t hold the craft up\.$/);
  });

  it('is each figure by itself for programs', () => {
    const [first] = withheldOf(craftWithout(['prop.pitch'], picture));
    assert.deepEqual(first, {
      id: 'hover-throttle',
      title: 'Throttle in the hover',
      packs: null,
      needs: ['prop.pitch'],
      instead: [],
      reason: 'Write prop.pitch.',
    });
  });

  it('asks nothing of a part, nor for what the craft does not speak of', () => {
    assert.deepEqual(notKnown(craftOf('[gyro]\nrate = 8 kHz\n')), []);
    const text = told(['video.', 'record.', 'wire.', 'receiver.supply', 'power.current-scale']).join('\n');
    assert.equal(text, '');
  });
});
