import { strict as assert } from 'node:assert';
import { craftOf, findingsIn } from '../../support/findings';
import { heldIn, lineFindings } from '../../support/held';

type Files = Readonly<Record<string, string>>;

function found(text: string, files: Files = {}): readonly (readonly string[])[] {
  return lineFindings(text, files).filter(([id]) => id?.startsWith('line/'));
}

const cutoff = (value: string) => `[gyro.filter.1]\ncutoff = ${value}\n`;

describe('an include', () => {
  it('brings in what another script sets', () => {
    const files = { 'club.craft': cutoff('120 Hz') };
    assert.equal(heldIn('include "club.craft"', 'gyro.filter.1.cutoff', null, files), '120 Hz');
  });

  it('brings in constants, packs and includes of its own', () => {
    const files = {
      'parts/club.craft': 'include "low.craft"\nlet twice = 2 * low\n[pack.sprint]\ncells = 6\n',
      'parts/low.craft': 'let low = 60 Hz\n',
    };
    const text = `include "parts/club.craft"\n${cutoff('twice')}`;
    assert.equal(heldIn(text, 'gyro.filter.1.cutoff', null, files), '120 Hz');
    assert.deepEqual(craftOf(text, files).packs(), ['sprint']);
    assert.deepEqual(found(text, files), []);
  });

  it('is overridden by later lines and overrides earlier ones, across files', () => {
    const files = { 'club.craft': cutoff('120 Hz') };
    const value = (text: string) => heldIn(text, 'gyro.filter.1.cutoff', null, files);
    assert.equal(value(`include "club.craft"\n${cutoff('90 Hz')}`), '90 Hz');
    assert.equal(value(`${cutoff('90 Hz')}include "club.craft"\n`), '120 Hz');
    assert.deepEqual(found(`include "club.craft"\n${cutoff('90 Hz')}`, files), []);
  });

  it('takes effect in the order of its lines through several scripts', () => {
    const files = {
      'one.craft': `${cutoff('100 Hz')}include "two.craft"\n`,
      'two.craft': cutoff('110 Hz'),
      'three.craft': cutoff('130 Hz'),
    };
    const value = (text: string) => heldIn(text, 'gyro.filter.1.cutoff', null, files);
    assert.equal(value('include "one.craft"\n'), '110 Hz');
    assert.equal(value('include "one.craft"\ninclude "three.craft"\n'), '130 Hz');
    assert.equal(value('include "three.craft"\ninclude "one.craft"\n'), '110 Hz');
  });

  it('shows where the value comes from and what it overrides', () => {
    const files = { 'club.craft': cutoff('120 Hz') };
    const setting = craftOf(`include "club.craft"\n${cutoff('90 Hz')}`, files).setting(
      'gyro.filter.1.cutoff',
      null,
    );
    assert.equal(setting?.origin.script.uri, 'test:///work/main.craft');
    assert.deepEqual(
      setting?.overridden.map(({ script, line }) => [script.uri, script.lineNumber(line)]),
      [['test:///work/club.craft', 1]],
    );
  });

  it('may come twice by two ways', () => {
    const files = {
      'a.craft': 'include "c.craft"\n',
      'b.craft': 'include "c.craft"\n',
      'c.craft': cutoff('120 Hz'),
    };
    const text = 'include "a.craft"\ninclude "b.craft"\n';
    assert.deepEqual(found(text, files), []);
    assert.equal(heldIn(text, 'gyro.filter.1.cutoff', null, files), '120 Hz');
  });

  it('does not leave its section open for the lines that follow', () => {
    const files = { 'club.craft': cutoff('120 Hz') };
    assert.deepEqual(found('include "club.craft"\ncutoff = 90 Hz\n', files)[0]?.slice(0, 2), [
      'line/unknown-name',
      'cutoff',
    ]);
  });
});

