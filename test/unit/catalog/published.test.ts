import assert from 'node:assert/strict';
import { inBase } from '../../../server/src/catalog/known-parameter';
import { shippedCatalog } from './shipped';

function present<T>(value: T | undefined): T {
  assert.ok(value !== undefined);
  return value;
}

function near(actual: number, expected: number, share: number): void {
  assert.ok(Math.abs(actual / expected - 1) <= share, `${actual} against ${expected}`);
}

describe('wire of the catalogue', () => {
  // T. L. Floyd, Electric Circuit Fundamentals, 2nd ed., wire table as shown at HyperPhysics: inches, ohm in 1000 ft.
  const floyd = [
    [12, 0.0808, 1.588],
    [14, 0.06408, 2.525],
    [16, 0.05082, 4.016],
    [18, 0.0403, 6.385],
    [20, 0.03196, 10.15],
    [22, 0.02535, 16.14],
    [24, 0.0201, 25.67],
    [26, 0.01594, 40.81],
    [28, 0.01264, 64.9],
    [30, 0.01002, 103.2],
  ] as const;
  for (const [number, inches, ohms] of floyd) {
    it(`AWG ${number} is as thick and as weak as in the table of Floyd`, () => {
      const { diameter, resistance } = present(shippedCatalog().gauge(number));
      near(inBase(diameter), inches * 0.0254, 1e-3);
      near(inBase(resistance), ohms / 304.8, 2e-4);
    });
  }

  it('between those follows d = 0.127 mm x 92^((36 - n) / 39) (ASTM B258, from memory)', () => {
    for (let number = 13; number < 30; number += 2) {
      const { diameter, resistance } = present(shippedCatalog().gauge(number));
      const metres = 0.127e-3 * 92 ** ((36 - number) / 39);
      near(inBase(diameter), metres, 1e-3);
      // Copper of 1.7241e-8 ohm m: IEC 60028, as printed in NBS Circular 31.
      near(inBase(resistance), 1.7241e-8 / ((Math.PI / 4) * metres ** 2), 5e-4);
    }
  });
});

describe('cells of the catalogue', () => {
  const volts = (name: string, field: 'full' | 'nominal' | 'storage' | 'empty') =>
    inBase(present(shippedCatalog().chemistry(name))[field]);

  it('round lithium ion: 4.20 V full, 3.6 V nominal (Battsys, 18650 cell page)', () => {
    assert.deepEqual([volts('li-ion', 'full'), volts('li-ion', 'nominal')], [4.2, 3.6]);
  });

  it('lithium polymer: empty at 3.0 V (Unit Battery, performance sheet); stored at 3.82 V (after BU-702)', () => {
    assert.deepEqual([volts('lipo', 'empty'), volts('lipo', 'storage')], [3, 3.82]);
  });

  it('high-voltage lithium polymer: 4.35 V, one of the charger’s steps of 50 mV (MAX20335 in Zephyr RTOS)', () => {
    const full = volts('high-voltage-lipo', 'full');
    assert.equal(full, 4.35);
    near((full - 4.05) / 0.05, Math.round((full - 4.05) / 0.05), 1e-9);
  });

  it('each rest at storage between empty and full', () => {
    for (const name of shippedCatalog().chemistries.keys()) {
      assert.ok(
        volts(name, 'empty') < volts(name, 'storage') && volts(name, 'storage') < volts(name, 'full'),
      );
    }
  });
});

