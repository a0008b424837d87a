import { strict as assert } from 'node:assert';
import { heldIn, lineFindings } from '../../support/held';

const constants = ['let low = 90 Hz', 'let factor = 2', 'let span = 20 ms'];
const before = `${constants.join('\n')}\n`;

const cutoff = (value: string) => `${before}[gyro.filter.1]\ncutoff = ${value}\n`;

describe('a calculation', () => {
  const cases: readonly [string, string][] = [
    ['2 * low', '180 Hz'],
    ['low * factor', '180 Hz'],
    ['low / factor', '45 Hz'],
    ['low + 30 Hz', '120 Hz'],
    ['low - 30 Hz + 10 Hz', '70 Hz'],
    ['2 * (low + 10 Hz) - 0.05 kHz', '150 Hz'],
    ['2 / span', '100 Hz'],
    ['1 / (10 ms - 5 ms)', '200 Hz'],
    ['(2 * 3) * 20 Hz', '120 Hz'],
    ['100 Hz * 50 %', '50 Hz'],
    ['min(low, 120 Hz)', '90 Hz'],
    ['max(low, 0.12 kHz, 100 Hz)', '120 Hz'],
    ['abs(-low)', '90 Hz'],
    ['clamp(low, 100 Hz, 200 Hz)', '100 Hz'],
    ['clamp(low, 10 Hz, 80 Hz)', '80 Hz'],
    ['round(93 Hz, 10 Hz)', '90 Hz'],
    ['round(3.4) * 50 Hz', '150 Hz'],
    ['sqrt(low * 160 Hz)', '120 Hz'],
    ['low + gyro.rate / 80', '190 Hz'],
    ['--low', 'unknown'],
    ['-(-low)', '90 Hz'],
  ];
  for (const [value, result] of cases) {
    it(`${value} comes to ${result}`, () => {
      const text = `${before}[gyro]\nrate = 8 kHz\n[gyro.filter.1]\ncutoff = ${value}\n`;
      assert.equal(heldIn(text, 'gyro.filter.1.cutoff'), result);
    });
  }

  it('stays right through long sums and deep parentheses', () => {
    assert.equal(heldIn(cutoff(`low${' + 0.002 Hz'.repeat(5000)}`), 'gyro.filter.1.cutoff'), '100 Hz');
    const deep = `${'abs('.repeat(16)}low${')'.repeat(16)}`;
    assert.equal(heldIn(cutoff(deep), 'gyro.filter.1.cutoff'), '90 Hz');
  });

  it('may use a parameter that is a count', () => {
    const text = '[pack.a]\ncells = 4\ncapacity = pack.a.cells * 100 mAh';
    assert.equal(heldIn(text, 'pack.a.capacity'), '400 mAh');
  });
});