describe('an include that leads nowhere', () => {
  it('is told at its path', () => {
    assert.deepEqual(found('include "nowhere.craft"'), [['line/include-missing', '"nowhere.craft"']]);
  });

  it('goes in no circle', () => {
    const files = { 'a.craft': 'include "b.craft"\n', 'b.craft': 'include "main.craft"\n' };
    const [one, ...others] = findingsIn('# me\ninclude "a.craft"\n', files);
    assert.deepEqual(others, []);
    assert.deepEqual([one?.id, one?.line, one?.marked], ['line/include-circle', 1, '"a.craft"']);
    assert.match(one?.message ?? '', /main\.craft → a\.craft → b\.craft → main\.craft/);
    const itself = findingsIn('# me\ninclude "main.craft"\n');
    assert.deepEqual(
      itself.map(({ id, line }) => [id, line]),
      [['line/include-circle', 1]],
    );
    assert.equal(itself[0]?.message, 'The includes go round in a circle: main.craft → main.craft.');
  });

  it('that goes round among other scripts is told where it leads there, with the place', () => {
    const files = { 'a.craft': 'include "b.craft"\n', 'b.craft': 'include "a.craft"\n' };
    const [one, ...others] = findingsIn('include "a.craft"\n', files);
    assert.deepEqual(others, []);
    assert.equal(one?.id, 'line/include-faulty');
    assert.deepEqual(
      one.related.map(({ uri }) => uri),
      ['test:///work/b.craft'],
    );
  });

  it('is followed no deeper than sixteen scripts', () => {
    const files = Object.fromEntries(
      Array.from({ length: 20 }, (_, index) => [
        `d${index}.craft`,
        `include "d${index + 1}.craft"\nlet x${index} = 1\n`,
      ]),
    );
    const craft = craftOf('include "d0.craft"', files);
    assert.equal(craft.layers().layers.length, 17);
    assert.deepEqual(
      craft.layers().problems.map(({ problem }) => problem.id),
      ['line/include-too-deep'],
    );
  });

  it('is bounded when includes multiply', () => {
    const files = Object.fromEntries(
      Array.from({ length: 12 }, (_, index) => [
        `m${index}.craft`,
        `include "m${index + 1}.craft"\n`.repeat(4),
      ]),
    );
    const { layers } = craftOf('include "m0.craft"', { ...files, 'm12.craft': '' }).layers();
    assert.equal(layers.length, 256);
  });

  it('is refused where 255 come before it: no more are looked for', () => {
    const text = Array.from({ length: 300 }, (_, index) => `include "m${index}.craft"\n`).join('');
    const told = craftOf(text)
      .layers()
      .problems.map(({ problem }) => problem);
    assert.equal(told.filter(({ id }) => id === 'line/include-missing').length, 255);
    assert.equal(told[255]?.values.why, '255 includes come before it, and no more are followed');
    assert.equal(told.length, 300);
  });

  for (const path of [
    '/etc/passwd',
    'file:///etc/passwd',
    'C:/a.craft',
    '\\\\host\\a.craft',
    'a\\b.craft',
    '../../../../up.craft',
    '',
    'a\u0000.craft',
    '\ud83d.craft',
  ]) {
    it(`is refused where it is no relative path within the workspace: ${JSON.stringify(path)}`, () => {
      const line = `include "${path.replaceAll('\\', '\\\\')}"`;
      assert.ok(
        found(line).some(([id]) => id === 'line/include-refused'),
        JSON.stringify(found(line)),
      );
    });
  }
});

describe('an included script that is faulty', () => {
  const files = { 'club.craft': '# fine\n[gyro]\nwobble = 1\nwibble = 2\n' };

  it('is told at its include, with the first of its faults', () => {
    const [one, ...others] = findingsIn('# me\ninclude "club.craft"\n', files);
    assert.deepEqual(others, []);
    assert.equal(one?.id, 'line/include-faulty');
    assert.equal(one?.marked, '"club.craft"');
    assert.equal(
      one?.message,
      'What is included here has lines that must be mended: 2, the first in club.craft.',
    );
    assert.deepEqual(
      one?.related.map(({ uri, line }) => [uri, line]),
      [['test:///work/club.craft', 2]],
    );
  });

  it('is no matter of risks, which its own window shows', () => {
    assert.deepEqual(
      findingsIn('include "club.craft"', { 'club.craft': '[level]\ntilt-limit = 80 deg\n' }),
      [],
    );
  });
});

