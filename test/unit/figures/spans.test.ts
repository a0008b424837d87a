import assert from 'node:assert/strict';
import fc from 'fast-check';
import { CraftView } from '../../../server/src/craft/view';
import { figureOf } from '../../../server/src/figures';
import type { Figure } from '../../../server/src/figures/figure';
import { intervalText } from '../../../server/src/sheet/which-pack';
import { craftOf, findingsIn } from '../../support/findings';
import { near } from '../../support/near';
import { plausibleCraft, scriptOf } from '../../support/plausible-craft';

/** A five-inch craft as its parts' pages tell it. */
const fiveInch = [
  'craft.layout = quad-x',
  'craft.mass = 420 g',
  'craft.motor-spacing = 225 mm',
  'motor.kv = 1950 rpm/V',
  'motor.resistance = 65 mohm',
  'motor.idle-current = 1 A',
  'motor.poles = 14',
  'prop.diameter = 5.1 in',
  'prop.pitch = 4 in',
  'prop.blades = 3',
  'pack.one.chemistry = lipo',
  'pack.one.cells = 6',
  'pack.one.capacity = 1100 mAh',
  'pack.one.mass = 190 g',
  'pack.one.discharge = 100 C',
].join('\n');

function of(text: string, id: string): Figure {
  return figureOf(new CraftView(craftOf(text), 'one'), id) ?? assert.fail(`no ${id}`);
}

describe('a pack without a discharge rating', () => {
  const unrated = fiveInch.replace('pack.one.discharge = 100 C', '');
  const lasting = fiveInch.replace('discharge = 100 C', 'discharge = 5 C');

  it('has a span that covers quick and lasting packs', () => {
    for (const id of ['full-sag', 'full-current', 'thrust-to-weight']) {
      const [open, quick, slow] = [of(unrated, id), of(fiveInch, id), of(lasting, id)];
      assert.ok(open.low <= Math.min(quick.likely, slow.likely), id);
      assert.ok(open.high >= Math.max(quick.likely, slow.likely), id);
    }
  });

  it('raises no alarm about sag or thrust, and its figures name the setting that would tell', () => {
    const alarms = ['power/sags-deep', 'power/thrust-short', 'power/hover-high'];
    const found = findingsIn(unrated).filter(({ id }) => alarms.includes(id));
    assert.deepEqual(found, []);
    assert.match(of(unrated, 'full-sag').assumed.join('; '), /pack\.one\.discharge would tell which/);
    assert.doesNotMatch(of(fiveInch, 'full-sag').assumed.join('; '), /would tell which/);
  });
});

describe('the mass in flight', () => {
  it('is as sure as kitchen scales, and as what hangs on it alone', () => {
    const [mass, load] = [of(fiveInch, 'flying-mass'), of(fiveInch, 'disc-loading')];
    near(mass.likely, 610, 1e-9);
    near(mass.high / mass.likely, 1.02, 1e-9);
    for (const end of ['low', 'high'] as const) near(load[end] / load.likely, mass[end] / mass.likely, 1e-9);
  });
});

describe('the advice about a craft that has too little left', () => {
  const heavy = fiveInch.replace('craft.mass = 420 g', 'craft.mass = 2600 g');
  const advice = (script: string) => {
    const found = findingsIn(script).find(({ id }) => id === 'power/hover-high');
    return found === undefined ? assert.fail('no finding') : found.advice;
  };

  it('names the rating that would tell whether the pack is a quick one, where it is missing', () => {
    const unrated = heavy.replace('pack.one.discharge = 100 C', '');
    assert.match(advice(unrated), /write pack\.one\.discharge or pack\.one\.resistance\.$/);
    assert.deepEqual(of(unrated, 'hover-throttle').settledBy, ['pack.one.discharge', 'pack.one.resistance']);
  });

  it('names none where the rating or the resistance is written, and of cells that are all for range', () => {
    assert.doesNotMatch(advice(heavy), /write pack/);
    const unrated = fiveInch.replace('pack.one.discharge = 100 C', '');
    const known = [
      `${unrated}\npack.one.resistance = 20 mohm`,
      unrated.replace('pack.one.chemistry = lipo', 'pack.one.chemistry = li-ion'),
    ];
    for (const script of known) assert.equal(of(script, 'hover-throttle').settledBy, undefined);
  });
});

