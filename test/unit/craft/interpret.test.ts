import { strict as assert } from 'node:assert';
import { interpret } from '../../../server/src/craft/interpret';
import { testCatalog } from '../../support/catalog';
import { craftOf, findingsIn } from '../../support/findings';
import { heldIn, lineFindings } from '../../support/held';
import { statementOf } from '../../support/lines';

/** One line in a section: what it holds, and what is found in it. */
function line(
  section: string,
  text: string,
): { readonly holds: string; readonly found: readonly (readonly string[])[] } {
  const script = `[${section}]\n${text}\n`;
  const path = `${section}.${text.split('=')[0]?.trim()}`;
  return {
    holds: heldIn(script, path),
    found: lineFindings(script).filter(([id]) => /^(line|obey\/order)/.test(id ?? '')),
  };
}

type Case = readonly [section: string, text: string, holds: string, ...found: (readonly string[])[]];

function holdCases(cases: readonly Case[]): void {
  for (const [section, text, holds, ...found] of cases) {
    const told = found.map(([id]) => id).join(', ') || 'nothing is found';
    it(`[${section}] ${text} holds ${holds}: ${told}`, () => {
      assert.deepEqual(line(section, text), { holds, found });
    });
  }
}

describe('a quantity', () => {
  holdCases([
    ['gyro.filter.1', 'cutoff = 120 Hz', '120 Hz'],
    ['gyro.filter.1', 'cutoff = 0.12 kHz', '120 Hz'],
    ['gyro.filter.1', 'cutoff = 1.005 kHz', '1005 Hz', ['line/outside-usual', '1.005 kHz']],
    ['receiver', 'smoothing = 5 min', '300000 ms', ['line/outside-range', '5 min', 'smoothing = 100 ms']],
    ['receiver', 'transmitter-power = 20 dBm', '100 mW'],
    ['video', 'receiver-sensitivity = -85 dBm', '-85 dBm'],
    ['craft', 'air-temperature = 288.15 K', '15 degC'],
    ['craft', 'motor-spacing = 6.5 in', '165.1 mm'],
    ['motor', 'kv = 2900 rpm/V', '2900 rpm/V'],
    ['control.roll', 'proportional = 0.1 %/(deg/s)', '0.1 %/(deg/s)'],
    ['pack.a', 'discharge = 75 C', '75 C'],
    ['arming', 'disarm-when-idle = off', 'off'],
    ['arming', 'disarm-when-idle = 10 s', '10 s'],
  ]);
});

describe('a quantity of the wrong kind', () => {
  holdCases([
    [
      'gyro.filter.1',
      'cutoff = 3 ms',
      'unknown',
      ['line/wrong-dimension', '3 ms', 'cutoff = 333 Hz', 'cutoff = 3 Hz', 'cutoff = 3 kHz'],
    ],
    [
      'receiver',
      'smoothing = 5 m',
      'unknown',
      ['line/wrong-dimension', '5 m', 'smoothing = 5 ms', 'smoothing = 5 min'],
    ],
    [
      'craft',
      'motor-spacing = 5 min',
      'unknown',
      ['line/wrong-dimension', '5 min', 'motor-spacing = 5 mm', 'motor-spacing = 5 m'],
    ],
    ['pack.a', 'discharge = 75 Hz', 'unknown', ['line/wrong-dimension', '75 Hz', 'discharge = 75 C']],
    [
      'gyro.filter.1',
      'cutoff = 75 C',
      'unknown',
      ['line/wrong-dimension', '75 C', 'cutoff = 75 Hz', 'cutoff = 75 kHz'],
    ],
    [
      'level',
      'rate-limit = 300 Hz',
      'unknown',
      ['line/wrong-dimension', '300 Hz', 'rate-limit = 300 deg/s', 'rate-limit = 300 rpm'],
    ],
    ['gyro.filter.1', 'cutoff = "120 Hz"', 'unknown', ['line/wrong-shape', '"120 Hz"', 'cutoff = 120 Hz']],
    ['gyro.filter.1', 'cutoff = 1..2 Hz', 'unknown', ['line/wrong-shape', '1..2 Hz']],
    ['gyro.filter.1', 'cutoff = [120 Hz]', 'unknown', ['line/wrong-shape', '[120 Hz]']],
    ['gyro.filter.1', 'cutoff = 2026-05-14', 'unknown', ['line/wrong-shape', '2026-05-14']],
    ['arming', 'disarm-when-idle = never', 'unknown', ['line/unknown-constant', 'never']],
  ]);

  it('is told in words, with the units that would do (C02)', () => {
    const [found] = findingsIn('[receiver]\nsmoothing = 5 m');
    assert.equal(found?.message, 'This is a length (m), where a time was expected.');
    assert.match(found?.advice ?? '', /ms, s, us, min/);
  });
});