describe('a setting for one pack', () => {
  const text = `[pack.sprint]\ncells = 6\n[pack.cruise]\ncells = 4\n${cutoff('120 Hz')}[gyro.filter.1 @ cruise]\ncutoff = 90 Hz\n`;

  it('holds with this pack only', () => {
    assert.equal(heldIn(text, 'gyro.filter.1.cutoff', 'cruise'), '90 Hz');
    assert.equal(heldIn(text, 'gyro.filter.1.cutoff', 'sprint'), '120 Hz');
    assert.equal(heldIn(text, 'gyro.filter.1.cutoff', null), '120 Hz');
    assert.deepEqual(found(text), []);
  });

  it('may stand before the one for all, or without it', () => {
    const first = '[pack.a]\n[gyro.filter.1 @ a]\ncutoff = 90 Hz\n';
    assert.equal(heldIn(`${first}${cutoff('120 Hz')}`, 'gyro.filter.1.cutoff', 'a'), '90 Hz');
    assert.equal(heldIn(first, 'gyro.filter.1.cutoff', null), 'not set');
  });

  it('feeds what is calculated from it, pack by pack', () => {
    const twice = `${text}[gyro.filter.2]\ncutoff = 2 * gyro.filter.1.cutoff\n`;
    assert.equal(heldIn(twice, 'gyro.filter.2.cutoff', 'cruise'), '180 Hz');
    assert.equal(heldIn(twice, 'gyro.filter.2.cutoff', 'sprint'), '240 Hz');
  });

  it('names a pack of the craft', () => {
    const wrong = '[craft]\n[pack.sprint]\n[pack.cruise]\n[gyro.filter.1 @ cruse]\ncutoff = 90 Hz\n';
    const [one] = findingsIn(wrong).filter(({ id }) => id === 'line/unknown-pack');
    assert.equal(one?.message, 'No pack of this craft is called cruse. Did you mean cruise?');
    assert.match(one?.advice ?? '', /sprint, cruise/);
    assert.ok(
      found(wrong).some(
        ([id, , mended]) => id === 'line/unknown-pack' && mended === '[gyro.filter.1 @ cruise]',
      ),
    );
  });

  it('may name a pack of the scripts that include it', () => {
    assert.deepEqual(found('[gyro.filter.1 @ cruise]\ncutoff = 90 Hz\n'), []);
  });
});

describe('something set twice in one script', () => {
  it('is told at both places, each pointing at the other; the last one counts (F09)', () => {
    const told = findingsIn('[craft]\nmass = 1 g\nmass = 212 g\n').filter(({ id }) => /^line\/set/.test(id));
    assert.deepEqual(
      told.map(({ id, line, marked, related }) => [id, line, marked, related[0]?.line]),
      [
        ['line/set-again-below', 1, 'mass', 2],
        ['line/set-twice', 2, 'mass', 1],
      ],
    );
    assert.equal(told[1]?.message, 'craft.mass is set already in line 2.');
    assert.equal(heldIn('[craft]\nmass = 1 g\nmass = 212 g\n', 'craft.mass'), '212 g');
  });

  it('is found across sections and ways of writing (F09)', () => {
    const text = 'craft.mass = 212 g\n[craft]\nmass = 214 g\n';
    assert.deepEqual(
      found(text).map(([id, marked]) => [id, marked]),
      [
        ['line/set-again-below', 'craft.mass'],
        ['line/set-twice', 'mass'],
      ],
    );
  });

  it('may be a constant (F09)', () => {
    assert.deepEqual(
      found('let a = 1\nlet a = 2\n').map(([id, marked]) => [id, marked]),
      [
        ['line/set-again-below', 'a'],
        ['line/set-twice', 'a'],
      ],
    );
  });

  it('may be a section, which is only untidy (F09)', () => {
    const told = findingsIn('[gyro]\nrate = 8 kHz\n[esc]\n[gyro]\nmount = foam\n').filter(
      ({ id }) => id === 'line/section-again',
    );
    assert.deepEqual(
      told.map(({ id, level, line, related }) => [id, level, line, related[0]?.line]),
      [['line/section-again', 'tidy', 3, 0]],
    );
  });

  it('is not so where a pack has a section of its own', () => {
    assert.deepEqual(found('[pack.a]\n[gyro]\nrate = 8 kHz\n[gyro @ a]\nrate = 4 kHz\n'), []);
  });

  it('is not so across files (F09)', () => {
    assert.deepEqual(
      found('include "a.craft"\n[gyro]\nrate = 8 kHz\n', { 'a.craft': '[gyro]\nrate = 4 kHz\n' }),
      [],
    );
  });

  it('three times points from each at the first', () => {
    const told = findingsIn('let a = 1\nlet a = 2\nlet a = 3\n');
    assert.deepEqual(
      told.map(({ id, line, related }) => [id, line, related[0]?.line]),
      [
        ['line/set-again-below', 0, 2],
        ['line/set-twice', 1, 0],
        ['line/set-twice', 2, 0],
      ],
    );
  });

  it('tells each line’s own faults once', () => {
    const text = 'let low = 30 Hz\n[level]\ntilt-limit = 100 deg\ntilt-limit = 2 * low\n';
    assert.equal(found(text).filter(([id]) => id === 'line/outside-range').length, 1);
  });
});
