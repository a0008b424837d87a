import assert from 'node:assert/strict';
import { scriptTextOf } from '../../../../server/src/board/layer/layer';
import { LayerReader } from '../../../../server/src/board/layer/layer-reader';
import type { Confirmed } from '../../../../server/src/board/learn/said';
import { writeText } from '../../../../server/src/board/writing/write-text';
import { testCatalog } from '../../../support/catalog';
import { confirmed } from '../../../support/confirmed';
import { unequal, Way } from '../../../support/listing-shapes/way';

interface Shape {
  readonly title: string;
  readonly text: string;
  readonly confirmed: Confirmed;
  /** What a script holds then, as it writes it. */
  readonly holds: Readonly<Record<string, string>>;
  /** One value that the board has otherwise, as text and its replacement; which parameter that is. */
  readonly change: readonly [before: string, after: string, path: string];
  /** A line of a script, and what the text that is handed over then holds. */
  readonly set: readonly [line: string, written: string];
}

const shapes: readonly Shape[] = [
  {
    title: 'single values in units, in tenths, with an offset, in base 16 and in thousands',
    text: [
      'spin/soften : 90 Hz',
      'spin/floor : 65',
      'spin/heat : 353',
      'spin/lowest : 0x3E8',
      "spin/loop : 8'000",
      'spin/wait : 0.25',
    ].join('\n'),
    confirmed: confirmed([
      'spin/soften=gyro.filter.1.cutoff',
      'spin/floor=motor.idle',
      'spin/heat=board.heat-warning unit K',
      'spin/lowest=receiver.low plain',
      'spin/loop=control.rate unit Hz',
      'spin/wait=arming.delay plain',
    ]),
    holds: {
      'gyro.filter.1.cutoff': '90 Hz',
      'motor.idle': '6.5 %',
      'board.heat-warning': '79.85 degC',
      'receiver.low': '1000 us',
      'control.rate': '8 kHz',
      'arming.delay': '0.25 s',
    },
    change: ['90 Hz', '95 Hz', 'gyro.filter.1.cutoff'],
    set: ['receiver.low = 1023 us', 'spin/lowest : 0x3FF'],
  },
  {
    title: 'a range in two settings',
    text: 'hebel.scharf.ab 1750\nhebel.scharf.bis 2100\nhebel.scharf.kanal 5\nhebel.rest 4\n',
    confirmed: confirmed([
      'hebel/scharf/ab=switch.arm.on part low plain',
      'hebel/scharf/bis=switch.arm.on part high plain',
      'hebel/scharf/kanal=switch.arm.channel',
    ]),
    holds: { 'switch.arm.on': '1750..2100 us', 'switch.arm.channel': '5' },
    change: ['1750', '1700', 'switch.arm.on'],
    set: ['switch.arm.on = 1800..2100 us', 'hebel.scharf.ab 1800'],
  },
  {
    title: 'a range in one setting, and other values beside it',
    text: 'lever arm = 5, 1750, 2100\nlever locate = 7, 1300, 1700\nlever third = 1, 2, 3\n',
    confirmed: confirmed([
      'lever arm=switch.arm.channel value 1',
      'lever arm=switch.arm.on value 2 part low plain',
      'lever arm=switch.arm.on value 3 part high plain',
      'lever locate=switch.locate.channel value 1',
      'lever locate=switch.locate.on value 2 part low plain',
      'lever locate=switch.locate.on value 3 part high plain',
    ]),
    holds: {
      'switch.arm.channel': '5',
      'switch.arm.on': '1750..2100 us',
      'switch.locate.on': '1300..1700 us',
    },
    change: ['1750', '1755', 'switch.arm.on'],
    set: ['switch.locate.channel = 8', 'lever locate = 8, 1300, 1700'],
  },
  {
    title: 'both ends in one setting, and the row and the column of a place',
    text: 'quiet window: (1600 2050)\nclock spot: 3 12\nhome spot: 0 7\nother: 4\nmore: 5\n',
    confirmed: confirmed([
      'quiet window=switch.arm.on plain',
      'clock spot=overlay.altitude.place part row,column plain',
      'home spot=overlay.cell-voltage.place part row,column plain',
    ]),
    holds: {
      'switch.arm.on': '1600..2050 us',
      'overlay.altitude.place': '[3, 12]',
      'overlay.cell-voltage.place': '[0, 7]',
    },
    change: ['3 12', '3 13', 'overlay.altitude.place'],
    set: ['overlay.cell-voltage.place = [1, 9]', 'home spot: 1 9'],
  },
  {
    title: 'a place as one cell, and as rows and columns counted from 1',
    text: 'marks:\n  height: 102\n  cell-row: 4\n  cell-column: 9\n  lamp: yes\n  pace: 7\n',
    confirmed: confirmed([
      'marks/height=overlay.altitude.place cell 30 plain',
      'marks/cell-row=overlay.cell-voltage.place part row offset 1',
      'marks/cell-column=overlay.cell-voltage.place part column offset 1',
    ]),
    holds: { 'overlay.altitude.place': '[3, 12]', 'overlay.cell-voltage.place': '[3, 8]' },
    change: ['102', '103', 'overlay.altitude.place'],
    set: ['overlay.cell-voltage.place = [0, 0]', 'cell-column: 1'],
  },
  {
    title: 'a curve in samples, one setting each',
    text: '<turn>\nmid := 250\nend := 900\nstart := 0\n<rest>\na := 1\n',
    confirmed: confirmed([
      'turn/start=stick.roll.curve at 0 % plain',
      'turn/mid=stick.roll.curve at 50 % plain',
      'turn/end=stick.roll.curve at 100 % plain',
    ]),
    holds: { 'stick.roll.curve': '0 % -> 0 deg/s, 50 % -> 250 deg/s, 100 % -> 900 deg/s' },
    change: ['250', '260', 'stick.roll.curve'],
    set: ['stick.roll.curve = 0 % -> 0 deg/s, 50 % -> 250 deg/s, 100 % -> 850 deg/s', 'end := 850'],
  },
  {
    title: 'a curve as a list, in tenths',
    text: 'lift curve = 0, 300, 520, 1000\nother = 4\n',
    confirmed: confirmed(['lift curve=stick.throttle.curve at 0 %,30 %,60 %,100 % scale 0.1']),
    holds: { 'stick.throttle.curve': '0 % -> 0 %, 30 % -> 30 %, 60 % -> 52 %, 100 % -> 100 %' },
    change: ['520', '525', 'stick.throttle.curve'],
    set: [
      'stick.throttle.curve = 0 % -> 0 %, 30 % -> 31 %, 60 % -> 52 %, 100 % -> 100 %',
      'lift curve = 0, 310, 520, 1000',
    ],
  },
  {
    title:
      'lists of words, whole, by entries in settings of their own and in one setting, and numbers for words',
    text: [
      'tell.on | lost-link; low-pack',
      'order.1 | 3',
      'order.2 | 4',
      'order.3 | 1',
      'order.4 | 2',
      'spare | 8',
    ].join('\n'),
    confirmed: confirmed([
      'tell/on=find.on',
      ...[1, 2, 3, 4].map(
        (entry) =>
          `order/${entry}=motor.order entry ${entry} words 1=front-left,2=front-right,3=rear-left,4=rear-right`,
      ),
    ]),
    holds: {
      'find.on': '[lost-link, low-pack]',
      'motor.order': '[rear-left, rear-right, front-left, front-right]',
    },
    change: ['low-pack', 'switch', 'find.on'],
    set: ['find.on = [switch]', 'tell.on | switch'],
  },
  {
    title: 'a list in one setting by its entries',
    text: 'motors -> 3,1,2,4\nbeat -> 9\n',
    confirmed: confirmed([
      'motors=motor.order entry 1,2,3,4 words 1=front-left,2=front-right,3=rear-left,4=rear-right',
    ]),
    holds: { 'motor.order': '[rear-left, front-left, front-right, rear-right]' },
    change: ['3,1', '3,2', 'motor.order'],
    set: ['motor.order = [front-left, front-right, rear-left, rear-right]', 'motors -> 1,2,3,4'],
  },
  {
    title: 'a setting for each place with the number of its output, from 1, from 0 and by names of outputs',
    text: [
      '[corner]',
      ...['nose left is 3', 'nose right is 4', 'tail left is 1', 'tail right is 2'],
      '[listen]',
      ...['gps is 1', 'galileo is 0'],
      '[bell]',
      ...['picture is W1', 'horn is W2'],
    ].join('\n'),
    confirmed: confirmed([
      ...[
        'nose left=front-left',
        'nose right=front-right',
        'tail left=rear-left',
        'tail right=rear-right',
      ].map((one) => `corner/${one.replace('=', '=motor.order number-of ')}`),
      'listen/gps=position.systems number-of gps offset -1',
      'listen/galileo=position.systems number-of galileo offset -1',
      'bell/picture=power.alarm number-of overlay table W1=1,W2=2',
      'bell/horn=power.alarm number-of buzzer table W1=1,W2=2',
    ]),
    holds: {
      'motor.order': '[rear-left, rear-right, front-left, front-right]',
      'position.systems': '[galileo, gps]',
      'power.alarm': '[overlay, buzzer]',
    },
    change: ['nose left is 3', 'nose left is 4', 'motor.order'],
    set: [
      'motor.order = [front-left, front-right, rear-left, rear-right]',
      'nose left is 1\nnose right is 2\ntail left is 3\ntail right is 4',
    ],
  },
  {
    title: 'a list as a setting for each of its words that says on or off',
    text: 'warn:\n  picture: yes\n  horn: no\n  lamps: yes\n  pace: 7\nback:\n  roll: 0\n  yaw: 1\n',
    confirmed: confirmed([
      'warn/picture=power.alarm has overlay',
      'warn/horn=power.alarm has buzzer',
      'warn/lamps=power.alarm has lights',
      'back/roll=receiver.reversed has roll',
      'back/yaw=receiver.reversed has yaw',
    ]),
    holds: { 'power.alarm': '[overlay, lights]', 'receiver.reversed': '[yaw]' },
    change: ['horn: no', 'horn: yes', 'power.alarm'],
    set: ['power.alarm = [lights, buzzer]', 'picture: no\n  horn: yes'],
  },
  {
    title: 'flags and words of a list as the binary digits of numbers, of which some nobody knows',
    text: 'habits = 0x15\nbell = 5\nturned = 02\nother = 9\n',
    confirmed: confirmed([
      'habits=arming.beep bit 0',
      'habits=video.sound bit 2 words 0=on,1=off',
      'habits=esc.drive.brake bit 6',
      'bell=power.alarm bits 0=overlay,1=buzzer,3=lights',
      'turned=receiver.reversed bit 1 has roll',
      'turned=receiver.reversed bit 5 has yaw',
    ]),
    holds: {
      'arming.beep': 'on',
      'video.sound': 'off',
      'esc.drive.brake': 'off',
      'own.habits."#1.5"': '1',
      'power.alarm': '[overlay]',
      'own.bell."#1.3"': '1',
      'receiver.reversed': '[roll]',
    },
    change: ['0x15', '0x14', 'arming.beep'],
    set: ['esc.drive.brake = on\npower.alarm = [buzzer, lights]', 'habits = 0x55\nbell = 14'],
  },
  {
    title: 'words with a table, numbers for words, flags of several pairs, and a word in place of a number',
    text: [
      'filter shape = 2 ; 0 = none, 1 = first order, 2 = butterworth',
      'lost act = sink ; when nobody is heard',
      'beep = ON ; at the end',
      'lamp = 1 ; upside down',
      'strip = no ; once more',
      'rest = never ; or seconds',
      'lever row = taer ; first to last',
    ].join('\n'),
    confirmed: confirmed([
      'filter shape=gyro.filter.1.kind',
      'lost act=signal-loss.action words sink=descend,cut=motors-off',
      'beep=arming.beep',
      'lamp=telemetry.inverted',
      'strip=signal-loss.arm-again',
      'rest=arming.disarm-when-idle words never=off',
      'lever row=receiver.order',
    ]),
    holds: {
      'gyro.filter.1.kind': 'butterworth',
      'signal-loss.action': 'descend',
      'arming.beep': 'on',
      'telemetry.inverted': 'on',
      'signal-loss.arm-again': 'off',
      'arming.disarm-when-idle': 'off',
      'receiver.order': 'TAER',
    },
    change: ['lost act = sink', 'lost act = cut', 'signal-loss.action'],
    set: ['arming.beep = off', 'beep = OFF'],
  },
  {
    title: 'steps of power by number',
    text: 'view/step = 2\nview/channel = 3\nview/other = 7\n',
    confirmed: confirmed([
      'view/step=video.power table 1=25 mW,2=100 mW,3=400 mW',
      'view/channel=video.channel',
    ]),
    holds: { 'video.power': '100 mW', 'video.channel': '3' },
    change: ['step = 2', 'step = 3', 'video.power'],
    set: ['video.power = 25 mW', 'view/step = 1'],
  },
  {
    title: 'the settings of a pack, and several values of a gain on a line, in hundredths',
    text: 'pack cells = 4\npack capacity = 850 mAh\nhold roll = 47 60 25\nhold pitch = 52 64 28\n',
    confirmed: confirmed([
      'pack cells=pack.<name>.cells',
      'pack capacity=pack.<name>.capacity',
      'hold roll=control.roll.proportional value 1 scale 0.01',
      'hold pitch=control.pitch.proportional value 1',
      'hold roll=control.roll.integral value 2 scale 0.01',
      'hold pitch=control.pitch.integral value 2',
    ]),
    holds: {
      'pack.captured.cells': '4',
      'pack.captured.capacity': '850 mAh',
      'control.roll.proportional': '0.47 %/(deg/s)',
      'control.pitch.proportional': '0.52 %/(deg/s)',
      'control.pitch.integral': '0.64 %/deg',
    },
    change: ['52', '53', 'control.pitch.proportional'],
    set: ['control.roll.proportional = 0.5 %/(deg/s)', 'hold roll = 50 60 25'],
  },
  {
    title:
      'roles of ports, by words and by numbers, with ports that are unused or have a role that nobody knows',
    text: 'ports/1 = 2\nports/2 = 0\nports/3 = 7\nports/4 = 5\nports/speed = 40\n',
    confirmed: confirmed(['ports/speed=stick.camera-tilt plain'], [], {
      ports: new Map([1, 2, 3, 4].map((port) => [`ports/${port}`, `uart${port}`])),
      words: new Map([
        ['2', 'receiver.port'],
        ['5', 'telemetry.port'],
        ['0', null],
      ]),
    }),
    holds: { 'receiver.port': 'uart1', 'telemetry.port': 'uart4', 'own.ports.3': '7', 'own.ports.2': '0' },
    change: ['ports/1 = 2', 'ports/1 = 7', 'receiver.port'],
    set: ['receiver.port = uart2', 'ports/1 = 0\nports/2 = 2'],
  },
];

