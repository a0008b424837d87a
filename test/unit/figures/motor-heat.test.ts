import assert from 'node:assert/strict';
import fc from 'fast-check';
import { CraftView } from '../../../server/src/craft/view';
import { figureOf } from '../../../server/src/figures';
import { warmingSentences } from '../../../server/src/figures/heat-words';
import { craftOf } from '../../support/findings';
import { plainState } from '../../support/plain-drive';
import { plainHeatAfter } from '../../support/plain-heat';
import { type PlausibleCraft, plain, plausibleCraft, scriptOf } from '../../support/plausible-craft';

const kelvin = (celsius: number) => celsius + 273.15;

/** A motor of 30 g whose insulation and magnets are told. */
const told = ['motor.mass = 30 g', 'motor.insulation-limit = 155 degC'];
const copper = { share: 0.15, heat: 390, growth: 3.93e-3 };

function viewOf(craft: PlausibleCraft, ...lines: readonly string[]): CraftView {
  return new CraftView(craftOf(scriptOf(craft, ...told, ...lines)), 'one');
}

function likely(view: CraftView, id: string): number {
  return figureOf(view, id)?.likely ?? Number.NaN;
}

/** Half of the current without a load grows with the speed, as in the plain drive. */
function ironOf(craft: PlausibleCraft, speed: number): number {
  const volts = Math.min(10, 3.7 * craft.cells);
  const measured = craft.speedConstant * (volts - craft.resistance * craft.idleCurrent);
  return (craft.idleCurrent * (0.5 + (0.5 * speed) / measured) * speed) / craft.speedConstant;
}

