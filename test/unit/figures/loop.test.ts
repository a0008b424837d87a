import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import type { Craft } from '../../../server/src/craft/craft';
import { CraftView } from '../../../server/src/craft/view';
import { figureOf } from '../../../server/src/figures';
import { axisNames } from '../../../server/src/figures/axis-names';
import { loopOf } from '../../../server/src/figures/loop-state';
import { movedFigures } from '../../../server/src/sheet/compare/moved-figures';
import { tryValue } from '../../../server/src/sheet/try-value';
import { craftOf, findingsIn } from '../../support/findings';
import { near } from '../../support/near';

const club = { 'club-habits.craft': readFileSync('test/demo/club-habits.craft', 'utf8') };
const bittern = readFileSync('test/demo/bittern.craft', 'utf8');
const sandmartin = readFileSync('test/demo/sandmartin.craft', 'utf8');

/** Bittern, seven inches, with four and a half times the gains of roll: calm in the hover, and not near the top. */
const eager = bittern
  .replace('proportional = 0.09 %/(deg/s)', 'proportional = 0.4 %/(deg/s)')
  .replace('integral     = 0.45 %/deg', 'integral     = 2 %/deg')
  .replace('derivative   = 0.0011 %/(deg/s^2)', 'derivative   = 0.005 %/(deg/s^2)');

/** Each is only looked at, and made once. */
const known = new Map<string, Craft>();

function viewOf(text: string, pack: string): CraftView {
  const craft = known.get(text) ?? craftOf(text, club);
  known.set(text, craft);
  return new CraftView(craft, pack);
}

const loop = (text: string, pack: string, axis: 'roll' | 'pitch' | 'yaw') =>
  loopOf(viewOf(text, pack), axis)?.value ?? assert.fail('no loop');
const likely = (text: string, pack: string, id: string) =>
  figureOf(viewOf(text, pack), id)?.likely ?? assert.fail(`no ${id}`);

describe('a seven-inch craft that is calm in the hover and swings near the top', () => {
  const found = loop(eager, 'errand', 'roll');

  it('is told to swing, at its place, with how fast', () => {
    const verdicts = new Map(found.everywhere.map(({ place, stability }) => [place, stability.verdict]));
    assert.equal(verdicts.get('in the hover, pack full'), 'calm');
    assert.equal(verdicts.get('at 90 % of the usable output, pack full'), 'swings');
    const told = findingsIn(eager, club).find(
      ({ id, pack }) => id === 'tune/roll-swings' && pack === 'errand',
    );
    assert.match(
      told?.message ?? '',
      /roll swings by itself at about \d\d(\.\d)? Hz, at 90 % of the usable output, pack full\.$/,
    );
  });

  it('has no margin, overshoot or crossover to boast of', () => {
    const view = viewOf(eager, 'errand');
    for (const id of ['crossover', 'phase-margin', 'gain-margin', 'overshoot', 'delay-phase'])
      assert.equal(figureOf(view, `roll-${id}`), null, id);
    assert.notEqual(figureOf(view, 'pitch-phase-margin'), null);
  });

  it('is never told to be better than the calm one, in compare and try alike', () => {
    const [calm, wild] = [craftOf(bittern, club), craftOf(eager, club)];
    const moved = movedFigures(calm, wild, [['errand', 'errand']]);
    const ofRoll = moved.filter(({ id }) => id.startsWith('roll-') && id !== 'roll-noise-gain');
    assert.ok(ofRoll.length >= 5);
    assert.deepEqual(
      ofRoll.filter(({ turn }) => turn === 'better').map(({ id }) => id),
      [],
    );
    assert.equal(moved.find(({ id }) => id === 'roll-swings')?.turn, 'worse');
    const back = movedFigures(wild, calm, [['errand', 'errand']]);
    assert.equal(back.find(({ id }) => id === 'roll-swings')?.turn, 'better');
    const tried = tryValue(calm, 'errand', 'control.roll.proportional', '0.6 %/(deg/s)', [], () => []);
    assert.equal(tried?.moved.find(({ id }) => id === 'roll-swings')?.turn, 'worse');
  });

  it('is calm again with gains that give way near the top', () => {
    const soft = `${eager}\n[control.when.high-throttle]\nfrom = 30 %\nproportional = 30 %\nderivative = 30 %\nintegral = 30 %\n`;
    assert.equal(figureOf(viewOf(soft, 'errand'), 'roll-swings'), null);
    assert.ok(likely(soft, 'errand', 'roll-gain-margin') > 1);
  });
});

