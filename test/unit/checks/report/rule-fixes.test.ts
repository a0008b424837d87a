import { strict as assert } from 'node:assert';
import { findingsIn } from '../../../support/findings';
import { mended } from '../../../support/mended';

describe('a control rate that does not divide the gyro rate', () => {
  const cases: readonly [gyro: string, control: string, made: readonly string[]][] = [
    ['8 kHz', '3 kHz', ['4 kHz', '2 kHz']],
    ['8 kHz', '1.5 kHz', ['1.6 kHz', '1 kHz']],
    ['6.4 kHz', '3 kHz', ['3.2 kHz', '1.6 kHz']],
    ['8 kHz', '7 kHz', ['8 kHz', '4 kHz']],
    // 1009 is a prime: beside itself nothing divides it but one hertz, which is no control rate.
    ['1009 Hz', '400 Hz', ['1.009 kHz']],
  ];
  for (const [gyro, control, made] of cases) {
    it(`of ${gyro}, ${control} is brought to a rate in whole hertz`, () => {
      const text = `[gyro]\nrate = ${gyro}\n[control]\nrate = `;
      assert.deepEqual(
        mended(text + control, 'tune/control-rate-uneven'),
        made.map((rate) => text + rate),
      );
    });
  }
});

describe('a cutoff that leaves nothing to cut', () => {
  const script = (cutoff: string) =>
    `[gyro]\nrate = 1 kHz\n[gyro.filter.1]\nkind = first-order\ncutoff = ${cutoff}`;

  it('is brought to the highest that makes sense, and that is enough', () => {
    assert.deepEqual(mended(script('600 Hz'), 'tune/lowpass-above-half-rate'), [script('400 Hz')]);
    assert.deepEqual(mended(script('450 Hz'), 'tune/lowpass-near-half-rate'), [script('400 Hz')]);
    const left = findingsIn(script('400 Hz')).map(({ id }) => id);
    assert.deepEqual(
      left.filter((id) => id.includes('half-rate')),
      [],
    );
  });

  it('is brought there from an included script by a line of its own', () => {
    const files = { 'club.craft': '[gyro.filter.1]\nkind = first-order\ncutoff = 600 Hz\n' };
    const text = 'include "club.craft"\n[gyro]\nrate = 1 kHz\n';
    assert.deepEqual(mended(text, 'tune/lowpass-above-half-rate', files), [
      `${text}filter.1.cutoff = 400 Hz\n`,
    ]);
  });
});

describe('overlay elements over each other', () => {
  const script = (armed: string, cell: string) =>
    `[overlay.armed-time]\nplace = ${armed}\n[overlay.cell-voltage]\nplace = ${cell}`;

  it('are parted by the nearest free place', () => {
    assert.deepEqual(mended(script('[11, 20]', '[11, 22]'), 'see/element-overlap'), [
      script('[11, 20]', '[10, 22]'),
    ]);
    assert.deepEqual(mended(script('[11, 10]', '[11, 15]'), 'see/element-overlap'), [
      script('[11, 10]', '[11, 16]'),
    ]);
  });

  it('are free of each other then', () => {
    const [made = ''] = mended(script('[0, 0]', '[0, 0]'), 'see/element-overlap');
    assert.deepEqual(
      findingsIn(made).filter(({ id }) => id === 'see/element-overlap'),
      [],
    );
  });
});

describe('sentences', () => {
  const message = (text: string, id: string, files = {}) =>
    findingsIn(text, files).find((one) => one.id === id)?.message;

  it('show a converted power without its tail', () => {
    const told = message('[craft]\nname = "x"\n[video]\npower = 23 dBm', 'see/standard-missing');
    assert.match(told ?? '', /with 199\.526 mW,/);
  });

  it('say what the script says of the polarity', () => {
    assert.equal(
      message('[receiver]\nlink = crsf\ninverted = on', 'wire/polarity-unusual'),
      'A line that carries crsf is not inverted as a rule, and `inverted = on` says otherwise.',
    );
  });

  it('speak of no answer where the signal has none', () => {
    const told = message(
      '[control]\nrate = 3 kHz\n[esc]\nsignal = servo-pulse',
      'turn/signal-longer-than-period',
    );
    assert.ok(told !== undefined && !told.includes('answer'), told);
  });

  it('name what is set in an included script, when something else is missing', () => {
    const files = { 'club.craft': '[gyro.filter.1]\nkind = notch\ncentre = 200 Hz\n' };
    const related = findingsIn('include "club.craft"\n[craft]\nname = "x"\n', files)
      .filter(({ id }) => id === 'tune/filter-incomplete')
      .flatMap((one) => one.related.map(({ message: told }) => told));
    assert.deepEqual(related, ['Set here: gyro.filter.1.kind.']);
  });
});
