import assert from 'node:assert/strict';
import { conversionsOf } from '../../../../server/src/board/learn/convert/conversions';
import { scalesFor } from '../../../../server/src/board/learn/convert/scales';
import type { Conversion, TakenAs } from '../../../../server/src/board/learn/convert/taken';
import { learnedSettings } from '../../../../server/src/board/learn/learned-settings';
import { readListing } from '../../../../server/src/board/listing/read-listing';
import { testCatalog } from '../../../support/catalog';
import {
  asCounted,
  boardsNumber,
  ground,
  listed,
  quantities,
  takenFor,
  withStated,
} from '../../../support/counted';

describe('how the numbers of an unknown board are counted', () => {
  it('is told by how the listing prints its other numbers', () => {
    const means = ['arming.delay', 'level.tilt-limit', 'motor.idle', 'board.supply.five-volt-limit'];
    const told = (values: readonly string[]) => {
      const taken = means.map((one, index) => ({
        setting: listed(`x${index}`, values[index] ?? ''),
        means: one,
      }));
      return [...conversionsOf(taken, ground).values()].map(({ preview }) => preview.quantity);
    };
    assert.equal(told(['2', '45', '6', '2.05'])[3], null);
    assert.equal(told(['2.0', '45.0', '6.50', '2.05'])[3], '2.05 A');
  });

  it('is told by the top of a curve, which leads to what is usual', () => {
    const points = ['0 %', '50 %', '100 %'];
    for (const [values, top] of [
      [['0', '520', '1000'], '100 %'],
      [['0', '52', '100'], '100 %'],
      [['0', '0.52', '1'], '100 %'],
    ] as const) {
      const taken = points.map(
        (at, index): TakenAs => ({
          setting: listed(`lift ${index}`, values[index] ?? ''),
          means: 'stick.throttle.curve',
          as: { at },
        }),
      );
      const told = [...conversionsOf(taken, ground).values()].map(({ preview }) => preview.quantity);
      assert.equal(told[2], top, values.join());
    }
  });

  it('is a part of the unit that the listing names where the unit itself can’t be', () => {
    const told = (name: string, value: string, means: string) => {
      const taken: TakenAs = { setting: listed(name, value), means };
      const found = conversionsOf([taken], ground).get(taken);
      return [found?.sureness, found?.preview.quantity ?? null, found?.why];
    };
    assert.deepEqual(told('land volts', '310', 'power.land-cell'), [
      'stated',
      '3.1 V',
      'its name says volts, and only hundredths of it are usual',
    ]);
    assert.equal(told('land volts', '33', 'power.land-cell')[0], 'stated');
    assert.equal(told('land volts', '9000', 'power.land-cell')[0], 'ask');
  });

  it('is one over it where a rate is shown by its period, or a time by how often it comes', () => {
    const told = (name: string, value: string, means: string) => {
      const taken: TakenAs = { setting: listed(name, value), means };
      const found = conversionsOf([taken], ground).get(taken);
      return [found?.sureness, found?.preview.quantity ?? null, found?.meant?.counts];
    };
    assert.deepEqual(told('loop (us)', '312.5', 'control.rate'), ['stated', '3.2 kHz', { unit: 'us' }]);
    assert.deepEqual(told('frames (Hz)', '250', 'receiver.frame-interval'), [
      'stated',
      '4 ms',
      { unit: 'Hz' },
    ]);
    // Where nothing says so it is offered among others.
    const taken: TakenAs = { setting: listed('turn', '312'), means: 'control.rate' };
    const ways = conversionsOf([taken], ground)
      .get(taken)
      ?.candidates.map(({ title }) => title);
    assert.ok(ways?.includes('by its period, in us'), ways?.join());
    // Nothing comes to no rate, and a volt to none either.
    assert.equal(told('loop (us)', '0', 'control.rate')[0], 'ask');
    assert.notEqual(told('loop (V)', '3', 'control.rate')[0], 'stated');
  });

  it('offers the right way first or among the others where it asks', () => {
    const missed: string[] = [];
    for (const found of quantities)
      for (const { counts, title } of scalesFor(found).slice(0, 2)) {
        const { usual } = found;
        const value = boardsNumber(((usual?.low ?? 0) + (usual?.high ?? 0)) / 2, counts, found);
        const taken = takenFor(found, value);
        const conversion = conversionsOf([taken], ground).get(taken);
        if (conversion?.sureness !== 'ask' || value === '0') continue;
        const offered = conversion.candidates.map(({ meant }) => asCounted({ meant }, found));
        const truth = asCounted({ meant: counts === undefined ? {} : { counts } }, found);
        if (!offered.includes(truth)) missed.push(`${found.path} ${value} ${title}`);
      }
    assert.deepEqual(missed, []);
  });

  it('is the same for roll, pitch and yaw, whatever each of their values would say alone', () => {
    const axes = ['roll', 'pitch', 'yaw'];
    const families = quantities.filter(({ name }) => /\.roll(?=\.|$)/.test(name));
    assert.ok(families.length >= 8);
    for (const found of families) {
      for (const values of [
        ['47', '51', '90'],
        ['4', '470', '30'],
        ['0', '0.4', '300'],
        ['12', '8', '9'],
      ]) {
        const taken = axes.flatMap((axis, index): readonly TakenAs[] => {
          const means = found.path.replace('.roll', `.${axis}`);
          return testCatalog.parameter(means) === undefined
            ? []
            : [{ setting: listed(axis, values[index] ?? ''), means }];
        });
        const all = [...conversionsOf(taken, ground).values()].map((one) => asCounted(one, found));
        assert.equal(new Set(all).size, 1, `${found.path} ${values.join()}: ${all.join()}`);
      }
    }
  });

  it('is the same for all cutoffs, and said of one it holds for the others', () => {
    const means = ['gyro.filter.1.cutoff', 'gyro.filter.2.cutoff', 'derivative.filter.1.cutoff'];
    const taken = means.map(
      (one, index): TakenAs => ({ setting: listed(one, ['400', '600', '350'][index] ?? ''), means: one }),
    );
    const asked = conversionsOf(taken, ground);
    assert.deepEqual(
      taken.map((one) => asked.get(one)?.sureness),
      ['ask', 'ask', 'ask'],
    );
    const [first, ...others] = taken;
    assert.ok(first);
    const told = conversionsOf([{ ...first, counted: { scale: 10 } }, ...others], ground);
    assert.deepEqual(
      [...told.values()].map(({ preview }) => preview.quantity),
      ['40 Hz', '60 Hz', '35 Hz'],
    );
  });

  it('is told to be another one than others of its kind have, where somebody says so', () => {
    const said = (axis: string, scale: number): TakenAs => ({
      setting: listed(axis, '50'),
      means: `control.${axis}.proportional`,
      counted: { scale },
    });
    const both = [said('roll', 100), said('pitch', 1000)];
    const whys = [...conversionsOf(both, ground).values()].map(({ why }) => why);
    assert.deepEqual(whys, Array(2).fill('you say so; others of its kind are counted otherwise'));
    const alike = [...conversionsOf([said('roll', 100), said('yaw', 100)], ground).values()];
    assert.deepEqual(
      alike.map(({ why }) => why),
      ['you say so', 'you say so'],
    );
  });

  it('is never told of a gain by its value: its part alone is taken', () => {
    for (const found of quantities.filter(({ dimensionName }) => dimensionName?.endsWith('-gain'))) {
      for (const value of ['47', '0.47', '4.7', '0.047', '470']) {
        const taken: TakenAs = { setting: listed('p', value), means: found.path };
        const conversion = conversionsOf([taken], ground).get(taken);
        assert.equal(conversion?.meant, null, `${found.path} ${value}`);
        assert.equal(conversion.preview.quantity, null);
        assert.ok(conversion.takesRole);
      }
    }
  });
});

