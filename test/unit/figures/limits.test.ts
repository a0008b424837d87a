import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { CraftView } from '../../../server/src/craft/view';
import { figureOf } from '../../../server/src/figures';
import { craftOf, findingsIn } from '../../support/findings';
import { near } from '../../support/near';

const club = { 'club-habits.craft': readFileSync('test/demo/club-habits.craft', 'utf8') };
const bittern = readFileSync('test/demo/bittern.craft', 'utf8');

/** A motor and a pack that lose next to nothing: what the ideal laws hold for. */
const lossless = bittern
  .replace('resistance    = 0.11 ohm', 'resistance    = 0.5 mohm')
  .replace('idle-current  = 0.9 A', 'idle-current  = 1 mA')
  .replace('mass      = 310 g', 'mass      = 310 g\nresistance = 0.3 mohm');

function figures(text: string, pack = 'errand') {
  const view = new CraftView(craftOf(text, club), pack);
  return (id: string) => {
    const figure = figureOf(view, id);
    assert.ok(figure, `${id} could not be computed`);
    return figure;
  };
}

const value = (text: string, pack?: string) => (id: string) => figures(text, pack)(id).likely;

describe('limits', () => {
  const of = value(bittern);
  const withFullCell = (cell: string) =>
    bittern.replace(
      'cells     = 6\ncapacity  = 1850',
      `cells     = 6\nfull-cell = ${cell}\ncapacity  = 1850`,
    );

  it('are met with a full pack: the higher it is charged, the more of each', () => {
    const ids = [
      'full-current',
      'full-motor-current',
      'full-speed',
      'full-thrust',
      'full-sag',
      'tip-mach',
      'pitch-speed',
      'full-tone',
    ];
    const [low, high] = ['3.7 V', '4.2 V'].map((cell) => value(withFullCell(cell)));
    for (const id of ids) assert.ok((low?.(id) ?? 0) < (high?.(id) ?? 0), id);
    for (const id of ['hover-throttle', 'hover-current', 'thrust-to-weight'])
      assert.equal(low?.(id), high?.(id), id);
    // At rest at 3.7 V a fifth of the charge is left, which is the reserve.
    assert.ok((low?.('minutes-to-landing') ?? 0) < 0.03 * (high?.('minutes-to-landing') ?? 0));
  });

  it('grow at full throttle with the square of the voltage where nothing is lost (T = CT ρ n² D⁴ with n in proportion)', () => {
    const ideal = value(lossless);
    const ratio = ideal('full-thrust') / ideal('thrust-to-weight') / (0.885 * 9.806_65);
    near(ratio, (4.2 / 3.7) ** 2, 0.01);
  });

  it('grow with a little less than the square where windings and pack lose some', () => {
    const ratio = of('full-thrust') / of('thrust-to-weight') / (0.885 * 9.806_65);
    const power = Math.log(ratio) / Math.log(4.2 / 3.7);
    assert.ok(power > 1.4 && power < 2, `${power}`);
  });

  it('are those of the throttle: with a tenth less of it a lossless motor has 0.81 of its thrust', () => {
    const less = value(lossless.replace('output-limit = 80 %', 'output-limit = 72 %'));
    near(less('full-thrust') / value(lossless)('full-thrust'), 0.81, 0.01);
  });

  it('are held against what motors and controllers bear', () => {
    const strong = bittern.replace('current-limit = 32 A', 'current-limit = 19 A');
    const found = findingsIn(strong, club).find(({ id }) => id === 'turn/motor-overloaded');
    assert.match(
      found?.message ?? '',
      /At full throttle, with the pack full, each motor draws about 20[.\d]* A/,
    );
  });

  it('never leave more thrust than a full pack does, whatever the landing voltage', () => {
    const late = bittern.replace('land-cell     = 3.4 V', 'land-cell     = 3.8 V');
    const weight = 0.885 * 9.806_65;
    for (const text of [bittern, late]) {
      const at = value(text);
      assert.ok(at('thrust-to-weight-landing') <= at('full-thrust') / weight);
      assert.ok(at('thrust-to-weight') <= at('full-thrust') / weight);
    }
  });

  it('leave the least to stop a descent with as the pack comes to the landing voltage', () => {
    const ratio = of('thrust-to-weight-landing') / of('thrust-to-weight');
    assert.ok(ratio < 0.95 && ratio > 0.7, `${ratio}`);
    near(
      value(lossless)('thrust-to-weight-landing') / value(lossless)('thrust-to-weight'),
      (3.4 / 3.7) ** 2,
      0.02,
    );
  });
});