describe('a bare number where a unit is needed', () => {
  holdCases([
    ['gyro.filter.1', 'cutoff = 120', 'unknown', ['line/unit-missing', '120', 'cutoff = 120 Hz']],
    ['receiver', 'frame-interval = 7', 'unknown', ['line/unit-missing', '7', 'frame-interval = 7 ms']],
    // 4000 us would be usual, 4000 ms would not.
    [
      'receiver',
      'frame-interval = 4000',
      'unknown',
      ['line/unit-missing', '4000', 'frame-interval = 4000 us', 'frame-interval = 4000 ms'],
    ],
    [
      'power',
      'warn-cell = 3500',
      'unknown',
      ['line/unit-missing', '3500', 'warn-cell = 3500 mV', 'warn-cell = 3500 V'],
    ],
    [
      'craft',
      'air-temperature = -5',
      'unknown',
      ['line/unit-missing', '-5', 'air-temperature = -5 degC', 'air-temperature = -5 degF'],
    ],
  ]);

  it('is refused in a calculation too, with its result in the unit offered', () => {
    assert.deepEqual(line('gyro.filter.1', 'cutoff = 2 * 60').found, [
      ['line/unit-missing', '2 * 60', 'cutoff = 120 Hz'],
    ]);
  });
});

describe('a value outside its limits', () => {
  holdCases([
    ['level', 'tilt-limit = 100 deg', '100 deg', ['line/outside-range', '100 deg', 'tilt-limit = 90 deg']],
    ['level', 'tilt-limit = 1 deg', '1 deg', ['line/outside-range', '1 deg', 'tilt-limit = 5 deg']],
    ['level', 'tilt-limit = 80 deg', '80 deg', ['line/outside-usual', '80 deg']],
    ['level', 'tilt-limit = 90 deg', '90 deg', ['line/outside-usual', '90 deg']],
    ['level', 'tilt-limit = 75 deg', '75 deg'],
    ['receiver', 'channels = 30', '30', ['line/outside-range', '30', 'channels = 18']],
    ['receiver', 'channels = 4', '4', ['line/outside-usual', '4']],
  ]);

  it('is not caused by binary arithmetic: 0.1 * 3 is 0.3', () => {
    assert.deepEqual(line('receiver', 'smoothing = 0.1 s * 3 - 0.28 s').found, []);
    assert.deepEqual(line('level', 'tilt-limit = 0.1 * 3 * 250 deg').found, []);
  });

  it('is told with the limits in the unit of the parameter', () => {
    const [found] = findingsIn('[receiver]\nsmoothing = 0.2 s');
    assert.equal(found?.message, '200 ms lies outside what is possible: 0 ms to 100 ms.');
    assert.equal(found?.advice, 'Stay within the range; the nearest value is 100 ms.');
    assert.equal(found?.level, 'must-fix');
  });
});

