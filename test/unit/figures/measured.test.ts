import assert from 'node:assert/strict';
import { CraftView } from '../../../server/src/craft/view';
import { figureOf } from '../../../server/src/figures';
import { hovering } from '../../../server/src/figures/drive-states';
import type { Figure } from '../../../server/src/figures/figure';
import { stickInHover } from '../../../server/src/figures/flight-readings';
import { priorDrive } from '../../../server/src/figures/prior-drive';
import { craftOf, findingsIn } from '../../support/findings';
import { near } from '../../support/near';

/** A three-inch craft as its parts' pages tell it, with two packs. */
const threeInch = [
  'craft.layout = quad-x',
  'craft.mass = 138 g',
  'motor.kv = 3800 rpm/V',
  'motor.resistance = 85 mohm',
  'motor.idle-current = 0.7 A',
  'prop.diameter = 3 in',
  'prop.pitch = 3.2 in',
  'prop.blades = 3',
  ...['one', 'other'].flatMap((pack) => [
    `pack.${pack}.chemistry = lipo`,
    `pack.${pack}.cells = ${pack === 'one' ? 3 : 4}`,
    `pack.${pack}.capacity = 550 mAh`,
    `pack.${pack}.mass = 55 g`,
    `pack.${pack}.discharge = 75 C`,
  ]),
].join('\n');

function flight(name: string, ...readings: readonly string[]): string {
  return ['pack = one', ...readings].map((line) => `flight.${name}.${line}`).join('\n');
}

function of(text: string, id: string, pack = 'one'): Figure {
  return figureOf(new CraftView(craftOf(text), pack), id) ?? assert.fail(`no ${id}`);
}

const width = ({ low, high }: Figure) => Math.log(high / low);
const flown = `${threeInch}\n${flight('noon', 'hover-throttle = 30 %', 'hover-current = 3.6 A')}`;

describe('what a flight measured', () => {
  it('is told with the day on which it was read off', () => {
    const dated = `${threeInch}\n${flight('noon', 'date = 2026-06-12', 'hover-throttle = 30 %')}`;
    const [told] = of(dated, 'hover-throttle').measured ?? [];
    assert.match(told?.text ?? '', /^you measured 30 % on 2026-06-12, the estimate was /);
  });

  it('is told beside the estimate, and corrects it towards the reading', () => {
    const before = of(threeInch, 'hover-throttle').likely;
    const after = of(flown, 'hover-throttle');
    assert.ok(after.likely < before && after.likely > 29, `${before} to ${after.likely}`);
    const [told] = after.measured ?? [];
    assert.match(told?.text ?? '', /^you measured 30 %, the estimate was 3\d[.\d]* %: corrected$/);
    assert.deepEqual([told?.flight, told?.reading, told?.isCorrected], ['noon', 30, true]);
    near(told?.estimate ?? 0, before, 1e-9);
    assert.match(of(flown, 'hover-tone').assumed.join('; '), /corrected by what flight noon measured/);
  });

  it('makes surer what hangs on the same inputs, with that pack and with others', () => {
    for (const pack of ['one', 'other'])
      for (const id of ['hover-throttle', 'hover-current', 'minutes-to-landing', 'hover-tone', 'full-thrust'])
        assert.ok(width(of(flown, id, pack)) < width(of(threeInch, id, pack)), `${id} with ${pack}`);
    assert.equal(of(flown, 'hover-throttle', 'other').measured, undefined);
  });

  it('hardly moves what was weighed', () => {
    const lift = (text: string) => of(text, 'disc-loading').likely;
    near(lift(flown) / lift(threeInch), 1, 0.01);
  });

  it('of the current is no surer than the sensor’s scale, however often it was read', () => {
    const often = Array.from({ length: 40 }, (_, index) => flight(`day-${index}`, 'hover-current = 4 A'));
    const current = of([threeInch, ...often].join('\n'), 'hover-current');
    // The scale may be off by 10 % either way, nine times of ten.
    assert.ok(width(current) > 2 * Math.log(1.085), `${current.low} ${current.high}`);
    assert.ok(width(current) < 2 * Math.log(1.2), `${current.low} ${current.high}`);
  });

  it('of the throttle is where the stick stood: curve and limit are undone', () => {
    const curved = `${threeInch}\nstick.throttle.curve = 0 % -> 0 %, 50 % -> 25 %, 100 % -> 100 %`;
    const before = of(threeInch, 'hover-throttle').likely;
    // A quarter of the throttle lies at half of the stick.
    const told = of(`${curved}\n${flight('noon', 'hover-throttle = 58 %')}`, 'hover-throttle').measured?.[0];
    assert.ok((told?.estimate ?? 0) > 1.4 * before, `${told?.estimate} of ${before}`);
    assert.equal(told?.isCorrected, true);
    const same = of(`${curved}\n${flight('noon', `hover-throttle = ${told?.estimate} %`)}`, 'hover-throttle');
    near(same.likely / before, 1, 0.03);
  });

  it('of charge and rest voltage together tells what the pack really holds', () => {
    const spent = (charge: string) => flight('noon', `used-charge = ${charge}`, 'rest-cell = 3.72 V');
    const minutes = (text: string) => of(text, 'minutes-to-landing').likely;
    const [worn, fresh] = [spent('365 mAh'), spent('400 mAh')].map((noted) => `${threeInch}\n${noted}`);
    assert.ok(minutes(worn ?? '') < minutes(fresh ?? ''));
    assert.ok(minutes(worn ?? '') < minutes(threeInch));
  });
});