function wayOf({ text, confirmed: said }: Shape): Way {
  const way = new Way(text, said);
  assert.deepEqual(way.faults, []);
  return way;
}

describe('a setting of any shape that somebody has said the meaning of', () => {
  for (const shape of shapes) {
    it(`is read, checked, written and proved: ${shape.title}`, async () => {
      const way = wayOf(shape);
      for (const { view } of [await way.including(), await way.made()]) {
        for (const [path, text] of Object.entries(shape.holds)) assert.equal(view.written(path), text, path);
        const entries = way.entries(view);
        const written = way.written(entries);
        assert.deepEqual(written.unwritten, []);
        assert.deepEqual(written.changes, []);
        assert.deepEqual(unequal(way.proof(entries, way.text)), []);
        assert.deepEqual(unequal(way.proof(entries, written.text)), []);
      }
    });

    it(`is found at its place when the board has another: ${shape.title}`, async () => {
      const way = wayOf(shape);
      const { view } = await way.including();
      const [before, after, path] = shape.change;
      assert.ok(way.text.includes(before));
      const proof = way.proof(way.entries(view), way.text.replace(before, after));
      const wrong = proof.rows.filter(({ verdict }) => !['equal', 'extra'].includes(verdict));
      assert.deepEqual(
        wrong.map((row) => [row.verdict, row.path]),
        [['different', path]],
      );
    });

    it(`is written as the board writes it when a script sets another: ${shape.title}`, async () => {
      const way = wayOf(shape);
      const plain = await way.including();
      const [line, wanted] = shape.set;
      const { view } = await way.includingWith(`${line}\n`);
      const entries = way.entries(view);
      const written = way.written(entries, way.record(way.entries(plain.view)));
      assert.deepEqual(written.unwritten, []);
      for (const one of wanted.split('\n')) assert.ok(written.text.includes(one), written.text);
    });
  }
});