describe('a count', () => {
  holdCases([
    ['receiver', 'channels = 8', '8'],
    ['receiver', 'channels = 2 * 4', '8'],
    ['receiver', 'channels = 0010', '10'],
    ['receiver', 'channels = 8.5', 'unknown', ['line/count-not-whole', '8.5', 'channels = 9']],
    ['receiver', 'channels = 8 Hz', 'unknown', ['line/unit-on-count', '8 Hz', 'channels = 8']],
    ['receiver', 'channels = 800 %', 'unknown', ['line/unit-on-count', '800 %', 'channels = 800']],
    ['receiver', 'channels = many', 'unknown', ['line/unknown-constant', 'many']],
    ['receiver', 'channels = "8"', 'unknown', ['line/wrong-shape', '"8"', 'channels = 8']],
    ['receiver', 'channels = 0x10', 'unknown', ['line/not-a-number', '0x10']],
    ['receiver', 'channels = 9007199254740993', 'unknown', ['line/number-too-large', '9007199254740993']],
    ['power', 'cells = auto', 'auto'],
  ]);

  it('keeps the digits that were written in what is said of them (B08)', () => {
    const [found] = findingsIn('[receiver]\nchannels = 9007199254740993');
    assert.match(found?.message ?? '', /9007199254740993/);
  });
});

describe('a flag', () => {
  holdCases([
    ['receiver', 'inverted = on', 'on'],
    ['receiver', 'inverted = off', 'off'],
    ['receiver', 'inverted = yes', 'unknown', ['line/unknown-word', 'yes', 'inverted = on']],
    ['receiver', 'inverted = True', 'unknown', ['line/unknown-word', 'True', 'inverted = on']],
    ['receiver', 'inverted = none', 'unknown', ['line/unknown-word', 'none', 'inverted = off']],
    ['receiver', 'inverted = maybe', 'unknown', ['line/unknown-word', 'maybe']],
    ['receiver', 'inverted = 1', 'unknown', ['line/wrong-shape', '1']],
  ]);
});

describe('a word', () => {
  holdCases([
    ['gyro.filter.1', 'kind = none', 'none'],
    [
      'gyro.filter.1',
      'kind  = buterworth',
      'unknown',
      ['line/unknown-word', 'buterworth', 'kind  = butterworth'],
    ],
    [
      'gyro.filter.1',
      'kind  = Butterworth',
      'unknown',
      ['line/unknown-word', 'Butterworth', 'kind  = butterworth'],
    ],
    [
      'gyro.filter.1',
      'kind  = seventh-order-of-nothing',
      'unknown',
      ['line/unknown-word', 'seventh-order-of-nothing'],
    ],
    ['gyro.filter.1', 'kind  = constructor', 'unknown', ['line/unknown-word', 'constructor']],
    ['gyro.filter.1', 'kind  = 5', 'unknown', ['line/wrong-shape', '5']],
    ['receiver', 'link = crsf', 'crsf'],
    ['receiver', 'order = TAER', 'TAER'],
    ['receiver', 'order = taer', 'unknown', ['obey/order-no-permutation', 'taer', 'order = TAER']],
    ['receiver', 'order = AETT', 'unknown', ['obey/order-no-permutation', 'AETT']],
    ['receiver', 'order = AET', 'unknown', ['obey/order-no-permutation', 'AET']],
  ]);

  it('from the craft itself, such as a port of its board, is checked together with the craft', () => {
    const ports = (port: string) =>
      lineFindings(`[board]\nprofile = wren\n[receiver]\nport = ${port}`).filter(([id]) =>
        id?.startsWith('line/'),
      );
    assert.deepEqual(ports('uart2'), []);
    assert.deepEqual(ports('uart22'), [['line/unknown-word', 'uart22', 'port = uart2']]);
    assert.equal(heldIn('[receiver]\nport = anything', 'receiver.port'), 'anything');
  });

  it('that names a pack is one of the packs of the craft', () => {
    const packs = (name: string) => lineFindings(`[pack.sprint]\n[flight.first]\npack = ${name}`);
    assert.ok(!packs('sprint').some(([id]) => id === 'line/unknown-word'));
    assert.deepEqual(
      packs('sprnt').find(([id]) => id === 'line/unknown-word'),
      ['line/unknown-word', 'sprnt', 'pack = sprint'],
    );
  });
});

