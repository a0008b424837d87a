import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { CraftView } from '../../../server/src/craft/view';
import { figureOf, figureSources } from '../../../server/src/figures';
import { parseUnit } from '../../../server/src/units/unit';
import { craftOf, findingsIn } from '../../support/findings';
import { near } from '../../support/near';

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
    // By hand: motor voltages 5.60 and 5.80 V, packs at 22.0 and 13.7 V.
    near(ratio, 5.6 / 22 / (5.8 / 13.7), 0.01);
  });

  it('turns faster, draws more and hovers shorter with six cells', () => {
    for (const id of ['full-speed', 'full-tone', 'tip-speed', 'full-current', 'full-thrust', 'pitch-speed'])
      assert.ok(sprint(id) > cruise(id), id);
    assert.ok(sprint('hover-current') < cruise('hover-current'));
    assert.ok(sprint('minutes-to-landing') < cruise('minutes-to-landing'));
  });

  it('flies so long as four fifths of its charge last at its hover current', () => {
    near(sprint('minutes-to-landing'), (0.8 * 0.55 * 60) / sprint('hover-current'), 1e-9);
    near(cruise('minutes-to-landing'), (0.8 * 1.8 * 60) / cruise('hover-current'), 1e-9);
  });

  it('moves its tips at π D n, and loads its discs with its weight', () => {
    near(sprint('tip-speed'), (Math.PI * 3.5 * 0.0254 * sprint('full-speed')) / 60, 1e-9);
    near(sprint('disc-loading'), (0.308 * 9.806_65) / (Math.PI * (3.5 * 0.0254) ** 2), 1e-9);
  });

  it('sums its delays up from their parts', () => {
    const { likely, why } = figures(sandmartin, 'sprint')('loop-delay');
    const parts = [...why.matchAll(/([\d.]+) ms/g)].map((match) => Number(match[1]));
    assert.equal(parts.length, 5);
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
    .replace(/(\[gyro\.lowpass\]\nshape +=) butterworth/, '$1 off')
    .replace(/harmonics = 2/, 'harmonics = 0');

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
      /hum at about 2\d\d Hz in the hover, and the filters of the gyro leave 0 dB/,
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
