import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { CraftView } from '../../../server/src/craft/view';
import { figureOf, figureSources } from '../../../server/src/figures';
import { axesOf } from '../../../server/src/figures/axis';
import { chainNames, filterNumbers } from '../../../server/src/figures/filter-stages';
import { loopOf } from '../../../server/src/figures/loop-state';
import { closely, overshoot, quickened, stepResponse } from '../../../server/src/physics/step-response';
import { parseUnit } from '../../../server/src/units/unit';
import { testCatalog } from '../../support/catalog';
import { craftOf, findingsIn } from '../../support/findings';
import { near } from '../../support/near';
import { plainCall } from '../../support/plain-call';
import { flownByTheClock } from '../../support/plain-discharge';

const club = { 'club-habits.craft': readFileSync('test/demo/club-habits.craft', 'utf8') };
const sandmartin = readFileSync('test/demo/sandmartin.craft', 'utf8');

function figures(text: string, pack: string) {
  const view = new CraftView(craftOf(text, club), pack);
  return (id: string) => {
    const figure = figureOf(view, id);
    assert.ok(figure, `${id} could not be computed`);
    return figure;
  };
}

const value = (text: string, pack: string) => (id: string) => figures(text, pack)(id).likely;

describe('the racer of the demo', () => {
  const sprint = value(sandmartin, 'sprint');
  const cruise = value(sandmartin, 'cruise');

  it('has forty figures and more with each pack', () => {
    for (const pack of ['sprint', 'cruise']) {
      const view = new CraftView(craftOf(sandmartin, club), pack);
      const found = figureSources.filter(({ id }) => figureOf(view, id) !== null);
      assert.ok(found.length >= 40, `${found.length} with ${pack}`);
    }
  });

  it('hovers at the same speed but for its mass: T = CT ρ n² D⁴, so n goes with the root of the mass', () => {
    near(cruise('hover-speed') / sprint('hover-speed'), Math.sqrt(330 / 308), 1e-9);
    near(cruise('hover-tone') / sprint('hover-tone'), Math.sqrt(330 / 308), 1e-9);
    near(sprint('hover-blade-tone') / sprint('hover-tone'), 3, 1e-9);
  });

  it('needs less throttle with six cells than with four, about as their voltages under load', () => {
    const ratio = sprint('hover-throttle') / cruise('hover-throttle');
    assert.ok(ratio < 1);
    // By hand: motor voltages 5.76 and 5.97 V, packs at 21.85 and 13.42 V.
    near(ratio, 5.76 / 21.85 / (5.97 / 13.42), 0.01);
  });

  it('turns faster, draws more and hovers shorter with six cells', () => {
    for (const id of ['full-speed', 'full-tone', 'tip-speed', 'full-current', 'full-thrust', 'pitch-speed'])
      assert.ok(sprint(id) > cruise(id), id);
    assert.ok(sprint('hover-current') < cruise('hover-current'));
    assert.ok(sprint('minutes-to-landing') < cruise('minutes-to-landing'));
  });

  it('hovers as long as four fifths of its charge last at its hover power, by a plain clock', () => {
    const usual = { sprint: 7, cruise: 60 };
    for (const [of, pack, cells, capacity, lowest] of [
      [sprint, 'sprint', 6, 0.55, 3.4],
      [cruise, 'cruise', 4, 1.8, 2.9],
    ] as const) {
      const resistance = (1.2 * (usual[pack] * cells)) / capacity / 1000 + 0.006 / capacity ** 0.7;
      const chemistry = testCatalog.chemistry(pack === 'sprint' ? 'lipo' : 'li-ion');
      const table = chemistry?.atRest?.map(({ voltage }) => Number.parseFloat(voltage)) ?? [];
      const { seconds } = flownByTheClock(
        { cells, table, resistance, capacity },
        { power: of('hover-power') },
        { lowest: cells * lowest, leftAtLeast: 0.2 },
      );
      near(of('minutes-to-landing'), seconds / 60, 0.01);
    }
  });

  it('hovers shorter with a cold pack, and is warned before it is due to land', () => {
    for (const of of [sprint, cruise]) {
      assert.ok(of('minutes-to-landing-cold') < of('minutes-to-landing'));
      assert.ok(of('minutes-to-warning-cold') < of('minutes-to-warning'));
      assert.ok(of('minutes-to-warning') < of('minutes-to-landing'));
    }
  });

  it('moves its tips at π D n, and loads its discs with its weight', () => {
    near(sprint('tip-speed'), (Math.PI * 3.5 * 0.0254 * sprint('full-speed')) / 60, 1e-9);
    near(sprint('disc-loading'), (0.308 * 9.806_65) / (Math.PI * (3.5 * 0.0254) ** 2), 1e-9);
  });

  it('sums its delays up from their parts', () => {
    const { likely, why } = figures(sandmartin, 'sprint')('loop-delay');
    const parts = [...why.matchAll(/([\d.]+) ms/g)].map((match) => Number(match[1]));
    assert.equal(parts.length, 6);
    near(
      likely,
      parts.reduce((sum, part) => sum + part, 0),
      5e-3,
    );
  });

  it('gives each figure from low to high, and says what was assumed for it', () => {
    const { low, likely, high, assumed } = figures(sandmartin, 'sprint')('hover-throttle');
    assert.ok(low < likely && likely < high);
    assert.match(assumed.join('; '), /thrust coefficient of like propellers/);
  });

  it('is estimated the surer, the more the script says', () => {
    const measured = sandmartin.replace('mass      = 96 g\n', 'mass      = 96 g\nresistance = 76 mohm\n');
    const said = measured.replace(
      '[prop]\n',
      '[prop]\nthrust-coefficient = 16 %\npower-coefficient = 10.4 %\n',
    );
    const width = (text: string) => {
      const { low, high } = figures(text, 'sprint')('full-thrust');
      return high - low;
    };
    assert.ok(width(said) < 0.6 * width(sandmartin), `${width(said)} of ${width(sandmartin)}`);
  });
});