describe('the heat of motors', () => {
  it('is what a second, plain reckoning has: losses, and the seconds of copper that keeps it all', () => {
    let hovered = 0;
    fc.assert(
      fc.property(plausibleCraft, (craft) => {
        const view = viewOf(craft);
        const holds = (id: string, plainly: number, within = 2e-3) => {
          const figure = likely(view, id);
          assert.ok(Math.abs(figure / plainly - 1) < within, `${id}: ${figure} and ${plainly}`);
        };
        const warm = craft.resistance * (1 + copper.growth * 40);
        const full = plainState(craft, craft.cells * plain.full, 1);
        assert.ok(full !== null);
        holds('full-copper-loss', warm * full.current ** 2);
        holds('full-iron-loss', ironOf(craft, full.speed));
        holds('full-controller-loss', 0.025 * full.volts * full.current);
        const hover = plainState(craft, craft.cells * 3.7, 'hover');
        if (hover === null) return;
        hovered += 1;
        holds('hover-copper-loss', warm * hover.current ** 2);
        holds('hover-iron-loss', ironOf(craft, hover.speed));
        const seconds = likely(view, 'full-throttle-seconds');
        const capacity = 0.03 * copper.share * copper.heat;
        const cold = craft.resistance * full.current ** 2;
        const [winding] = plainHeatAfter(
          {
            winding: capacity,
            housing: 1,
            within: 1e9,
            toAir: 1,
            loss: (at) => cold * (1 + copper.growth * (at - kelvin(20))),
            housingLoss: 0,
            air: kelvin(15),
          },
          [kelvin(60), kelvin(15)],
          seconds,
          2000,
        );
        assert.ok(Math.abs(winding - kelvin(155)) < 0.3, `${winding}`);
      }),
      { numRuns: 30, endOnFailure: true },
    );
    assert.ok(hovered > 10, `${hovered} hovered`);
  }).timeout(60_000);

  it('shows in the bell as it was read off, and the winding lies above it by what it gives to it', () => {
    let flown = 0;
    fc.assert(
      fc.property(plausibleCraft, (craft) => {
        const view = viewOf(
          craft,
          'flight.noon.motor-temperature = 52 degC',
          'flight.noon.air-temperature = 15 degC',
        );
        const state = plainState(
          { ...craft, mass: 1.8 ** (2 / 3) * (craft.mass + craft.packMass) - craft.packMass },
          craft.cells * 3.7,
          'hover',
        );
        if (state === null || figureOf(view, 'bell-as-flown') === null) return;
        flown += 1;
        assert.ok(Math.abs(likely(view, 'bell-as-flown') - 52) < 0.01);
        let winding = 52;
        for (let look = 0; look < 200; look += 1)
          winding = 52 + 2 * craft.resistance * (1 + copper.growth * (winding - 20)) * state.current ** 2;
        const figure = likely(view, 'winding-as-flown');
        if (winding < 300)
          assert.ok(Math.abs(figure - winding) < 0.005 * winding, `${figure} and ${winding}`);
      }),
      { numRuns: 30, endOnFailure: true },
    );
    assert.ok(flown > 10, `${flown} flown`);
  }).timeout(60_000);

  it('tells no temperature before a reading, and says what to note', () => {
    fc.assert(
      fc.property(plausibleCraft, (craft) => {
        const view = viewOf(craft, 'craft.longest-full-throttle = 4 s');
        for (const id of ['bell-as-flown', 'winding-as-flown', 'winding-after-full-throttle'])
          assert.equal(figureOf(view, id), null, id);
        assert.match(
          warmingSentences(view).join(' '),
          /Note flight\.<name>\.motor-temperature, .* with pack one/,
        );
      }),
      { numRuns: 5 },
    );
  });

  const read = ['flight.noon.motor-temperature = 50 degC', 'flight.noon.air-temperature = 10 degC'];

  it('has its likely value inside its span, and no less than nothing, of any craft', () => {
    const ids = [
      'full-throttle-seconds',
      'full-throttle-held',
      ...['hover', 'full'].flatMap((place) =>
        ['copper', 'iron', 'controller'].map((part) => `${place}-${part}-loss`),
      ),
      'bell-as-flown',
      'winding-as-flown',
      'winding-after-full-throttle',
    ];
    const seen = new Set<string>();
    fc.assert(
      fc.property(plausibleCraft, fc.constantFrom('gentle', 'freestyle', 'race'), (craft, style) => {
        const view = viewOf(craft, `craft.flying = ${style}`, ...read);
        for (const id of ids) {
          const figure = figureOf(view, id);
          if (figure === null) continue;
          seen.add(id);
          assert.ok(figure.low >= 0 && figure.low <= figure.likely && figure.likely <= figure.high, id);
        }
      }),
      { numRuns: 30 },
    );
    assert.deepEqual([...seen].sort(), [...ids].sort());
  }).timeout(60_000);

  it('grows with the current and the weight, and is borne longer by more mass and by better insulation', () => {
    fc.assert(
      fc.property(plausibleCraft, (craft) => {
        const now = viewOf(craft);
        const heavier = viewOf({ ...craft, mass: 1.05 * craft.mass });
        if (figureOf(heavier, 'hover-copper-loss') !== null)
          for (const part of ['copper', 'iron', 'controller'])
            assert.ok(likely(heavier, `hover-${part}-loss`) > likely(now, `hover-${part}-loss`), part);
        const longer = (...lines: readonly string[]) =>
          likely(viewOf(craft, ...lines), 'full-throttle-seconds');
        const seconds = likely(now, 'full-throttle-seconds');
        assert.ok(longer('motor.mass = 33 g') > seconds);
        assert.ok(longer('motor.insulation-limit = 180 degC') > seconds);
        assert.ok(longer('motor.output-limit = 80 %') > seconds);
        assert.ok(longer(...read.map((line) => line.replace('50 degC', '120 degC'))) < seconds);
      }),
      { numRuns: 20 },
    );
  }).timeout(60_000);

  it('makes windings the hotter, the longer full throttle is held, the hotter the day and the bell that was read', () => {
    fc.assert(
      fc.property(plausibleCraft, (craft) => {
        const windingAfter = (seconds: number, ...lines: readonly string[]) =>
          likely(
            viewOf(craft, `craft.longest-full-throttle = ${seconds} s`, ...read, ...lines),
            'winding-after-full-throttle',
          );
        const base = windingAfter(2);
        if (Number.isNaN(base)) return;
        assert.ok(windingAfter(3) > base);
        assert.ok(windingAfter(2, 'craft.air-temperature = 30 degC') > base);
        assert.ok(windingAfter(2, 'flight.noon.motor-temperature = 60 degC') > base);
      }),
      { numRuns: 20 },
    );
  }).timeout(60_000);

  it('is borne as long as the maker says at a current that is not reached', () => {
    fc.assert(
      fc.property(plausibleCraft, (craft) => {
        const now = viewOf(craft);
        const current = likely(now, 'full-motor-current');
        const unrated = likely(now, 'full-throttle-seconds');
        const rated = (share: number) =>
          likely(
            viewOf(
              craft,
              `motor.current-limit = ${Math.min(300, share * current)} A`,
              'motor.burst-time = 500 s',
            ),
            'full-throttle-seconds',
          );
        assert.ok(Math.abs(rated(1.2) - Math.max(500, unrated)) < 1e-9);
        assert.equal(rated(0.8), unrated);
      }),
      { numRuns: 10 },
    );
  });
});