describe('the throttle of the hover', () => {
  const hover = (line: string) => value(`${bittern}\n[motor]\n${line}`)('hover-throttle');
  const straight = value(bittern)('hover-throttle');

  it('is what is asked for: a thrust shape that gives x² of output for x asks for the root of it', () => {
    const shape = Array.from({ length: 11 }, (_, step) => `${10 * step} % -> ${step ** 2} %`);
    near(hover(`thrust-shape = ${shape.join(', ')}`) / 100, Math.sqrt(straight / 100), 2e-3);
  });

  it('stays where it was with a straight shape', () => {
    near(hover('thrust-shape = 0 % -> 0 %, 100 % -> 100 %'), straight, 1e-6);
  });

  it('is less where the outputs are raised as the pack empties', () => {
    const even = value(bittern.replace('[power]\n', '[power]\neven-thrust = 100 %\n'))('hover-throttle');
    // 22 V under the hover's load in place of 25.2 V.
    near(even / straight, 22.005 / 25.2, 0.002);
  });
});

describe('tones', () => {
  it('are as sure as the speeds that they come from', () => {
    const found = figures(bittern);
    for (const [tone, speed] of [
      ['hover-tone', 'hover-speed'],
      ['full-tone', 'full-speed'],
    ] as const)
      for (const end of ['low', 'likely', 'high'] as const)
        near(found(tone)[end], found(speed)[end] / 60, 1e-9);
  });

  it('that are guessed may miss a notch that stands still: its figure goes from none left to all of it', () => {
    const notch = '\n[gyro.filter.2]\nkind = notch\ncentre = 136.3 Hz\nwidth = 6 Hz\n';
    const still = bittern.replace(/\[gyro\.filter\.2\][^[]*/, notch).replace(/\[gyro\.filter\.1\][^[]*/, '');
    const { low, likely, high } = figures(still)('hover-tone-left');
    assert.ok(likely < -3, `${likely}`);
    assert.ok(low <= likely && high > -0.5, `${high}`);
  });

  it('that are guessed make what the gains pass on to the motors as unsure', () => {
    const { low, likely, high } = figures(bittern)('roll-noise-gain');
    assert.ok(low < likely && likely < high, `${low} ${likely} ${high}`);
  });

  it('that run past half of the rate are seen anywhere that their span folds to', () => {
    const { low, likely, high } = figures(bittern.replace('rate = 3.2 kHz', 'rate = 1.25 kHz'))(
      'full-blade-alias',
    );
    assert.ok(low < likely && likely <= high);
    assert.equal(high, 625);
  });
});

describe('what surrounds the propellers', () => {
  const guarded = (guard: string) =>
    figures(bittern.replace('[prop]\n', `[prop]\nguard = ${guard}\n`))('full-thrust');

  it('moves the thrust in the hover: a duct adds 7 % (Li, Yonezawa and Liu 2021), a ring makes it less sure', () => {
    const [none, bumper, ring, duct] = ['none', 'bumper', 'ring', 'duct'].map(guarded);
    assert.ok(none && bumper && ring && duct);
    assert.deepEqual(bumper, none);
    near(duct.likely / none.likely, 1.07, 0.005);
    near(ring.likely, none.likely, 1e-9);
    assert.ok(ring.high - ring.low > none.high - none.low);
  });
});

describe('the voltage of the no-load current', () => {
  const efficiency = (voltage: string) =>
    value(bittern.replace('poles ', `idle-current-voltage = ${voltage}\npoles `))('hover-motor-efficiency');

  it('moves the efficiency by a few hundredths: measured at a higher voltage, less of it is left in the hover', () => {
    const gained = efficiency('20 V') - efficiency('8 V');
    assert.ok(gained > 1 && gained < 8, `${gained}`);
  });

  it('is 10 V where nothing is said, and for a craft of one cell no more than that', () => {
    near(efficiency('10 V'), value(bittern)('hover-motor-efficiency'), 1e-9);
    const wagtail = readFileSync('test/demo/wagtail.craft', 'utf8');
    assert.match(
      figures(wagtail, 'single')('hover-current').assumed.join('; '),
      /no-load current at 3\.8\d? V/,
    );
  });
});