describe('a calculation that makes no sense', () => {
  const cases: readonly [string, string, string, ...string[]][] = [
    ['low + 5 ms', 'line/unlike-sum', '5 ms'],
    ['low - 5', 'line/unlike-sum', '5', 'cutoff = low - 5 Hz'],
    ['90 Hz + 2 * 90', 'line/unlike-sum', '2 * 90', 'cutoff = 90 Hz + 2 * 90 Hz'],
    ['3 + 1 / 2 + low', 'line/unlike-sum', '3', 'cutoff = 3 Hz + 1 Hz / 2 + low'],
    ['low + factor', 'line/unlike-sum', 'factor', 'cutoff = low + factor * 1 Hz'],
    ['low + 2 * (1 + 1)', 'line/unlike-sum', '2 * (1 + 1)'],
    ['max(5, low)', 'line/unlike-sum', '5', 'cutoff = max(5 Hz, low)'],
    ['min(low, 5 ms)', 'line/unlike-sum', '5 ms'],
    ['low / 0', 'line/divided-by-zero', '0'],
    ['low / (5 ms - 5 ms)', 'line/divided-by-zero', '5 ms - 5 ms'],
    ['low * 20 degC', 'line/temperature-calculated', '20 degC'],
    ['min(20 dBm, 10 dBm)', 'line/unit-in-product', '20 dBm'],
    ['mean(low, low)', 'line/unknown-function', 'mean'],
    ['abs(low, low)', 'line/wrong-arguments', 'abs(low, low)'],
    ['clamp(low, low)', 'line/wrong-arguments', 'clamp(low, low)'],
    ['round(low)', 'line/wrong-arguments', 'round(low)'],
    ['sqrt(-1) * low', 'line/no-finite-value', 'sqrt(-1) * low'],
    ['1e300 * 1e300 * low', 'line/no-finite-value', '1e300 * 1e300 * low'],
    ['2 * lwo', 'line/unknown-constant', 'lwo', 'cutoff = 2 * low'],
    ['2 * quietest', 'line/unknown-constant', 'quietest'],
    ['2 * constructor', 'line/unknown-constant', 'constructor'],
    ['gyro.rate / 8', 'line/reference-not-set', 'gyro.rate'],
    ['gyro.filter.1.kind * 8', 'line/reference-not-set', 'gyro.filter.1.kind'],
    ['2 * span', 'line/wrong-dimension', '2 * span'],
    ['low * low', 'line/wrong-dimension', 'low * low'],
  ];
  for (const [value, id, marked, ...mended] of cases) {
    it(`${value}: ${id} at "${marked}"`, () =>
      assert.deepEqual(
        lineFindings(cutoff(value)).filter(([found]) => found?.startsWith('line/')),
        // A number that can't be calculated with is refused by itself.
        value.includes('1e300')
          ? [
              ['line/number-too-large', '1e300'],
              ['line/number-too-large', '1e300'],
            ]
          : [[id, marked, ...mended]],
      ));
  }

  it('with a word in it says that the word is no number', () => {
    const text = '[gyro.filter.1]\nkind = none\ncutoff = 2 * gyro.filter.1.kind';
    assert.ok(
      lineFindings(text).some(
        ([id, marked]) => id === 'line/not-a-quantity' && marked === 'gyro.filter.1.kind',
      ),
    );
  });

  it('is told once, where it stands: what uses it is silent', () => {
    const text = `let bad = 1 Hz / 0\nlet worse = 2 * bad\n[gyro.filter.1]\ncutoff = worse + bad\n`;
    assert.deepEqual(lineFindings(text), [['line/divided-by-zero', '0']]);
    assert.equal(heldIn(text, 'gyro.filter.1.cutoff'), 'unknown');
  });
});

/** What is told about the lines themselves. */
const ownFindings = (text: string) => lineFindings(text).filter(([id]) => id?.startsWith('line/'));