describe('yaw', () => {
  it('has the reaction of the rotors: 12.5 times the gain at 78 Hz for bittern at the voltage of a half-used pack, where a motor that loses nothing of its speed under a load has 9 times, and one without the reaction 32', () => {
    const hover = loop(bittern, 'meadow', 'yaw').everywhere.find(
      ({ place }) => place === 'in the hover, pack full',
    );
    const volts = (id: string) => likely(bittern, 'meadow', id);
    // The same gain and a lower voltage: so much more margin.
    const lower = volts('pack-full-voltage') / volts('pack-nominal-voltage');
    near((hover?.margins?.gainMargin ?? 0) * lower, 12.5, 0.05);
    near(hover?.margins?.gainMarginAt ?? 0, 78, 0.05);
  });

  it('has a crossover that hops where the gain stays near 1: told as a band, each in its place', () => {
    const { low, likely: most, high } = figureOf(viewOf(bittern, 'meadow'), 'yaw-crossover') ?? assert.fail();
    assert.ok(low < most && most < high && high / low > 4, `${low} ${most} ${high}`);
  });

  it('starts as much harder as the lag is shorter than the lead, with one inertia for both', () => {
    const heavier = loop(
      bittern.replace('blades   = 2', 'blades   = 2\ninertia  = 0.05 g*m^2'),
      'meadow',
      'yaw',
    ).axis;
    const lighter = loop(
      bittern.replace('blades   = 2', 'blades   = 2\ninertia  = 0.02 g*m^2'),
      'meadow',
      'yaw',
    ).axis;
    near(heavier.motorLag / lighter.motorLag, heavier.reactionLead / lighter.reactionLead, 1e-9);
    assert.ok(heavier.motorLag > 1.5 * lighter.motorLag);
  });
});

describe('the place of a figure', () => {
  it('is where the loop comes nearest to swinging, of six, and is told with it', () => {
    const { everywhere, placed, stability } = loop(sandmartin, 'sprint', 'roll');
    assert.equal(everywhere.length, 6);
    for (const one of everywhere)
      assert.ok(stability.nearest.distance <= one.stability.nearest.distance + 1e-3);
    const figure = figureOf(viewOf(sandmartin, 'sprint'), 'roll-phase-margin');
    assert.equal(figure?.place, placed.place);
    assert.ok(figure?.assumed.includes(placed.place));
    assert.match(figure?.why ?? '', /in the hover, pack full: \d/);
  });

  it('is the hover alone for a craft that hovers above nine tenths of what it may use', () => {
    const low = bittern.replace('output-limit = 80 %', 'output-limit = 26 %');
    const places = loop(low, 'errand', 'roll').everywhere.map(({ place }) => place);
    assert.ok(
      places.length > 0 && places.every((place) => place.startsWith('in the hover')),
      places.join('; '),
    );
  });
});

