import { strict as assert } from 'node:assert';
import { refactorsAt } from '../../../server/src/features/refactors/refactors';
import { applied } from '../../support/applied';
import { heldIn } from '../../support/held';
import { snapshotOf } from '../../support/snapshot';

/** What is offered at the cursor `|`, or for what stands between two of them: titles, each with the text after it. */
function offered(marked: string): readonly (readonly [string, string])[] {
  const parts = marked.split('|');
  const text = parts.join('');
  const { snapshot } = snapshotOf(text);
  const texts = { 'main.craft': text };
  const place = (before: string) => {
    const lines = before.split('\n');
    return { line: lines.length - 1, character: lines.at(-1)?.length ?? 0 };
  };
  const start = place(parts[0] ?? '');
  const end = parts.length > 2 ? place(`${parts[0]}${parts[1]}`) : start;
  return refactorsAt(snapshot, { start, end }).map((one): [string, string] => [
    one.title,
    applied(one.edits(), texts)['main.craft'] ?? '',
  ]);
}

const titlesAt = (marked: string) => offered(marked).map(([title]) => title);
const written = (marked: string, title: string | RegExp) =>
  offered(marked).find(([one]) => (typeof title === 'string' ? one === title : title.test(one)))?.[1];

describe('extracting a constant', () => {
  it('names the number under the cursor, above the first line that says anything', () => {
    assert.equal(
      written(
        '# Wren\n[gyro.filter.1]\ncutoff = 9|0 Hz  # quiet\n',
        'Extract a constant: gyro-cutoff = 90 Hz',
      ),
      '# Wren\nlet gyro-cutoff = 90 Hz\n\n[gyro.filter.1]\ncutoff = gyro-cutoff  # quiet\n',
    );
  });

  it('stands behind the constants and includes that are there, with a name that is free', () => {
    assert.equal(
      written('let gyro-cutoff = 9 Hz\r\n[gyro.filter.1]\r\ncutoff = 9|0 Hz\r\n', /^Extract/),
      'let gyro-cutoff = 9 Hz\r\nlet gyro-cutoff-2 = 90 Hz\r\n[gyro.filter.1]\r\ncutoff = gyro-cutoff-2\r\n',
    );
  });

  it('takes just the calculation that is selected, and the sign of a number', () => {
    const text = 'let a = 9 Hz\n[gyro.filter.1]\ncutoff = 2 * |(a + 3 Hz)| + a\n';
    const inner = 'let a = 9 Hz\n[gyro.filter.1]\ncutoff = 2 * (|a + 3 Hz|) + a\n';
    const done = written(inner, /^Extract/) ?? '';
    assert.equal(
      done,
      'let a = 9 Hz\nlet gyro-cutoff = a + 3 Hz\n[gyro.filter.1]\ncutoff = 2 * (gyro-cutoff) + a\n',
    );
    assert.equal(
      heldIn(done, 'gyro.filter.1.cutoff'),
      heldIn(text.replaceAll('|', ''), 'gyro.filter.1.cutoff'),
    );
    assert.deepEqual(titlesAt('[gyro.filter.1]\ncutoff = |2 * 9| Hz\n'), []);
    assert.match(
      written('board.mount-yaw = -9|0 deg\n', /^Extract/) ?? '',
      /^let board-mount-yaw = -90 deg\n/,
    );
  });

  it('puts a part of a constant above it', () => {
    assert.equal(written('let a = 2 * 9|0 Hz\n', /^Extract/), 'let a-part = 90 Hz\nlet a = 2 * a-part\n');
  });

  it('is not offered for a word, a name, an end whose unit serves the other, and what a board writes', () => {
    for (const text of [
      '[gyro.filter.1]\nkind = no|tch\n',
      'let a = 9 Hz\n[gyro.filter.1]\ncutoff = a|\n',
      '[switch.arm]\non = 165|0..2100 us\n',
      '[own]\nrate = 80|00\n',
      'craft.name = "9|0 Hz"\n',
    ])
      assert.deepEqual(
        titlesAt(text).filter((title) => title.startsWith('Extract')),
        [],
        text,
      );
  });
});