describe('filters that are taken out', () => {
  const bare = sandmartin
    .replace(/(\[gyro\.filter\.1\]\nkind +=) butterworth/, '$1 none')
    .replace(/(\[gyro\.filter\.2\]\nkind +=) follow-motors/, '$1 none');

  it('give their delay back and let the motor tones through', () => {
    const [filtered, open] = [value(sandmartin, 'sprint'), value(bare, 'sprint')];
    assert.ok(filtered('gyro-filter-delay') > 0.9);
    assert.equal(open('gyro-filter-delay'), 0);
    assert.ok(filtered('hover-tone-left') < -6);
    near(1 + open('hover-tone-left'), 1, 1e-9);
    near(filtered('loop-delay') - open('loop-delay'), filtered('gyro-filter-delay'), 1e-9);
  });

  it('are told with the tone, and with how much of it is left', () => {
    const found = findingsIn(bare, club).find(({ id }) => id === 'tune/tone-reaches-gains');
    assert.match(
      found?.message ?? '',
      /hum at about 2\d\d Hz in the hover, and the filters of the gyro take no more than 0 dB off it/,
    );
  });
});

describe('figures', () => {
  it('are told in units that the table knows', () => {
    const unknown = figureSources.filter(({ unit }) => unit !== '' && parseUnit(unit).unit === undefined);
    assert.deepEqual(
      unknown.map(({ id, unit }) => `${id}: ${unit}`),
      [],
    );
  });

  it('have ids and titles of their own', () => {
    for (const of of ['id', 'title'] as const)
      assert.equal(new Set(figureSources.map((source) => source[of])).size, figureSources.length);
  });
});

describe('notches that follow the motors', () => {
  const one = sandmartin.replace('tones = 2', 'tones = 1');
  const delayOf = (text: string) => figures(text, 'sprint')('gyro-filter-2-delay');

  it('cost what four notches at the motor tone cost, one a motor (1/(Q ω0) each, far below it)', () => {
    const tone = figures(one, 'sprint')('hover-tone').likely;
    const each = 14 / (2 * Math.PI * tone ** 2);
    // 30 Hz is not so far below 242 Hz: a few hundredths more.
    near(delayOf(one).likely / (4e3 * each), 1, 0.06);
  });

  it('cost most at idle, where they stand still at their lower edge, and least at full throttle', () => {
    const { low, likely, high } = delayOf(one);
    assert.ok(low < likely && likely < high);
    const raised = delayOf(one.replace('from  = quiet', 'from  = 2 * quiet'));
    assert.ok(raised.high < high);
    near(raised.low, low, 1e-9);
  });

  it('meet the blades too where the script asks for it', () => {
    const blades = one.replace('width = 14 Hz', 'width = 14 Hz\nblade-tone = on');
    const left = (text: string) => value(text, 'sprint')('hover-blade-tone-left');
    // 2 % beside 774 Hz lies outside a notch of 14 Hz: it takes little there, as it would in the air.
    assert.ok(left(blades) < left(one) - 0.5, `${left(blades)} against ${left(one)}`);
    assert.ok(delayOf(blades).likely > delayOf(one).likely);
  });

  it('do nothing without the answers of the speed controllers', () => {
    const mute = one.replace('speed-feedback = on', 'speed-feedback = off');
    assert.equal(figureOf(new CraftView(craftOf(mute, club), 'sprint'), 'gyro-filter-2-delay'), null);
  });
});

