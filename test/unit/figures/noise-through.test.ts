import assert from 'node:assert/strict';
import { adviceOf } from '../../../server/src/checks/report/render';
import { CraftView } from '../../../server/src/craft/view';
import { figureOf } from '../../../server/src/figures';
import { noiseThrough } from '../../../server/src/figures/noise-through';
import { noiseSentences, noiseWords } from '../../../server/src/figures/noise-words';
import { learnedPart } from '../../../server/src/sheet/learned';
import { craftOf, findingsOf } from '../../support/findings';
import { near } from '../../support/near';
import { wholeCraft } from '../../support/whole-craft';

/** The whole craft with these lines in place of those that set the same, and of all of the filters. */
function viewOf(filters: readonly string[], without: readonly string[] = []): CraftView {
  const lines = wholeCraft.filter(
    (line) => !/^(gyro|derivative)\.filter\./.test(line) && !without.some((path) => line.startsWith(path)),
  );
  return new CraftView(craftOf([...lines, ...filters].join('\n')), 'one');
}

const cutoffs = (gyro: number, derivative: number) => [
  'gyro.filter.1.kind = first-order',
  `gyro.filter.1.cutoff = ${gyro} Hz`,
  'derivative.filter.1.kind = butterworth',
  `derivative.filter.1.cutoff = ${derivative} Hz`,
];

const through = (view: CraftView) => noiseThrough(view) ?? assert.fail('nothing told');
const likely = (view: CraftView, id: string) => figureOf(view, id)?.likely ?? assert.fail(`no ${id}`);

const hot = ['flight.noon.motor-temperature = 84 degC', 'flight.cool.motor-temperature = 50 degC'];

describe('motors that came down hot', () => {
  const lines = [
    ...wholeCraft.filter((line) => !/^(gyro|derivative)\.filter\./.test(line)),
    ...cutoffs(150, 120),
  ];
  const craft = craftOf([...lines, ...hot].join('\n'));

  it('lead in the advice to the craft’s own filters, with figures at their lines', () => {
    const found = findingsOf(craft).find(({ check }) => check.id === 'remember/motors-too-hot');
    assert.ok(found);
    const advice = adviceOf(found);
    const words = noiseSentences(noiseWords(new CraftView(craft, 'one')).words);
    assert.ok(words.length >= 4);
    for (const sentence of words) assert.ok(advice.includes(sentence), sentence);
    const lines = found.related.map(({ place }) => place.line.text);
    assert.deepEqual(lines, ['gyro.filter.1.cutoff = 150 Hz', 'derivative.filter.1.cutoff = 120 Hz']);
  });

  it('are told of on the sheet beside their flight, and no others', () => {
    const { flights } = learnedPart(new CraftView(craft, 'one'));
    const of = (name: string) => flights.find((flight) => flight.name === name)?.heat ?? assert.fail(name);
    assert.match(
      of('noon').join(' '),
      /^The motors came down too hot\. In the hover .* gyro\.filter\.1\.cutoff = \d+ Hz would/,
    );
    assert.deepEqual(of('cool'), []);
  });
});

describe('what the craft’s own filters let through of the motors’ noise', () => {
  const view = viewOf(cutoffs(150, 120));

  it('is by each filter what a first-order and a Butterworth low-pass leave (any textbook on filters)', () => {
    const { tone, filters } = through(view);
    near(tone, likely(view, 'hover-tone'), 1e-9);
    const [gyro, derivative] = filters.map((one) => one.through);
    // A motor strays by two hundredths to either side: the slower is the louder.
    const heard = 0.98 * tone;
    near(gyro ?? 0, 1 / Math.hypot(1, heard / 150), 0.02);
    near(derivative ?? 0, 1 / Math.hypot(1, (heard / 120) ** 2), 0.02);
  });

  it('is what reaches the motors, as the figure of the loudest axis has it', () => {
    const { left } = through(view);
    assert.ok(left.axis !== null);
    near(left.amount, likely(view, `${left.axis}-noise-gain`), 1e-9);
    for (const axis of ['roll', 'pitch', 'yaw'])
      assert.ok(left.amount >= likely(view, `${axis}-noise-gain`) - 1e-12, axis);
  });

  it('is, with a proposed cutoff really written, what was told of it: noise, delay and phase', () => {
    const { changes, left } = through(view);
    assert.deepEqual(
      changes.map(({ stage }) => stage.chain),
      ['gyro', 'derivative'],
    );
    for (const { stage, to, ...told } of changes) {
      const isGyro = stage.chain === 'gyro';
      const written = (cutoff: number) => viewOf(isGyro ? cutoffs(cutoff, 120) : cutoffs(150, cutoff));
      const id = `${left.axis}-noise-gain`;
      near(told.left, likely(written(to), id), 1e-9);
      assert.ok(told.left <= left.amount * Math.SQRT1_2, 'half the heat is 0.707 of the current');
      assert.ok(likely(written(to + 1), id) > left.amount * Math.SQRT1_2, 'no higher cutoff does it');
      const delay = `${stage.chain}-filter-delay`;
      near(1e3 * told.delay, likely(written(to), delay) - likely(view, delay), 1e-6);
      const margin = `${left.axis}-phase-margin`;
      const lost = likely(view, margin) - likely(written(to), margin);
      // The crossover moves a little with it.
      assert.ok(Math.abs(((told.phase ?? 0) * 180) / Math.PI - lost) < 1.5, `${told.phase} rad, ${lost} deg`);
    }
  });

  it('is told by the gyro’s filters alone where gains are not known', () => {
    const bare = viewOf(cutoffs(150, 120), ['control.roll', 'control.pitch', 'control.yaw']);
    const { left, changes } = through(bare);
    assert.equal(left.axis, null);
    near(left.amount, 10 ** (likely(bare, 'hover-tone-left') / 20), 1e-9);
    assert.deepEqual(
      changes.map(({ stage, phase }) => [stage.path, phase]),
      [['gyro.filter.1', null]],
    );
  });

  it('proposes no cutoff for filters that have none, nor one that would lie where pilots steer', () => {
    const notch = [
      'gyro.filter.1.kind = notch',
      'gyro.filter.1.centre = 220 Hz',
      'gyro.filter.1.width = 40 Hz',
    ];
    const all = [...notch, 'derivative.filter.1.kind = butterworth', 'derivative.filter.1.cutoff = 32 Hz'];
    assert.deepEqual(through(viewOf(all)).changes, []);
    assert.match(
      noiseWords(viewOf(all)).words.gyro,
      /gyro\.filter\.1\.width = 40 Hz lets [\d.]+ % of it through/,
    );
  });

  it('is told in words with the settings and their cutoffs', () => {
    const text = noiseSentences(noiseWords(view).words).join(' ');
    assert.match(
      text,
      /a motor hums at about [\d.]+ Hz: gyro\.filter\.1\.cutoff = 150 Hz lets [\d.]+ % of it through\./,
    );
    assert.match(
      text,
      /For each deg\/s of that hum at the gyro the gains of \w+ move the motors by [\d.]+ %\./,
    );
    assert.match(
      text,
      /gyro\.filter\.1\.cutoff = \d+ Hz would leave [\d.]+ %, half the heat of this noise, for [\d.]+ ms more delay and about [\d.]+ deg of \w+’s phase margin\./,
    );
  });

  it('asks for what is missing where it can not be told', () => {
    assert.equal(
      noiseWords(viewOf(cutoffs(150, 120), ['prop.pitch'])).words.asks,
      'How much the filters let through is told once the script has prop.pitch.',
    );
  });
});
