import assert from 'node:assert/strict';
import { inBase } from '../../../server/src/catalog/known-parameter';
import { shippedCatalog, shippedData } from './shipped';

function near(actual: number, expected: number, share: number): void {
  assert.ok(Math.abs(actual / expected - 1) <= share, `${actual} against ${expected}`);
}

function present<T>(value: T | undefined): T {
  assert.ok(value !== undefined);
  return value;
}

describe('hardware tables against published values', () => {
  it('serial links: SBUS frame of 3 ms, from 25 characters of 12 bits (Zephyr RTOS, input_sbus.c)', () => {
    const { baud, dataBits, stopBits, parity, frameBytes, inverted } = present(shippedCatalog().link('sbus'));
    const bits = 1 + dataBits + (parity === 'none' ? 0 : 1) + stopBits;
    near((frameBytes * bits) / inBase(baud), 3e-3, 1e-9);
    assert.equal(inverted, true);
  });

  it('frames of every link fit their interval', () => {
    for (const link of shippedCatalog().links.values()) {
      const bits = 1 + link.dataBits + (link.parity === 'none' ? 0 : 1) + link.stopBits;
      assert.ok((link.frameBytes * bits) / inBase(link.baud) < inBase(link.frameInterval), link.name);
    }
  });

  it('motor signals: 16 bits at 300 kbit/s take 53.333 us (Espressif ESP-IDF, dshot_esc example)', () => {
    const { frameBits = 0, bitRate = '' } = present(shippedCatalog().signal('dshot300'));
    near(frameBits / inBase(bitRate), 53.333e-6, 1e-5);
  });

  it('wire: 14 AWG 8.2841, 20 AWG 33.3005, 30 AWG 338.583 milliohm a metre (Floyd, at HyperPhysics)', () => {
    const table = [
      [12, 5.21],
      [14, 8.2841],
      [20, 33.3005],
      [30, 338.583],
    ] as const;
    for (const [number, milliohm] of table) {
      near(inBase(present(shippedCatalog().gauge(number)).resistance), milliohm / 1000, 5e-4);
    }
  });

  it('wire: every size between 12 and 30, thinner and weaker as the number grows, three sizes half the area (ASTM B258, from memory)', () => {
    for (let number = 13; number <= 30; number += 1) {
      const thick = present(shippedCatalog().gauge(number - 1));
      const thin = present(shippedCatalog().gauge(number));
      assert.ok(inBase(thin.usualCurrent) < inBase(thick.usualCurrent));
      near((inBase(thick.diameter) / inBase(thin.diameter)) ** 6, 2.005, 5e-3);
    }
  });

  it('cells: 4.20 V full (TI BQ25730 data sheet, charge voltage register)', () => {
    for (const name of ['lipo', 'li-ion']) {
      near(inBase(present(shippedCatalog().chemistry(name)).full), 4.2, 1e-9);
    }
  });

  it('overlay: 30 columns, 16 rows of 625 lines and 13 rows of 525 (MAX7456 data sheet, page 10)', () => {
    const size = (standard: string) => {
      const { columns, rows } = present(shippedCatalog().grid(standard));
      return [columns, rows];
    };
    assert.deepEqual(
      [size('pal'), size('ntsc')],
      [
        [30, 16],
        [30, 13],
      ],
    );
  });

  it('video channels: even steps of -20, 19, 20 and 37 MHz (common practice, from memory)', () => {
    const steps = { a: -20, b: 19, f: 20, r: 37 };
    for (const [name, step] of Object.entries(steps)) {
      const channels = present(shippedCatalog().videoBand(name)).channels.map(inBase);
      assert.equal(channels.length, 8);
      for (const [at, channel] of channels.slice(1).entries()) {
        assert.equal(Math.round((channel - (channels[at] ?? 0)) / 1e6), step, name);
      }
    }
  });

  it('regions: 50 mV/m at 3 m is 0.75 mW e.i.r.p. (47 CFR 15.249; power = (field x distance)^2 / 30)', () => {
    const free = present(shippedCatalog().region('united-states')).permits.filter(
      (one) => one.licence === 'none',
    );
    assert.equal(free.length, 3);
    for (const permit of free) near(inBase(permit.limit), (0.05 * 3) ** 2 / 30, 1e-9);
    near(inBase(present(shippedCatalog().region('japan')?.permits[0]).limit), (35e-6 * 3) ** 2 / 30, 0.02);
  });

  it('regions: each caution says that local rules and the licence decide', () => {
    assert.ok(shippedCatalog().regions.size >= 7);
    for (const region of shippedCatalog().regions.values()) assert.match(region.summary, /licence decide/);
  });
});

describe('the invented boards', () => {
  const hardware = (name: string) => present(shippedCatalog().board(name)?.hardware);
  const ports = (name: string) => present(hardware(name).ports);

  it('wren reads an inverted line on two ports only and shares the first with USB', () => {
    assert.deepEqual(
      ports('wren').map((port) => port.name),
      ['uart1', 'uart2', 'uart3', 'uart4', 'uart5', 'uart6'],
    );
    assert.deepEqual(
      ports('wren')
        .filter((port) => port.invertedIn)
        .map((port) => port.name),
      ['uart2', 'uart3'],
    );
    assert.deepEqual(
      ports('wren')
        .filter((port) => port.sharedWith)
        .map((port) => port.name),
      ['uart1'],
    );
    const { log, sensors, packInput, motorOutputs } = hardware('wren');
    assert.deepEqual([log, sensors, packInput?.mostCells, motorOutputs], [null, [], 6, 4]);
  });

  it('heron takes either polarity on eight ports, keeps a log and holds eight cells', () => {
    assert.equal(ports('heron').length, 8);
    assert.ok(ports('heron').every((port) => port.invertedIn && port.invertedOut));
    const { log, sensors, packInput, gyro } = hardware('heron');
    assert.deepEqual(log, { medium: 'flash', size: '16 MB' });
    assert.deepEqual(sensors, ['barometer', 'compass']);
    assert.equal(packInput?.mostCells, 8);
    assert.deepEqual(gyro?.rates?.map(inBase), [1600, 3200, 6400]);
  });

  it('measure their rated full pack below the reference voltage', () => {
    for (const { hardware: has, name } of shippedData().bundle.boards) {
      const { dividerUpper, dividerLower, reference, mostCells } = present(has?.packInput);
      const [upper, lower] = [inBase(present(dividerUpper)), inBase(present(dividerLower))];
      const full = present(mostCells) * 4.2;
      assert.ok((full * lower) / (upper + lower) <= inBase(present(reference)), name);
    }
  });
});