describe('links and signals of the catalogue', () => {
  const microseconds = (name: string) => {
    const { baud, dataBits, parity, stopBits, frameBytes } = present(shippedCatalog().link(name));
    const bits = 1 + dataBits + (parity === 'none' ? 0 : 1) + stopBits;
    return ((frameBytes * bits) / inBase(baud)) * 1e6;
  };

  it('CRSF: 26 bytes at 420 000 baud take 619.05 us (both from memory)', () => {
    near(microseconds('crsf'), 619.0476, 1e-6);
  });

  it('SBUS: 100 000 baud, 8 data bits, even parity, 2 stop bits, 16 channels (Zephyr RTOS, input_sbus.c)', () => {
    const { baud, dataBits, parity, stopBits, channels } = present(shippedCatalog().link('sbus'));
    assert.deepEqual([inBase(baud), dataBits, parity, stopBits, channels], [100_000, 8, 'even', 2, 16]);
  });

  it('MAVLink: 18 channels in message 70, 12 bytes around the payload (mavlink-core, consts.rs)', () => {
    const { channels, frameBytes } = present(shippedCatalog().link('mavlink'));
    // Two identifiers of one byte and 18 channels of two: 38 bytes.
    assert.deepEqual([channels, frameBytes], [18, 12 + 2 + 18 * 2]);
  });

  it('digital signals: 16 bits (Espressif ESP-IDF, dshot_esc) at 150 to 1200 kbit/s (from memory)', () => {
    const frames = { dshot150: 106.667, dshot300: 53.333, dshot600: 26.667, dshot1200: 13.333 };
    for (const [name, expected] of Object.entries(frames)) {
      const { frameBits = 0, bitRate = '' } = present(shippedCatalog().signal(name));
      near((frameBits / inBase(bitRate)) * 1e6, expected, 1e-4);
    }
  });

  it('servo pulses: 1000 to 2000 us (MAVLink message 70; Arduino Servo reference), and their parts', () => {
    const ends = (name: string) => {
      const { shortest = '', longest = '' } = present(shippedCatalog().signal(name));
      return [inBase(shortest) * 1e6, inBase(longest) * 1e6] as const;
    };
    assert.deepEqual(ends('servo-pulse').map(Math.round), [1000, 2000]);
    assert.deepEqual(ends('eighth-pulse').map(Math.round), [125, 250]);
    for (const [at, end] of ends('twenty-fourth-pulse').entries()) near(end, (1000 * (at + 1)) / 24, 0.01);
  });
});

describe('bands of the catalogue', () => {
  // Common practice, from memory: no standard was found for these plans.
  const plans = {
    a: [5865, 5845, 5825, 5805, 5785, 5765, 5745, 5725],
    b: [5733, 5752, 5771, 5790, 5809, 5828, 5847, 5866],
    e: [5705, 5685, 5665, 5645, 5885, 5905, 5925, 5945],
    f: [5740, 5760, 5780, 5800, 5820, 5840, 5860, 5880],
    r: [5658, 5695, 5732, 5769, 5806, 5843, 5880, 5917],
  };
  for (const [name, channels] of Object.entries(plans)) {
    it(`band ${name} has the channels that the trade prints (common practice, from memory)`, () => {
      const held = present(shippedCatalog().videoBand(name)).channels.map((text) => inBase(text) / 1e6);
      assert.deepEqual(held.map(Math.round), channels);
    });
  }

  const permitted = (region: string, licence: string) =>
    present(shippedCatalog().region(region))
      .permits.filter((permit) => permit.licence === licence)
      .map(({ from, to }) => [inBase(from) / 1e6, inBase(to) / 1e6]);

  it('without a licence are those of ETSI EN 300 440 V2.2.1, table 1', () => {
    assert.deepEqual(permitted('european-union', 'none'), [
      [2400, 2483.5],
      [5725, 5875],
    ]);
  });

  it('without a licence in the United States are those of 47 CFR 15.249(a)', () => {
    assert.deepEqual(permitted('united-states', 'none'), [
      [902, 928],
      [2400, 2483.5],
      [5725, 5875],
    ]);
  });

  it('of amateurs are those of 47 CFR 97.301(a), by ITU region', () => {
    assert.deepEqual(permitted('united-states', 'amateur'), [
      [2390, 2450],
      [5650, 5925],
    ]);
    assert.deepEqual(permitted('european-union', 'amateur'), [[5650, 5850]]);
    assert.deepEqual(permitted('canada', 'amateur'), [[5650, 5925]]);
    for (const third of ['australia', 'japan']) assert.deepEqual(permitted(third, 'amateur'), [[5650, 5850]]);
  });
});