describe('a list of words', () => {
  holdCases([
    ['receiver', 'reversed = [roll, yaw]', '[roll, yaw]'],
    ['receiver', 'reversed = roll', '[roll]'],
    ['receiver', 'reversed = []', '[]'],
    ['receiver', 'reversed = [roll, yae]', 'unknown', ['line/unknown-word', 'yae', 'reversed = [roll, yaw]']],
    [
      'receiver',
      'reversed = [roll, pitch, roll]',
      '[roll, pitch, roll]',
      ['line/word-repeated', 'roll', 'reversed = [roll, pitch]'],
    ],
    ['receiver', 'reversed = [roll, 5]', 'unknown', ['line/wrong-shape', '5']],
    ['receiver', 'reversed = 5', 'unknown', ['line/wrong-shape', '5']],
    [
      'receiver',
      'reversed = [roll, pitch, yaw, throttle, roll]',
      '[roll, pitch, yaw, throttle, roll]',
      ['line/list-too-long', '[roll, pitch, yaw, throttle, roll]'],
      ['line/word-repeated', 'roll', 'reversed = [roll, pitch, yaw, throttle]'],
    ],
  ]);
});

describe('a range', () => {
  holdCases([
    ['switch.arm', 'on = 1750..2050 us', '1750..2050 us'],
    ['switch.arm', 'on = 1.75..2.05 ms', '1750..2050 us'],
    ['switch.arm', 'on = 1750 us .. 2.05 ms', '1750..2050 us'],
    [
      'switch.arm',
      'on = 2050..1750 us',
      'unknown',
      ['line/range-reversed', '2050..1750 us', 'on = 1750..2050 us'],
    ],
    ['switch.arm', 'on = 1750..1750 us', 'unknown', ['line/range-reversed', '1750..1750 us']],
    ['switch.arm', 'on = 1750..2050', 'unknown', ['line/unit-missing', '2050', 'on = 1750..2050 us']],
    [
      'switch.arm',
      'on = 1750..2050 Hz',
      'unknown',
      ['line/wrong-dimension', '2050 Hz', 'on = 1750..2050 ms', 'on = 1750..2050 s'],
    ],
    [
      'switch.arm',
      'on = 700..2050 us',
      '700..2050 us',
      ['line/outside-range', '700', 'on = 800 us..2050 us'],
    ],
    ['switch.arm', 'on = 1750 us', 'unknown', ['line/wrong-shape', '1750 us']],
  ]);
});

describe('a curve', () => {
  holdCases([
    ['stick.roll', 'curve = 0 % -> 0 deg/s, 100 % -> 600 deg/s', '0 % -> 0 deg/s, 100 % -> 600 deg/s'],
    [
      'stick.roll',
      'curve = 0 % -> 0 deg/s, 0.5 -> 100 deg/s, 100 % -> 600 deg/s',
      'unknown',
      ['line/unit-missing', '0.5', 'curve = 0 % -> 0 deg/s, 0.5 % -> 100 deg/s, 100 % -> 600 deg/s'],
    ],
    [
      'stick.roll',
      'curve = 0 % -> 0 deg/s, 50 % -> 300 deg/s, 40 % -> 600 deg/s',
      'unknown',
      ['line/curve-not-rising', '40 % -> 600 deg/s'],
    ],
    [
      'stick.roll',
      'curve = 0 % -> 0 deg/s, 50 % -> 300 deg/s, 100 % -> 200 deg/s',
      'unknown',
      ['line/curve-not-rising', '100 % -> 200 deg/s'],
    ],
    [
      'stick.roll',
      'curve = 0 % -> 0 deg/s, 100 % -> 5000 deg/s',
      '0 % -> 0 deg/s, 100 % -> 5000 deg/s',
      ['line/outside-range', '5000 deg/s', 'curve = 0 % -> 0 deg/s, 100 % -> 4000 deg/s'],
    ],
    ['stick.roll', 'curve = 0 % -> 0 deg/s', 'unknown', ['line/wrong-shape', '0 % -> 0 deg/s']],
    ['stick.roll', 'curve = 600 deg/s', 'unknown', ['line/wrong-shape', '600 deg/s']],
  ]);
});