describe('a calculation with temperatures', () => {
  const warmed = (value: string, more = '') =>
    `let warm = 20 degC\nlet cold = 5 degC\nlet rise = warm - cold\n${more}[craft]\nair-temperature = ${value}\n`;
  const cases: readonly [string, string][] = [
    ['20 degC + 5 K', '25 degC'],
    ['5 K + 20 degC', '25 degC'],
    ['warm - 5 K', '15 degC'],
    ['warm + rise', '35 degC'],
    ['cold + 2 * rise', '35 degC'],
    ['warm - cold + cold', '20 degC'],
    ['68 degF', '20 degC'],
    ['32 degF + 18 K', '18 degC'],
    ['max(warm, cold, 59 degF)', '20 degC'],
    ['clamp(40 degC, cold, warm)', '20 degC'],
  ];
  for (const [value, result] of cases) {
    it(`${value} comes to ${result}`, () => {
      assert.deepEqual(ownFindings(warmed(value)), []);
      assert.equal(heldIn(warmed(value), 'craft.air-temperature'), result);
    });
  }

  const refused: readonly [string, string, string][] = [
    ['1.1 * warm', 'line/temperature-calculated', 'warm'],
    ['warm / 2', 'line/temperature-calculated', 'warm'],
    ['2 * 20 degC', 'line/temperature-calculated', '20 degC'],
    ['-warm', 'line/temperature-calculated', 'warm'],
    ['warm + 5 degC', 'line/temperature-calculated', '5 degC'],
    ['5 K - warm', 'line/temperature-calculated', 'warm'],
    ['abs(warm)', 'line/temperature-calculated', 'warm'],
    ['round(warm, 1 K)', 'line/temperature-calculated', 'warm'],
    ['warm + 5', 'line/unlike-sum', '5'],
  ];
  for (const [value, id, marked] of refused) {
    it(`${value}: ${id} at "${marked}"`, () => assert.deepEqual(ownFindings(warmed(value)), [[id, marked]]));
  }

  it('holds for a temperature that another line sets', () => {
    const text = (value: string) =>
      `[craft]\nair-temperature = 10 degC\n[motor]\ntemperature-limit = ${value}`;
    assert.equal(heldIn(text('craft.air-temperature + 60 K'), 'motor.temperature-limit'), '70 degC');
    assert.deepEqual(ownFindings(text('7 * craft.air-temperature')), [
      ['line/temperature-calculated', 'craft.air-temperature'],
    ]);
  });
});

describe('a number without a unit', () => {
  const idle = (value: string) => `let twentieth = 1 / 20\n[motor]\nidle = ${value}\n`;
  for (const [value, ...fixes] of [
    ['0.055', 'idle = 5.5 %', 'idle = 0.055 %'],
    ['1 / 20', 'idle = 5 %', 'idle = 0.05 %'],
    ['twentieth', 'idle = 5 %', 'idle = 0.05 %'],
    ['max(0.055, twentieth)', 'idle = 5.5 %', 'idle = 0.055 %'],
    ['2 * 3', 'idle = 6 %'],
  ]) {
    it(`is refused as a share however it is calculated: ${value}`, () =>
      assert.deepEqual(ownFindings(idle(value ?? '')), [['line/unit-missing', value, ...fixes]]));
  }

  it('is a share where it is the ratio of two quantities', () => {
    const text = 'let low = 90 Hz\n[motor]\nidle = low / 1.8 kHz\n';
    assert.deepEqual(ownFindings(text), []);
    assert.equal(heldIn(text, 'motor.idle'), '5 %');
  });

  it('gets the unit of its parameter offered, calculated or not', () =>
    assert.deepEqual(ownFindings('[gyro.filter.1]\ncutoff = 2 * 90'), [
      ['line/unit-missing', '2 * 90', 'cutoff = 180 Hz'],
    ]));
});

describe('names that lead back to themselves', () => {
  const circular = (text: string) => lineFindings(text).filter(([id]) => id === 'line/circular');

  it('are told at each place, with the way round', () => {
    assert.deepEqual(circular('let a = 2 * b\nlet b = a\n'), [
      ['line/circular', 'b'],
      ['line/circular', 'a'],
    ]);
    assert.deepEqual(circular('let a = a\n'), [['line/circular', 'a']]);
  });

  it('may be parameters', () => {
    const text =
      '[gyro.filter.1]\ncutoff = gyro.filter.2.cutoff\n[gyro.filter.2]\ncutoff = gyro.filter.1.cutoff';
    assert.equal(circular(text).length, 2);
    assert.equal(heldIn(text, 'gyro.filter.1.cutoff'), 'unknown');
  });

  it('may go through a parameter, a constant and an overlay', () => {
    const text =
      'let a = gyro.filter.1.cutoff\n[pack.sprint]\n[gyro.filter.1]\ncutoff = 90 Hz\n[gyro.filter.1 @ sprint]\ncutoff = 2 * a';
    assert.ok(circular(text).length > 0);
    assert.equal(heldIn(text, 'gyro.filter.1.cutoff', 'sprint'), 'unknown');
  });

  it('may go round with one pack only; with the others there is a value', () => {
    const text =
      '[pack.sprint]\n[pack.cruise]\n[gyro.filter.1]\ncutoff = gyro.filter.2.cutoff\n' +
      '[gyro.filter.2]\ncutoff = 90 Hz\n[gyro.filter.2 @ cruise]\ncutoff = gyro.filter.1.cutoff\n';
    assert.equal(heldIn(text, 'gyro.filter.1.cutoff', 'sprint'), '90 Hz');
    assert.equal(heldIn(text, 'gyro.filter.1.cutoff', 'cruise'), 'unknown');
    assert.equal(circular(text).length, 2);
  });

  it('are told for a pack that nobody has named as well', () => {
    const text = '[craft]\n[gyro.filter.1 @ nowhere]\ncutoff = gyro.filter.1.cutoff + 5 Hz\n';
    assert.deepEqual(circular(text), [['line/circular', 'gyro.filter.1.cutoff']]);
  });

  it('are told in a circle of thousands without exhausting anything', () => {
    const text = Array.from({ length: 3000 }, (_, index) => `let a${index} = a${(index + 1) % 3000}`).join(
      '\n',
    );
    assert.equal(lineFindings(text)[0]?.[0], 'line/names-too-deep');
  });
});