describe('a board’s text with several values in a setting', () => {
  it('reads the same after each edit of a line as when it is read anew', () => {
    for (const shape of shapes) {
      const { profile } = wayOf(shape);
      const reader = new LayerReader(testCatalog, profile);
      reader.read(shape.text);
      const lines = shape.text.split('\n');
      for (const [index, line] of lines.entries())
        for (const other of [line.replace(/\d+/, '4'), line.replace(/\d+/, '3 1 2'), `${line} 7`, '']) {
          const text = lines.with(index, other).join('\n');
          const anew = new LayerReader(testCatalog, profile).read(text);
          assert.equal(scriptTextOf(reader.read(text)), scriptTextOf(anew), text);
          reader.read(shape.text);
        }
    }
  });

  it('is written whole from its forms alone, and is not where a value is missing', async () => {
    const shape = shapes.find(({ text }) => text.startsWith('lever arm')) ?? assert.fail('no lever');
    const way = wayOf(shape);
    const { view } = await way.including();
    const entries = way.entries(view);
    const request = { profile: way.profile, captured: null, since: null, cautions: [] };
    const whole = writeText({ ...request, entries });
    assert.ok(whole.text.startsWith('lever arm = 5, 1750, 2100\nlever locate = 7, 1300, 1700\n'), whole.text);
    const less = { ...entries, entries: entries.entries.filter(({ path }) => path !== 'switch.arm.channel') };
    const partly = writeText({ ...request, entries: less });
    assert.ok(!partly.text.includes('lever arm'));
    assert.deepEqual(
      partly.unwritten.map(({ entry, reason }) => [entry.item, reason]),
      [2, 3].map((item) => [item, 'the board takes all values of it at once, and not all are set']),
    );
  });
});