describe('a craft that may be too heavy', () => {
  it('hovers at so much throttle up to not at all, and so long down to not at all', () => {
    const heavy = fiveInch.replace('craft.mass = 420 g', 'craft.mass = 3.4 kg');
    const throttle = of(heavy, 'hover-throttle');
    assert.equal(throttle.highWords, 'not at all');
    assert.equal(throttle.lowWords, undefined);
    assert.match(intervalText(throttle) ?? '', /^\d[\d.]* to not at all$/);
    assert.equal(of(heavy, 'minutes-to-landing').lowWords, 'not at all');
    assert.equal(of(fiveInch, 'hover-throttle').highWords, undefined);
  });
});

describe('what the electronics draw', () => {
  it('is less on a small craft, and no more than a third of what a 60 g one hovers with', () => {
    const small = fiveInch
      .replace('mass = 420 g', 'mass = 34 g')
      .replace('mass = 190 g', 'mass = 26 g')
      .replace('5.1 in', '2 in')
      .replace('4 in', '1.6 in')
      .replace('1950 rpm/V', '6000 rpm/V')
      .replace('65 mohm', '150 mohm')
      .replace('cells = 6', 'cells = 2')
      .replace('1100 mAh', '450 mAh');
    const watts = (text: string) => {
      const told = of(text, 'hover-power').assumed.find((words) =>
        words.endsWith('everything but the motors'),
      );
      return Number.parseFloat(told ?? '');
    };
    assert.ok(watts(small) < watts(fiveInch) / 2, `${watts(small)} and ${watts(fiveInch)}`);
    assert.ok(watts(small) < of(small, 'hover-power').likely / 3);
  });

  it('is as good as known where the script tells the current at rest', () => {
    const told = `${fiveInch}\npower.standing-current = 0.25 A`;
    const width = ({ low, high }: Figure) => high / low;
    assert.ok(width(of(told, 'hover-current')) < width(of(fiveInch, 'hover-current')));
  });
});

describe('what a propeller lifts and what it drags', () => {
  it('go together where both are guessed, so that the power is surer than with each for itself', () => {
    const { likely, low, high } = of(fiveInch, 'hover-power');
    // By hand: thrust within 1.40 and power within 1.61, as like propellers lie; power goes with CP / CT^1.5.
    const apart = Math.hypot(1.5 * Math.log(1.4), Math.log(1.61));
    const half = Math.log(high / low) / 2;
    assert.ok(half < 0.8 * apart, `${half} of ${apart}`);
    assert.ok(low < likely && likely < high);
  });
});

describe('a cold pack', () => {
  const ends = ['low', 'likely', 'high'] as const;

  it('never lasts longer, whatever the craft', () => {
    fc.assert(
      fc.property(plausibleCraft, (craft) => {
        const minutes = [15, 10, 0, -10, -20].flatMap((degrees) => {
          const text = scriptOf(craft, `craft.air-temperature = ${degrees} degC`);
          return figureOf(new CraftView(craftOf(text), 'one'), 'minutes-to-landing') ?? [];
        });
        for (const [index, colder] of minutes.slice(1).entries())
          for (const end of ends) assert.ok(colder[end] <= (minutes[index]?.[end] ?? 0), `${end} ${index}`);
      }),
      { numRuns: 100 },
    );
  });

  it('sags more for the same current, and says that it is as cold as the air', () => {
    const cold = `${fiveInch}\ncraft.air-temperature = -10 degC`;
    const ohms = (text: string) => of(text, 'full-sag').likely / of(text, 'full-current').likely;
    assert.ok(ohms(cold) > 1.3 * ohms(fiveInch));
    assert.match(
      of(cold, 'full-sag').assumed.join('; '),
      /a pack as cold as the air, with 80 % of its charge and/,
    );
  });

  it('that is kept warm in a pocket is as good as it is warm', () => {
    const kept = `${fiveInch}\ncraft.air-temperature = -10 degC\npack.one.coldest = 20 degC`;
    const colder = of(kept, 'minutes-to-landing').likely / of(fiveInch, 'minutes-to-landing').likely;
    // Denser air alone: the root of 288 over 263 K, for what goes into the air.
    near(colder, Math.sqrt(288.15 / 263.15), 0.02);
  });
});