describe('layouts', () => {
  const withLayout = (layout: string, ...further: readonly string[]) =>
    sandmartin
      .replace('layout          = quad-x', `layout          = ${layout}`)
      .replace(/order +=.*\n/, '')
      .replace(
        'motor-spacing   = 165 mm',
        ['motor-spacing   = 165 mm', 'inertia.roll = 0.3 g*m^2', ...further].join('\n'),
      );
  const authority = (text: string) => {
    const { everywhere } = loop(text, 'sprint', 'roll');
    return everywhere.find(({ place }) => place === 'in the hover, pack full')?.axis.authority ?? Number.NaN;
  };

  it('push as their arms let them: an X √2 times as hard as a plus', () =>
    near(authority(withLayout('quad-x')) / authority(withLayout('quad-plus')), Math.SQRT2, 1e-9));

  it('that are wide roll harder: twice as wide as long has 2/√5 over 1/√2 of the arm', () =>
    near(
      authority(withLayout('quad-wide', 'width-to-length = 200 %')) / authority(withLayout('quad-x')),
      2 / Math.sqrt(5) / Math.SQRT1_2,
      1e-9,
    ));

  it('with one propeller above another turn faster for the same lift', () => {
    const speed = (layout: string) => likely(withLayout(layout), 'sprint', 'hover-speed');
    // 22 % more induced power: 1.22^(1/3) times the speed.
    near(speed('y6') / speed('hex-x'), 1.22 ** (1 / 3), 1e-6);
  });
});

describe('settings that live in the loop', () => {
  const told = (text: string, pack: string) =>
    axisNames
      .flatMap((axis) =>
        ['phase-margin', 'gain-margin', 'crossover', 'overshoot'].map((what) => `${axis}-${what}`),
      )
      .map((id) => figureOf(viewOf(text, pack), id)?.likely ?? null);

  for (const line of [
    'derivative.input = error',
    'derivative.limit = 1 %',
    'control.roll.feedforward = 0.002 %/(deg/s^2)',
    'control.pitch.limit = 5 %\nderivative.input = error',
    'motor.rise-limit = 100 %/s',
    'motor.thrust-shape = 0 % -> 0 %, 50 % -> 75 %, 100 % -> 100 %',
    'motor.mass = 20 g',
    'prop.mass = 4 g',
    'prop.inertia = 0.01 g*m^2',
    'control.when.high-throttle.from = 30 %\ncontrol.when.high-throttle.proportional = 50 %',
    'control.when.fast-turn.from = 200 deg/s\ncontrol.when.fast-turn.proportional = 200 %',
    'control.when.throttle-jumps.from = 200 %/s\ncontrol.when.throttle-jumps.integral = 600 %\ncontrol.when.throttle-jumps.proportional = 150 %',
  ])
    it(`move a figure: ${line.replaceAll('\n', ', ')}`, () =>
      assert.notDeepEqual(told(`${line}\n${sandmartin}`, 'sprint'), told(sandmartin, 'sprint')));

  it('bound what the integral stores', () => {
    const strong = bittern
      .replace('proportional = 0.09 %/(deg/s)', 'proportional = 0.03 %/(deg/s)')
      .replaceAll('100 % -> 300 deg/s', '100 % -> 900 deg/s');
    assert.notDeepEqual(told(`control.integral-limit = 1 %\n${strong}`, 'meadow'), told(strong, 'meadow'));
  });

  it('raise the output as the pack empties: with even thrust the landing pack is as near to swinging as the full one', () => {
    const distance = (text: string, pack: string) =>
      loop(text, 'cruise', 'roll').everywhere.find(({ place }) => place === `in the hover, ${pack}`)
        ?.stability.nearest.distance ?? Number.NaN;
    const even = `power.even-thrust = 100 %\n${sandmartin}`;
    const apart = (text: string) => distance(text, 'pack due to land') - distance(text, 'pack full');
    assert.ok(apart(even) < 0.2 * apart(sandmartin), `${apart(even)} ${apart(sandmartin)}`);
  });

  it('begin where the others end: feedforward softened by its low-pass', () => {
    const forward = 'control.roll.feedforward = 0.002 %/(deg/s^2)\n';
    assert.notDeepEqual(
      told(`${forward}control.feedforward-cutoff = 10 Hz\n${sandmartin}`, 'sprint'),
      told(forward + sandmartin, 'sprint'),
    );
  });

  it('give room where there is little: lift that gives way lets a turn have what the top leaves no room for', () => {
    const short = `derivative.input = error\nderivative.limit = 100 %\n${sandmartin}`;
    assert.notDeepEqual(
      told(`control.when.motors-short.gives-way = lift\n${short}`, 'sprint'),
      told(short, 'sprint'),
    );
  });
});