describe('a board that writes the same setting in several units', () => {
  const text = 'wait: 900 ms\npause: 80 ms\nrest: 40 ms\n';
  const way = new Way(text, confirmed(['wait=arming.delay', 'pause=signal-loss.regain-hold']));
  const later = text.replace('900 ms', '1.2 s');

  it('is read in the unit that stands there, and proved so', async () => {
    const layer = new LayerReader(testCatalog, way.profile);
    assert.match(scriptTextOf(layer.read(text)), /^arming\.delay = 0\.9 s$/m);
    assert.match(scriptTextOf(layer.read(later)), /^arming\.delay = 1\.2 s$/m);
    const { view } = await way.includingWith('arming.delay = 1.2 s\n');
    const proof = way.proof(way.entries(view), later);
    assert.deepEqual([proof.counts.different, proof.counts.beside], [0, 1]);
    const other = way.proof(way.entries(view), later.replace('1.2 s', '1200 s'));
    assert.equal(other.counts.different, 1);
  });

  it('is not written over a text that has it in another', async () => {
    const { view } = await way.includingWith('arming.delay = 1.5 s\n');
    const captured = way.read(later);
    const { profile } = way;
    const written = writeText({ profile, captured, entries: way.entries(view), since: null, cautions: [] });
    assert.deepEqual(
      written.unwritten.map(({ entry, reason }) => [entry.name, reason]),
      [['wait', 'it stands there in s, and its profile has it in ms']],
    );
  });
});