describe('notches that search', () => {
  const tracked = sandmartin.replace(
    /\[gyro\.filter\.2\][^[]*/,
    '[gyro.filter.2]\nkind = follow-noise\ncount = 2\nfrom = 100 Hz\nto = 500 Hz\nwidth = 20 Hz\n\n',
  );

  it('sit on the tones of the motors, in their band, and say that this is assumed', () => {
    const { likely, high, assumed } = figures(tracked, 'sprint')('gyro-filter-2-delay');
    assert.match(assumed.join('; '), /searching notches on the motors’ own tones/);
    // By hand: one at 242 Hz and one, for the blades, at the upper edge of 500 Hz; at idle, as slow as it
    // may be, 100 Hz and three times that tone.
    const tone = figures(tracked, 'sprint')('hover-tone').likely;
    // Slope of atan((x/Q)/(1 - x²)), the phase of a notch, at 30 Hz.
    const delay = (centre: number) => {
      const x = 30 / centre;
      const width = (x * 20) / centre;
      return (1e3 * 20 * (1 + x ** 2)) / (2 * Math.PI * centre ** 2 * ((1 - x ** 2) ** 2 + width ** 2));
    };
    near(likely / (delay(tone) + delay(500)), 1, 0.02);
    near(high / (delay(100) + delay(3 * figures(tracked, 'sprint')('idle-tone').low)), 1, 0.02);
  });

  it('take more off the tone in the hover than the low-pass alone', () => {
    const bare = tracked.replace('kind = follow-noise', 'kind = none');
    const left = (text: string) => value(text, 'sprint')('hover-tone-left');
    assert.ok(left(tracked) < left(bare) - 3);
  });
});

describe('a chain of filters', () => {
  const search = (number: number) =>
    `[gyro.filter.${number}]\nkind = follow-noise\ncount = 1\nfrom = 100 Hz\nto = 2 kHz\nwidth = 20 Hz\n\n`;
  const with3 = sandmartin.replace('[gyro.filter.1 @ cruise]', `${search(3)}[gyro.filter.1 @ cruise]`);

  it('may have as many filters as the catalogue takes', () => {
    for (const chain of chainNames) {
      const names = testCatalog.members(`${chain}.filter`).map(({ name }) => name);
      assert.deepEqual(filterNumbers.map(String), names);
    }
  });

  it('works in the order of its numbers, wherever the lines stand', () => {
    const moved = `${sandmartin.replace(/\[gyro\.filter\.1\][^[]*/, '')}\n[gyro.filter.1]\nkind = butterworth\ncutoff = 2.5 * quiet\n`;
    const why = (text: string) => figures(text, 'sprint')('loop-delay').why;
    assert.match(why(sandmartin), /gyro filter 1, butterworth: .* gyro filter 2, follow-motors/);
    assert.equal(why(moved), why(sandmartin));
  });

  it('lets a search find what the filters before it leave: behind cuts on 1 and 2 times, the blades at 3 times', () => {
    const behind = figures(with3, 'sprint')('gyro-filter-3-delay').likely;
    const first = sandmartin
      .replace('[gyro.filter.1]', `${search(1)}[gyro.filter.3]`)
      .replace('[gyro.filter.1 @', '[gyro.filter.3 @');
    const before = figures(first, 'sprint')('gyro-filter-1-delay').likely;
    // Far below a notch its delay is width / (2 π f²): at 3 times the tone a ninth of it, a little less than that here.
    near(before / behind, 9, 0.06);
  });

  it('is not known where nothing is said of it, and neither are its delay and the margins', () => {
    const unsaid = sandmartin.replace(
      /\[gyro\.filter\.1\][^[]*\[gyro\.filter\.2\][^[]*\[gyro\.filter\.1 @ cruise\][^[]*/,
      '',
    );
    const view = new CraftView(craftOf(unsaid, club), 'sprint');
    for (const id of ['gyro-filter-delay', 'loop-delay', 'roll-phase-margin'])
      assert.equal(figureOf(view, id), null, id);
    assert.ok(findingsIn(unsaid, club).some(({ id }) => id === 'tune/gyro-chain-unsaid'));
  });

  it('of the derivative holds back the margins of axes with a derivative gain alone', () => {
    const unsaid = sandmartin.replace(/\[derivative\]\nchain[^\n]*\n/, '');
    const view = new CraftView(craftOf(unsaid, club), 'sprint');
    assert.notEqual(figureOf(view, 'gyro-filter-delay'), null);
    assert.equal(figureOf(view, 'roll-phase-margin'), null);
    assert.notEqual(
      figureOf(
        new CraftView(craftOf(unsaid.replace(/\nderivative +=[^\n]*/g, ''), club), 'sprint'),
        'roll-phase-margin',
      ),
      null,
    );
  });

  it('may be empty with one pack alone', () => {
    const bare = `${sandmartin}\n[gyro @ cruise]\nchain = none\n`;
    assert.equal(value(bare, 'cruise')('gyro-filter-delay'), 0);
    assert.ok(value(bare, 'sprint')('gyro-filter-delay') > 0.9);
    assert.ok(!findingsIn(bare, club).some(({ id }) => id === 'tune/chain-contradicted'));
  });
});

describe('all filters taken out on six cells', () => {
  it('is told with what the low-pass that still stands there would take off the tone, and its delay', () => {
    const bare = sandmartin
      .replace(/(\[gyro\.filter\.1\]\nkind +=) butterworth/, '$1 none')
      .replace(/(\[gyro\.filter\.2\]\nkind +=) follow-motors/, '$1 none');
    const found = findingsIn(bare, club).find(
      ({ id, pack }) => id === 'tune/all-filters-off' && pack === 'sprint',
    );
    // Butterworth of order 2 at 225 Hz: 10 log(1 + (242/225)^4) = 3.7 dB; 1.01 ms at 30 Hz.
    assert.match(
      found?.message ?? '',
      /about 242 Hz in the hover reaches the gains whole; a low-pass at the 225 Hz that still stand here would take 3\.7\d dB off it for 1\.01 ms of delay\.$/,
    );
  });
});

describe('gains that change at high throttle', () => {
  const when = (from: string, share: string) =>
    `${sandmartin}\n[control.when.high-throttle]\nfrom = ${from}\nproportional = ${share}\n`;
  const gainWith = (text: string, throttle: 'hover' | 'high') => {
    const view = new CraftView(craftOf(text, club), 'sprint');
    const found = axesOf(view, 'roll')?.value.find(({ point }) => point.throttle === throttle);
    return found ?? assert.fail('no such place');
  };
  const own = gainWith(sandmartin, 'hover').axis.gains.proportional;

  it('are as set in a hover below it', () =>
    assert.equal(gainWith(when('80 %', '40 %'), 'hover').axis.gains.proportional, own));

  it('come in evenly from there to full throttle', () => {
    for (const place of ['hover', 'high'] as const) {
      const { axis, point } = gainWith(when('5 %', '40 %'), place);
      const way = (point.demand - 0.05) / 0.95;
      near(axis.gains.proportional / own, 1 - 0.6 * way, 1e-6);
    }
  });

  it('move what is computed of the loop', () => {
    const crossover = (text: string) => value(text, 'sprint')('roll-crossover');
    assert.ok(crossover(when('1 %', '0 %')) < crossover(when('1 %', '50 %')));
    assert.ok(crossover(when('1 %', '50 %')) < crossover(sandmartin));
  });

  it('make nothing up where a line of theirs can not be read', () => {
    const view = new CraftView(craftOf(when('5 V', '40 %'), club), 'sprint');
    assert.equal(figureOf(view, 'roll-crossover'), null);
  });
});

describe('a quick way through the step response', () => {
  it('comes within a point and a twentieth of the full simulation, for each axis of the demo craft', () => {
    for (const name of ['sandmartin', 'bittern', 'wagtail']) {
      const craft = craftOf(readFileSync(`test/demo/${name}.craft`, 'utf8'), club);
      for (const view of craft.packs().map((pack) => new CraftView(craft, pack))) {
        for (const axisName of ['roll', 'pitch', 'yaw'] as const) {
          const loop = loopOf(view, axisName)?.value;
          if (loop === undefined || loop.margins === null) continue;
          const rates = {
            gyro: view.quantity('gyro.rate') ?? 0,
            control: view.quantity('control.rate') ?? 0,
          };
          const { crossover } = loop.margins;
          const quick = quickened(loop.axis, rates, crossover, closely);
          if (quick === null) continue;
          const over = 100 * overshoot(stepResponse(loop.axis, rates, plainCall, crossover, closely));
          const quickly =
            100 * overshoot(stepResponse(quick.axis, quick.rates, plainCall, crossover, closely));
          assert.ok(
            Math.abs(quickly - over) < 1 + 0.05 * over,
            `${name} ${axisName}: ${quickly} and ${over}`,
          );
        }
      }
    }
  });
});