describe('a reading that no estimate meets', () => {
  const odd = `${threeInch}\n${flight('noon', 'hover-throttle = 90 %')}`;

  it('corrects nothing, and what may be wrong is named', () => {
    const { likely, measured } = of(odd, 'hover-throttle');
    near(likely, of(threeInch, 'hover-throttle').likely, 1e-9);
    assert.equal(measured?.[0]?.isCorrected, false);
    assert.match(
      measured?.[0]?.text ?? '',
      /^you measured 90 %, the estimate was .* %\): too far apart, so nothing is corrected\. Look at the masses, the propellers/,
    );
    const found = findingsIn(odd).find(({ id }) => id === 'remember/hover-unlike-estimate');
    assert.match(found?.message ?? '', /On flight noon the throttle in the hover was 90 %/);
  });

  it('leaves the other readings of the flight to be learned from', () => {
    const both = `${odd}\nflight.noon.hover-current = 4 A`;
    assert.ok(width(of(both, 'hover-current')) < width(of(threeInch, 'hover-current')));
  });
});

describe('the correction beside a second, plain one', () => {
  /** From 0 to 1, the same each time. */
  function drawn(seed: number): () => number {
    let state = seed;
    return () => {
      state = (state * 16_807) % 2_147_483_647;
      return state / 2_147_483_647;
    };
  }

  /** Many craft as the parts let one expect, each counted by how well it meets the readings. */
  function weighed(throttle: number, current: number) {
    const prior =
      priorDrive(new CraftView(craftOf(threeInch), 'one'), 'as it is')?.value ?? assert.fail('no drive');
    const next = drawn(7);
    const normal = () => Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next());
    const nine = 1.645;
    const craft = Array.from({ length: 20_000 }, () => {
      const carried = prior.doubts.reduce((model, doubt) => doubt.at(model, normal() / nine), prior.carried);
      // From landing at 3.4 V to full at 4.2 V a cell, nominally 3.7 V.
      const way = normal() / nine;
      const open = carried.drive.openVoltage * (way < 0 ? (3.4 / 3.7) ** -way : (4.2 / 3.7) ** way);
      const then = { ...carried, drive: { ...carried.drive, openVoltage: open } };
      const [stick, state] = [stickInHover(then), hovering(then)];
      if (stick === null || state === null) return { weight: 0, value: 0 };
      const off = [
        (nine * Math.log(stick / throttle)) / (0.5 * Math.log((throttle + 0.03) / (throttle - 0.03))),
        (nine * Math.log(state.packCurrent / current)) / Math.hypot(Math.log(1.1), Math.log(1.02)),
      ];
      const weight = Math.exp(-0.5 * off.reduce((sum, one) => sum + one ** 2, 0));
      return { weight, value: hovering(carried)?.packCurrent ?? 0 };
    });
    const sorted = craft.sort((one, other) => one.value - other.value);
    const whole = sorted.reduce((sum, { weight }) => sum + weight, 0);
    return (share: number) => {
      let sum = 0;
      for (const { weight, value } of sorted) {
        sum += weight;
        if (sum >= share * whole) return value;
      }
      return 0;
    };
  }

  it('has the same likely current and span, within a few percent', () => {
    const at = weighed(0.3, 3.6);
    const { low, likely, high } = of(flown, 'hover-current');
    near(likely / at(0.5), 1, 0.03);
    near(low / at(0.05), 1, 0.06);
    near(high / at(0.95), 1, 0.06);
  }).timeout(30_000);
});