describe('what a listing states of a number', () => {
  const text = (lines: readonly string[]) => readListing(lines.join('\n'), null);

  function conversion(lines: readonly string[], name: string, means: string): Conversion {
    const listing = text(lines);
    const setting = learnedSettings(listing).find((one) => one.name === name);
    assert.ok(setting, listing.settings.map((one) => one.name).join());
    const taken: TakenAs = { setting, means };
    const found = conversionsOf([taken], ground).get(taken);
    assert.ok(found);
    return found;
  }

  const stated: readonly (readonly [
    lines: readonly string[],
    name: string,
    means: string,
    quantity: string,
    why: string,
  ])[] = [
    [['wait: 250 ms', 'pause: 80 ms', 'rest: 4 s'], 'wait', 'arming.delay', '0.25 s', 'the listing says ms'],
    [
      ['wait = 25 # 0.1 s', 'hold = 3 # 0.1 s', 'lamp = on # bright'],
      'wait',
      'arming.delay',
      '2.5 s',
      'its remark says 0.1 s',
    ],
    [
      ['wait_ms = 250', 'pause_ms = 10', 'lamp = on'],
      'wait_ms',
      'arming.delay',
      '0.25 s',
      'its name says ms',
    ],
    [
      ['cornerHz 225', 'quietHz 90', 'lamp on'],
      'cornerHz',
      'gyro.filter.1.cutoff',
      '225 Hz',
      'its name says Hz',
    ],
    [
      ['corner/one/hz = 225', 'corner/two/hz = 90', 'lamp/one/on = yes'],
      'hz',
      'gyro.filter.1.cutoff',
      '225 Hz',
      'its name says hz',
    ],
    [['floor_pct: 6', 'roof_pct: 90', 'lamp: on'], 'floor_pct', 'motor.idle', '6 %', 'its name says pct'],
    [
      ['floor = 65 # in tenths of a percent', 'roof = 900 # in tenths of a percent', 'lamp = on # bright'],
      'floor',
      'motor.idle',
      '6.5 %',
      'its remark says tenths of a percent',
    ],
    [
      ['1  corner[dHz]  1350  usual 900', '2  lean[ddeg]  450  usual 300', '3  lamp  on  usual off'],
      'corner[dHz]',
      'gyro.filter.1.cutoff',
      '135 Hz',
      'its name says dHz',
    ],
    [
      ['1  floor[1/1024]  56  {0..200}', '2  pulse[us/8]  8000  {6400..9000}', '3  lamp  on  {on, off}'],
      'floor[1/1024]',
      'motor.idle',
      '5.46875 %',
      'its name says 1/1024',
    ],
    [
      ['1  floor[1/1024]  56  {0..200}', '2  pulse[us/8]  8000  {6400..9000}', '3  lamp  on  {on, off}'],
      'pulse[us/8]',
      'esc.minimum-pulse',
      '1000 us',
      'its name says us/8',
    ],
    [['lean = 25° ', 'tilt = 40°', 'lamp = on'], 'lean', 'level.tilt-limit', '25 deg', '° stands behind it'],
  ];

  for (const [lines, name, means, quantity, why] of stated)
    it(`is taken before what is usual: ${why}`, () => {
      const found = conversion(lines, name, means);
      assert.deepEqual([found.sureness, found.preview.quantity, found.why], ['stated', quantity, why]);
    });

  it('is not taken for a gain where a bare part stands in its name', () => {
    const lines = [
      '1  roll prop[1/1000]  47  {0..500}',
      '2  pitch prop[1/1000]  52  {0..500}',
      '3  lamp  on  {on, off}',
    ];
    const found = conversion(lines, 'roll prop[1/1000]', 'control.roll.proportional');
    assert.deepEqual([found.sureness, found.preview.quantity], ['ask', null]);
  });

  it('is asked where it leads to what the parameter can never be', () => {
    const found = conversion(['wait = 900 h', 'rest = 40 h'], 'wait', 'arming.delay');
    assert.equal(found.sureness, 'ask');
    assert.equal(found.meant, null);
    assert.match(found.why, /^the listing says h, and it would lie outside what arming\.delay can be$/);
  });

  it('tells beside each value what is usual and whether it is', () => {
    const usual = conversion(['wait: 250 ms', 'pause: 80 ms'], 'wait', 'arming.delay').preview;
    assert.deepEqual(usual, {
      token: '250',
      quantity: '0.25 s',
      reason: null,
      usual: '0 s to 5 s',
      lies: 'usual',
    });
    const rare = conversion(['wait: 20 s', 'pause: 80 s'], 'wait', 'arming.delay').preview;
    assert.deepEqual([rare.quantity, rare.lies], ['20 s', 'possible']);
  });
});