describe('names that lead on and on', () => {
  const chain = (length: number) =>
    ['let a0 = 90 Hz', ...Array.from({ length }, (_, index) => `let a${index + 1} = a${index} + 0 Hz`)].join(
      '\n',
    );

  it('are followed through thirty others', () => {
    assert.equal(heldIn(`${chain(30)}\n[gyro.filter.1]\ncutoff = a30`, 'gyro.filter.1.cutoff'), '90 Hz');
  });

  it('are refused beyond that, whichever is asked for first', () => {
    const text = `${chain(5000)}\n[gyro.filter.1]\ncutoff = a5000`;
    assert.equal(heldIn(text, 'gyro.filter.1.cutoff'), 'unknown');
    const found = lineFindings(text);
    assert.deepEqual(new Set(found.map(([id]) => id)), new Set(['line/names-too-deep']));
    assert.deepEqual(found[0], ['line/names-too-deep', 'a33']);
  });

  it('hold the stack even where each is nested as deep as a line may be', () => {
    const deep = (name: string) => `${'abs('.repeat(16)}${name}${')'.repeat(16)}`;
    const lines = Array.from({ length: 31 }, (_, index) => `let a${index + 1} = ${deep(`a${index}`)}`);
    const text = ['let a0 = 90 Hz', ...lines, '[gyro.filter.1]', 'cutoff = a31'].join('\n');
    assert.equal(heldIn(text, 'gyro.filter.1.cutoff'), '90 Hz');
  });
});

describe('a calculation with levels in decibels', () => {
  const sent = (value: string) =>
    `let low = 14 dBm\nlet high = 20 dBm\n[video]\nreceiver-sensitivity = -90 dBm\npower = ${value}\n`;

  it('is none where a name stands for the whole value', () => {
    assert.deepEqual(ownFindings(sent('high')), []);
    assert.equal(heldIn(sent('high'), 'video.power'), '100 mW');
  });

  const refused: readonly [string, string][] = [
    ['2 * low', 'low'],
    ['high / 2', 'high'],
    ['low + high', 'low'],
    ['low + 25 mW', 'low'],
    ['max(low, high)', 'low'],
    ['-low', 'low'],
    ['25 mW + video.receiver-sensitivity', 'video.receiver-sensitivity'],
  ];
  for (const [value, marked] of refused) {
    it(`is refused: ${value}`, () =>
      assert.deepEqual(ownFindings(sent(value)), [['line/unit-in-product', marked]]));
  }

  it('is one of powers where they are in watts', () => {
    assert.equal(heldIn('let low = 25 mW\n[video]\npower = 2 * low\n', 'video.power'), '50 mW');
  });
});