describe('a place on the overlay', () => {
  holdCases([
    ['overlay.name', 'place = [1, 2]', '[1, 2]'],
    ['overlay.name', 'place = [1,2]', '[1, 2]'],
    ['overlay.name', 'place = [1]', 'unknown', ['line/wrong-shape', '[1]']],
    ['overlay.name', 'place = [1, 2.5]', 'unknown', ['line/wrong-shape', '2.5']],
    ['overlay.name', 'place = [-1, 2]', 'unknown', ['line/wrong-shape', '-1']],
    ['overlay.name', 'place = [1, 2 mm]', 'unknown', ['line/wrong-shape', '2 mm']],
    ['overlay.name', 'place = [1, "2"]', 'unknown', ['line/wrong-shape', '"2"', 'place = [1, 2]']],
    ['overlay.name', 'place = top', 'unknown', ['line/wrong-shape', 'top']],
  ]);
});

describe('a text', () => {
  holdCases([
    ['craft', 'name = "Sandmartin"', '"Sandmartin"'],
    ['craft', String.raw`name = "a \"b\" \\ c"`, String.raw`"a \"b\" \\ c"`],
    ['craft', 'name = "0510210600"', '"0510210600"'],
    ['craft', 'name = "713752e1"', '"713752e1"'],
    ['craft', 'name = Sandmartin', 'unknown', ['line/wrong-shape', 'Sandmartin', 'name = "Sandmartin"']],
    ['craft', 'name = 5', 'unknown', ['line/wrong-shape', '5', 'name = "5"']],
  ]);

  it('keeps its digits, whatever number they would make (B03, B04)', () => {
    assert.equal(heldIn('[craft]\nname = "0510210600"', 'craft.name'), '"0510210600"');
  });

  it('is counted in characters as a person counts them, not in halves', () => {
    const fits = `[craft]\nname = "${'\u{1f6e0}'.repeat(32)}"`;
    assert.ok(!findingsIn(fits).some(({ id }) => id === 'line/text-too-long'));
    const tooLong = findingsIn(`[craft]\nname = "${'\u{1f6e0}'.repeat(33)}"`);
    const found = tooLong.find(({ id }) => id === 'line/text-too-long');
    assert.equal(found?.message, 'The text has 33 characters and may have 32.');
  });
});

describe('a date', () => {
  holdCases([
    ['craft', 'built = 2026-05-14', '2026-05-14'],
    ['craft', 'built = 2024-02-29', '2024-02-29'],
    ['craft', 'built = 2026-02-29', 'unknown', ['line/no-such-date', '2026-02-29']],
    ['craft', 'built = 2026-13-01', 'unknown', ['line/no-such-date', '2026-13-01']],
    ['craft', 'built = 0026-05-14', 'unknown', ['line/no-such-date', '0026-05-14']],
    ['craft', 'built = "2026-05-14"', 'unknown', ['line/wrong-shape', '"2026-05-14"', 'built = 2026-05-14']],
    ['craft', 'built = 14', 'unknown', ['line/wrong-shape', '14']],
  ]);
});

describe('a temperature difference', () => {
  const found = testCatalog.parameter('craft.air-temperature');
  const { parameter } = found ?? assert.fail();
  const difference = { ...parameter, dimension: 'temperature-difference', unit: 'K' } as typeof parameter;
  const read = (text: string) => {
    const { value } = statementOf(`x = ${text}`, 'setting');
    const scope = craftOf('').scope(null);
    const { range: _, usual: __, ...known } = found ?? assert.fail();
    return value && interpret(value, { ...known, parameter: difference }, scope, null).value;
  };

  it('of 5 degC is 5 K, not 278.15 K (C05)', () => {
    assert.deepEqual(read('5 degC'), { kind: 'quantity', value: 5, unit: 'K' });
    assert.deepEqual(read('5 K'), { kind: 'quantity', value: 5, unit: 'K' });
    assert.deepEqual(read('2 * 5 K'), { kind: 'quantity', value: 10, unit: 'K' });
  });

  it('is no temperature, whose offset counts (C05)', () => {
    assert.equal(heldIn('[craft]\nair-temperature = 300 K', 'craft.air-temperature'), '26.85 degC');
  });
});