describe('what a listing says that a number comes to', () => {
  /** As `text (reading)`: what it is counted in and comes to, or null where that is asked. */
  const counted = (text: string, remark: string, means: string) => {
    const taken: TakenAs = { setting: withStated(listed('x', text), { remark }), means };
    const { sureness, meant, preview } = conversionsOf([taken], ground).get(taken) ?? {};
    return sureness === 'stated' ? [preview?.quantity, meant?.counts ?? null] : null;
  };

  it('says how it is counted', () => {
    assert.deepEqual(counted('1500', '1.5 kHz', 'gyro.filter.1.cutoff'), ['1500 Hz', null]);
    assert.deepEqual(counted('550', '= 5.5 %', 'motor.idle')?.[0], '5.5 %');
    assert.deepEqual(counted('3500', '3.5 V', 'power.warn-cell')?.[0], '3.5 V');
    assert.deepEqual(counted('55', '0.96 rad', 'level.tilt-limit'), ['55 deg', null]);
    assert.deepEqual(counted('960', 'that is 55.0 deg', 'level.tilt-limit')?.[0], '55.0039 deg');
  });

  it('says nothing where it is another quantity, or fits no way of counting', () => {
    assert.equal(counted('1500', '7.3 kHz', 'gyro.filter.1.cutoff'), null);
    assert.equal(counted('1500', '1.5 V', 'gyro.filter.1.cutoff'), null);
    assert.equal(counted('0', '0 V', 'power.warn-cell'), null);
  });
});