describe('writing a number in another unit', () => {
  const others = (marked: string) =>
    titlesAt(marked).flatMap((title) => /^Write it as (.*)$/.exec(title)?.[1] ?? []);

  // By the definitions: an inch is 25.4 mm, a pound 16 oz and 453.59237 g (international yard and pound agreement, 1959).
  it('offers those of its kind that say it exactly', () => {
    assert.deepEqual(others('[gyro.filter.1]\ncutoff = 12|0 Hz\n'), ['0.12 kHz']);
    assert.deepEqual(others('[prop]\ndiameter = 5| in\n'), ['127 mm', '0.127 m', '12.7 cm']);
    assert.deepEqual(others('[craft]\nmass = 2| lb\n'), ['907.18474 g', '0.90718474 kg', '32 oz']);
    // 100 mm are 3.937… in, 25 mW 13.97… dBm.
    assert.deepEqual(others('[prop]\ndiameter = 10|0 mm\n'), ['0.1 m', '10 cm']);
    assert.deepEqual(others('[video]\npower = 2|5 mW\n'), ['0.025 W']);
    assert.deepEqual(others('[video]\npower = 1|00 mW\n'), ['0.1 W', '20 dBm']);
  });

  it('writes the number and its unit and nothing else', () => {
    assert.equal(
      written('[gyro.filter.1]\ncutoff = 2 * 12|0 Hz  # low\n', 'Write it as 0.12 kHz'),
      '[gyro.filter.1]\ncutoff = 2 * 0.12 kHz  # low\n',
    );
    assert.equal(
      written('[switch.arm]\non = 1650..21|00 us\n', 'Write it as 1.65..2.1 ms'),
      '[switch.arm]\non = 1.65..2.1 ms\n',
    );
  });

  it('leaves the value as it was, for every unit that is offered', () => {
    for (const [path, text] of [
      ['gyro.filter.1.cutoff', '[gyro.filter.1]\ncutoff = 13|7.5 Hz\n'],
      ['craft.air-temperature', '[craft]\nair-temperature = 2|0 degC\n'],
      ['motor.resistance', '[motor]\nresistance = 9|7 mohm\n'],
    ] as const) {
      const done = offered(text).filter(([title]) => title.startsWith('Write it as'));
      assert.ok(done.length > 0, path);
      for (const [title, changed] of done) {
        assert.equal(heldIn(changed, path), heldIn(text.replace('|', ''), path), title);
      }
    }
  });

  it('keeps what counts from a zero of its own out of calculations, and differences as they are', () => {
    assert.ok(!others('let rise = 5 K\n[craft]\nair-temperature = 2|0 degC + rise\n').includes('293.15 K'));
    assert.ok(others('[craft]\nair-temperature = 2|0 degC\n').includes('68 degF'));
  });
});

describe('moving a setting under a pack', () => {
  const packs = '[pack.sprint]\ncells = 6\n[pack.cruise]\ncells = 4\n';

  it('opens a section for the pack behind the line’s own', () => {
    assert.deepEqual(
      offered(
        `${packs}[gyro.filter.1]\nkind = butterworth\ncuto|ff = 90 Hz  # quiet\nq = 0.7\n\n[esc]\n`,
      ).map(([title]) => title),
      [
        'Move it to [gyro.filter.1 @ sprint]: for pack sprint alone',
        'Move it to [gyro.filter.1 @ cruise]: for pack cruise alone',
      ],
    );
    const done =
      written(
        `${packs}[gyro.filter.1]\nkind = butterworth\ncuto|ff = 90 Hz  # quiet\nq = 0.7\n\n[esc]\n`,
        /sprint/,
      ) ?? '';
    assert.equal(
      done,
      `${packs}[gyro.filter.1]\nkind = butterworth\nq = 0.7\n\n[gyro.filter.1 @ sprint]\ncutoff = 90 Hz  # quiet\n\n[esc]\n`,
    );
    assert.equal(heldIn(done, 'gyro.filter.1.cutoff', 'sprint'), '90 Hz');
    assert.equal(heldIn(done, 'gyro.filter.1.cutoff', 'cruise'), 'not set');
  });

  it('goes behind what the pack’s section says already', () => {
    const text = `${packs}[gyro.filter.1]\ncut|off = 90 Hz\n[gyro.filter.1 @ cruise]\nq = 0.6\n[esc]\n`;
    assert.equal(
      written(text, /cruise/),
      `${packs}[gyro.filter.1]\n[gyro.filter.1 @ cruise]\nq = 0.6\ncutoff = 90 Hz\n[esc]\n`,
    );
  });

  it('takes the last line of its section, and one that stands in none', () => {
    const last = written(`${packs}[gyro]\nra|te = 8 kHz`, /sprint/) ?? '';
    assert.equal(heldIn(last, 'gyro.rate', 'sprint'), '8 kHz');
    assert.equal(heldIn(last, 'gyro.rate', 'cruise'), 'not set');
    const top = written(`gyro.ra|te = 8 kHz\n${packs}`, /cruise/) ?? '';
    assert.equal(top, `${packs}\n[gyro @ cruise]\nrate = 8 kHz\n`);
    assert.equal(heldIn(top, 'gyro.rate', 'cruise'), '8 kHz');
  });

  it('is not offered for what packs have of their own, what is for one, and without packs', () => {
    for (const text of [
      '[pack.sprint]\nce|lls = 6\n',
      `${packs}[gyro @ sprint]\nra|te = 8 kHz\n`,
      '[gyro]\nra|te = 8 kHz\n',
      `${packs}[own]\nra|te = 8\n`,
      `${packs}[gyro]\nrate = 8 kHz  # ra|te\n`,
    ])
      assert.deepEqual(
        titlesAt(text).filter((title) => title.startsWith('Move')),
        [],
        text,
      );
  });
});
