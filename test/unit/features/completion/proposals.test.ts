import assert from 'node:assert/strict';
import { Script } from '../../../../server/src/craft/script';
import { completion } from '../../../../server/src/features/completion/completion';
import { testCatalog } from '../../../support/catalog';
import { offered, values } from '../../../support/offered';
import { snapshotOf } from '../../../support/snapshot';

describe('proposals of values', () => {
  it('begin with what pilots write: five volts for a receiver, never the end of a range', () => {
    assert.equal(values('receiver.supply')[0], '5 V');
    assert.ok(!values('receiver.supply').includes('3.2 V'));
    assert.equal(values('gyro.rate').includes('1 kHz'), true);
  });

  it('begin with those for the craft’s purpose', () => {
    const first = (purpose: string) => values('stick.roll.curve', `craft.purpose = ${purpose}\n`)[0];
    assert.match(first('race') ?? '', /650 deg\/s$/);
    assert.match(first('endurance') ?? '', /300 deg\/s$/);
    assert.equal(values('prop.diameter', 'craft.purpose = indoor\n')[0], '31 mm');
  });

  it('are those of the packs’ chemistries, once a pack has one', () => {
    const packs = '[pack.sprint]\nchemistry = lipo\n[pack.cruise]\nchemistry = li-ion\n';
    assert.deepEqual(values('land-cell', `${packs}[power]\n`), ['3.4 V', '3 V']);
    assert.deepEqual(values('land-cell', `${packs}[power @ cruise]\n`), ['3 V']);
    assert.deepEqual(values('discharge', '[pack.cruise]\nchemistry = li-ion\n'), ['10 C']);
    assert.deepEqual(values('full-cell', '[pack.cruise]\nchemistry = li-ion\n'), ['4.2 V']);
  });

  it('are the rates that the board’s gyro has, and the channels that the band has, each with its frequency', () => {
    assert.deepEqual(values('gyro.rate', 'board.profile = heron\n').toSorted(), [
      '1.6 kHz',
      '3.2 kHz',
      '6.4 kHz',
    ]);
    const channels = offered('video.band = a\nvideo.channel = |').filter(({ kind }) => kind === 'value');
    assert.equal(channels[0]?.label, '1');
    assert.equal(channels[0]?.detail, '5865 MHz');
  });

  it('are cells that motors and speed controllers bear, and limits that bear the packs', () => {
    const limits = 'motor.cells-limit = 4\nesc.cells-limit = 6\n';
    assert.deepEqual(values('pack.sprint.cells', limits), ['4', '3', '2', '1']);
    assert.deepEqual(values('esc.cells-limit', 'pack.sprint.cells = 5\n'), ['6']);
  });

  it('are loop rates that go evenly into the gyro’s, set or likely', () => {
    assert.deepEqual(values('control.rate', 'gyro.rate = 3.2 kHz\n'), ['3.2 kHz', '1.6 kHz']);
    assert.deepEqual(values('control.rate', 'board.profile = heron\n'), ['3.2 kHz', '1.6 kHz']);
    assert.deepEqual(values('control.rate'), ['4 kHz', '2 kHz', '1 kHz']);
  });

  it('begin with ports that serve nothing else', () => {
    const ports = offered('board.profile = wren\nreceiver.port = |').map(({ label }) => label);
    assert.notEqual(ports[0], 'uart1');
    assert.ok(ports.includes('uart1'));
  });

  it('put a channel last that another switch has, with which', () => {
    const items = offered('switch.arm.channel = 5\nswitch.righting.channel = |');
    assert.equal(items[0]?.label, '6');
    assert.equal(items.find(({ label }) => label === '5')?.detail, 'taken by switch.arm.channel');
  });

  it('are a place before the unit where no value is common, with where to find it', () => {
    const [place, ...more] = offered('craft.mass = |');
    assert.equal(place?.label, '… g');
    assert.equal(place?.insertText, '$1 g');
    assert.match(place?.detail ?? '', /scales/);
    assert.deepEqual(more, []);
  });

  it('put the likely words first, and complete a range from its low end', () => {
    assert.deepEqual(
      offered('receiver.order = |')
        .slice(0, 2)
        .map(({ label }) => label),
      ['AETR', 'TAER'],
    );
    assert.equal(offered('receiver.link = |')[0]?.label, 'crsf');
    assert.deepEqual(
      offered('switch.arm.on = 1750..|').map(({ label }) => label),
      ['2050 us'],
    );
    assert.equal(values('overlay.armed-time.place')[0], '[0, 23]');
  });

  it('stand in a name’s snippet, to be typed over', () => {
    const line = (section: string, name: string) =>
      offered(`[${section}]\n|`).find(({ label }) => label === name)?.insertText;
    const dollar = '$';
    assert.equal(line('receiver', 'supply'), `supply = ${dollar}{1:5} V`);
    assert.equal(line('craft', 'mass'), 'mass = $1 g');
    assert.equal(line('switch.arm', 'on'), `on = ${dollar}{1:1750}..${dollar}{2:2050} us`);
    assert.equal(line('overlay.armed-time', 'place'), `place = [${dollar}{1:0}, ${dollar}{2:23}]`);
    assert.match(line('esc', 'signal') ?? '', /\{1\|dshot300,/);
  });
});

describe('values of other scripts', () => {
  const robin = new Script(
    'test:///work/robin.craft',
    '[receiver]\nsupply = 9 V\nport = uart3\n[switch.arm]\nchannel = 9\n[arming]\nneeds = [gyro-still]\n',
    testCatalog,
  );
  const wren = new Script(
    'test:///work/wren.craft',
    'let rail = 5 V\n[receiver]\nsupply = 9 V\n[gyro.filter.1]\ncutoff = 2 * tone\n[craft]\nmass = 9 t\nname = "Wren"\n',
    testCatalog,
  );
  const beside = (marked: string) => {
    const { snapshot, position } = snapshotOf(marked);
    const among = { ...snapshot, others: () => [robin, wren] };
    return completion(among, position, { snippets: false, trigger: null }).items;
  };
  const details = (marked: string) => beside(marked).map(({ label, detail }) => `${label}: ${detail}`);

  it('come behind the common ones, each with where it stands and in how many more', () => {
    const found = details('[receiver]\nsupply = |');
    assert.ok(found.indexOf('9 V: as in robin.craft, line 2 and 1 more') > 0, found.join('\n'));
  });

  it('mark common ones that they are too, and words', () => {
    assert.ok(
      details('switch.arm.channel = |').some((text) => /^9: .*also in robin\.craft, line 5$/.test(text)),
    );
    const words = details('board.profile = wren\nreceiver.port = |');
    assert.match(words[0] ?? '', /^uart3: as in robin\.craft, line 3$/);
    assert.ok(details('arming.needs = |').some((text) => text.startsWith('[gyro-still]: as in robin')));
  });

  it('are none that hang on another script’s names, are refused, or belong to another member or a text', () => {
    for (const marked of [
      'gyro.filter.1.cutoff = |',
      'craft.mass = |',
      'switch.righting.channel = |',
      'craft.name = |',
    ])
      assert.ok(!details(marked).some((text) => /robin|wren\.craft/.test(text)), marked);
  });
});