describe('a channel that a board calls by a name', () => {
  const told = (name: string, value: string) => {
    const taken: TakenAs = { setting: listed(name, value), means: 'switch.arm.channel' };
    const { sureness, preview } = conversionsOf([taken], ground).get(taken) ?? {};
    return [sureness, preview?.quantity];
  };

  it('is the number behind a word for channels, or the one behind the sticks', () => {
    assert.deepEqual(told('arm', 'channel 7'), ['likely', '7']);
    assert.deepEqual(told('arm', 'Aux 1'), ['likely', '5']);
    assert.deepEqual(told('arm', 'auxiliary-3'), ['likely', '7']);
    assert.deepEqual(told('arm', 'out 3'), ['ask', null]);
    assert.deepEqual(told('arm', 'aux 15'), ['ask', null]);
  });

  it('counts from the sticks on where its name says so, and is asked where it may be either', () => {
    assert.deepEqual(told('arm aux', '1'), ['likely', '5']);
    assert.deepEqual(told('arm aux', '6'), ['ask', null]);
    assert.deepEqual(told('arm channel', '6'), ['likely', '6']);
  });
});

describe('how the words of an unknown board are spelled', () => {
  const told = (value: string, means: string, as?: TakenAs['as']) => {
    const taken: TakenAs = { setting: listed('x', value), means, ...(as === undefined ? {} : { as }) };
    const found = conversionsOf([taken], ground).get(taken);
    return [found?.sureness, found?.preview.quantity, found?.meant?.spelled ?? found?.meant?.counts ?? null];
  };

  it('is a word of the parameter, be it of several parts, or another word for none', () => {
    assert.deepEqual(told('lost link', 'find.on'), ['likely', '[lost-link]', { 'lost-link': 'lost link' }]);
    assert.deepEqual(told('front left', 'motor.order', { entry: 1 }), [
      'likely',
      '[front-left]',
      { 'front-left': 'front left' },
    ]);
    assert.deepEqual(told('nothing', 'gyro.filter.1.kind'), ['likely', 'none', { none: 'nothing' }]);
  });

  it('is the one word that begins with it', () => {
    assert.deepEqual(told('first', 'gyro.filter.1.kind'), [
      'likely',
      'first-order',
      { 'first-order': 'first' },
    ]);
    assert.deepEqual(told('low', 'find.on'), ['ask', null, null]);
  });

  it('is asked where the list has no such word', () => {
    assert.deepEqual(told('3', 'motor.order', { entry: 1 }), ['ask', null, null]);
    assert.deepEqual(told('lost-link, storm', 'find.on'), ['ask', null, null]);
  });

  it('is on and off, or a number that a name ends in, for a word of a list', () => {
    assert.deepEqual(told('YES', 'power.alarm', { has: 'buzzer' }), [
      'likely',
      'on',
      { on: 'YES', off: 'NO' },
    ]);
    const [sureness, quantity, counts] = told('out 2', 'power.alarm', { numberOf: 'buzzer' });
    assert.deepEqual([sureness, quantity], ['likely', '2']);
    assert.deepEqual(counts, {
      table: { 'out 1': '1', 'out 2': '2', 'out 3': '3', 'out 4': '4' },
    });
    assert.equal(told('out 9', 'power.alarm', { numberOf: 'buzzer' })[0], 'ask');
  });
});
