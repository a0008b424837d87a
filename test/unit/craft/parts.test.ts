import { strict as assert } from 'node:assert';
import { followNames } from '../../../server/src/craft/follow-names';
import { fileName, resolveInclude } from '../../../server/src/craft/include-path';
import { inputKeys, keysOf, subjectOf } from '../../../server/src/craft/keys';
import { LineIndex } from '../../../server/src/craft/line-index';
import { membershipsIn } from '../../../server/src/craft/memberships';
import { hasReferences, referencesIn } from '../../../server/src/craft/references';
import { textLiteral } from '../../../server/src/craft/value-text';
import { Document } from '../../../server/src/language/document';
import type { ScriptLine } from '../../../server/src/language/script-line';
import { testCatalog } from '../../support/catalog';
import { statementOf } from '../../support/lines';

function lineOf(text: string, number: number): ScriptLine {
  return Document.of(text).lineAt(number) ?? assert.fail(`no line ${number}`);
}

describe('where an include leads', () => {
  const from = 'file:///work/craft/main.craft';
  const cases: readonly [string, string | null][] = [
    ['club.craft', 'file:///work/craft/club.craft'],
    ['./club.craft', 'file:///work/craft/club.craft'],
    ['parts//club.craft', 'file:///work/craft/parts/club.craft'],
    ['../club.craft', 'file:///work/club.craft'],
    ['../../club.craft', 'file:///club.craft'],
    ['../../../club.craft', null],
    ['my habits (1).craft', 'file:///work/craft/my%20habits%20(1).craft'],
    ['\u00fcber.craft', 'file:///work/craft/%C3%BCber.craft'],
    ['100%.craft', 'file:///work/craft/100%25.craft'],
    ['a#b?.craft', 'file:///work/craft/a%23b%3F.craft'],
    ['/club.craft', null],
    ['\\club.craft', null],
    ['a\\b.craft', null],
    ['c:club.craft', null],
    ['https://example.org/a.craft', null],
    ['\ud83d.craft', null],
    ['', null],
  ];
  for (const [path, uri] of cases) {
    it(`${JSON.stringify(path)} leads to ${uri ?? 'nothing'}`, () =>
      assert.equal(resolveInclude(from, path), uri));
  }

  it('is beside a script of a file system that has no host', () => {
    assert.equal(
      resolveInclude('shelf:/work/a.craft', 'parts/my club.craft'),
      'shelf:/work/parts/my%20club.craft',
    );
    assert.equal(resolveInclude('shelf:/work/a.craft', '../../b.craft'), null);
  });

  it('is nowhere from a script that lies in no folder', () => {
    assert.equal(resolveInclude('untitled:Untitled-1', 'club.craft'), null);
  });

  it('is told by the name of the file', () => {
    assert.equal(fileName('file:///work/my%20habits.craft'), 'my habits.craft');
    assert.equal(fileName('file:///work/100%.craft'), '100%.craft');
    assert.equal(fileName('bare'), 'bare');
  });
});

describe('what a line is about', () => {
  const text =
    'let a = 1\ninclude "b.craft"\n[gyro @ p]\nrate = 1 kHz # accept a/b: why\n[5]\nx = 1\n# accept a/b: why\n[esc]';
  const cases: readonly [number, readonly string[], string | null][] = [
    [0, ['let a'], null],
    [1, ['include'], null],
    [2, ['section gyro @ p', 'overlay'], 'gyro'],
    [3, ['set gyro.rate @ p', 'accept'], 'gyro.rate'],
    [4, [], null],
    [5, [], null],
    [6, ['accept'], null],
    [7, ['section esc'], 'esc'],
    [8, [], null],
  ];
  for (const [number, keys, subject] of cases) {
    it(`line ${number}: ${keys.join(', ') || 'nothing'}`, () => {
      const line = lineOf(`${text}\n`, number);
      assert.deepEqual(keysOf(line), keys);
      assert.equal(subjectOf(line), subject);
    });
  }

  it('keeps names apart that are spelt alike', () => {
    const all = [
      inputKeys.setting('a'),
      inputKeys.setting('a', 'p'),
      inputKeys.constant('a'),
      inputKeys.section('a'),
      inputKeys.section('a', 'p'),
      inputKeys.members('a'),
      inputKeys.group('a'),
      inputKeys.include,
      inputKeys.acceptance,
      inputKeys.repeated,
      inputKeys.overlay,
    ];
    assert.equal(new Set(all).size, all.length);
    assert.equal(inputKeys.nameIn(inputKeys.setting('gyro.rate')), 'gyro.rate');
    assert.equal(inputKeys.nameIn(inputKeys.constant('quiet')), 'quiet');
  });
});

describe('an index of lines', () => {
  const [one, two, three] = [...Document.of('a = 1\na = 2\na = 3').lines()];

  it('knows one line and many, and forgets them again', () => {
    assert.ok(one && two && three);
    const index = new LineIndex();
    assert.deepEqual(index.get('k'), []);
    for (const line of [one, two, three]) index.add('k', line);
    assert.deepEqual(index.get('k'), [one, two, three]);
    assert.ok(index.isRepeated('k'));
    index.remove('k', two);
    assert.deepEqual(index.get('k'), [one, three]);
    index.remove('k', one);
    assert.ok(!index.isRepeated('k'));
    assert.deepEqual(index.get('k'), [three]);
    index.remove('k', three);
    assert.ok(!index.has('k'));
    assert.deepEqual([...index.keys()], []);
  });

  it('tells keys apart by all that stands in them, and gives them back whole', () => {
    assert.ok(one && two && three);
    const index = new LineIndex();
    const keys = [
      'set flight.day-1.motor-temperature',
      'set flight.day-2.motor-temperature',
      'set flight',
      'let a',
    ];
    for (const key of keys) index.add(key, one);
    index.add('set flight.day-1.wind', two);
    assert.deepEqual([...index.keys()].sort(), [...keys, 'set flight.day-1.wind'].sort());
    assert.deepEqual(index.get('set flight.day-1.wind'), [two]);
    assert.ok(!index.has('set flight.day-1'));
    assert.ok(!index.has('set flight.day-2.wind'));
    index.remove('set flight.day-2.motor-temperature', one);
    assert.ok(!index.has('set flight.day-2.motor-temperature'));
    assert.deepEqual(index.get('set flight.day-1.motor-temperature'), [one]);
  });

  it('holds more last words than it remembers to share', () => {
    assert.ok(one);
    const index = new LineIndex();
    for (let at = 0; at < 10_000; at += 1) index.add(`section flight.day-${at}`, one);
    assert.equal([...index.keys()].length, 10_000);
    assert.deepEqual(index.get('section flight.day-4321'), [one]);
  });

  it('is not troubled by a line that it does not have', () => {
    assert.ok(one && two);
    const index = new LineIndex();
    index.remove('k', one);
    index.add('k', one);
    index.remove('k', two);
    assert.deepEqual(index.get('k'), [one]);
  });

  it('takes any name for a key (F04)', () => {
    assert.ok(one);
    const index = new LineIndex();
    assert.deepEqual(index.get('__proto__'), []);
    index.add('__proto__', one);
    assert.deepEqual(index.get('__proto__'), [one]);
  });
});

describe('members of collections that a path names', () => {
  const cases: readonly [string, readonly string[]][] = [
    ['pack.sprint.cells', ['pack sprint']],
    ['pack.sprint', ['pack sprint']],
    ['gyro.notch.2.centre', ['gyro.notch 2']],
    ['switch.arm.on', ['switch arm']],
    ['craft.mass', []],
    ['pack', []],
    ['', []],
  ];
  for (const [path, members] of cases) {
    it(`"${path}" names ${members.join(', ') || 'none'}`, () =>
      assert.deepEqual(
        membershipsIn(path, testCatalog).map(({ collection, member }) => `${collection} ${member}`),
        members,
      ));
  }

  it('are not sought through thousands of words (F06)', () => {
    assert.deepEqual(membershipsIn('a.'.repeat(100_000), testCatalog), []);
  });
});

describe('names in a value', () => {
  const cases: readonly [string, readonly string[]][] = [
    ['90 Hz', []],
    ['quiet', ['quiet']],
    ['2 * quiet + gyro.rate / -low', ['quiet', 'gyro.rate', 'low']],
    ['min(a, max(b, 2))', ['a', 'b']],
    ['a..b', ['a', 'b']],
    ['[a, "b", c]', ['a', 'c']],
    ['a -> b, c -> 2', ['a', 'b', 'c']],
    ['"a"', []],
    ['2026-05-14', []],
  ];
  for (const [value, names] of cases) {
    it(`${value} has ${names.join(', ') || 'none'}`, () => {
      const node = statementOf(`x = ${value}`, 'setting').value;
      assert.deepEqual(
        [...referencesIn(node)].map(({ path }) => path.text),
        names,
      );
      assert.equal(hasReferences(node), names.length > 0);
    });
  }

  it('are none where there is no value', () => assert.ok(!hasReferences(null)));
});

describe('what lies behind a name', () => {
  const graph = (links: Readonly<Record<string, readonly string[]>>) => (key: string) => links[key] ?? [];

  it('comes to an end in most crafts', () => {
    assert.deepEqual(followNames('a', graph({ a: ['b', 'c'], b: ['c'] })), { kind: 'fine' });
  });

  it('is a circle, told by its shortest way', () => {
    const links = graph({ a: ['b', 'd'], b: ['c'], c: ['a'], d: ['a'] });
    assert.deepEqual(followNames('a', links), { kind: 'circle', through: ['a', 'd', 'a'] });
    assert.deepEqual(followNames('z', graph({ z: ['z'] })), { kind: 'circle', through: ['z', 'z'] });
  });

  it('is no circle for one that only leads into it', () => {
    assert.deepEqual(followNames('x', graph({ x: ['a'], a: ['b'], b: ['a'] })), { kind: 'fine' });
  });

  it('may be broad, and must not be deep', () => {
    const broad = graph({ a: Array.from({ length: 5000 }, (_, index) => `b${index}`) });
    assert.deepEqual(followNames('a', broad), { kind: 'fine' });
    const deep = (key: string) => [String(Number(key) + 1)];
    assert.deepEqual(followNames('0', deep), { kind: 'too-deep' });
    const until = (end: number) => (key: string) => (Number(key) < end ? deep(key) : []);
    assert.deepEqual(followNames('0', until(32)), { kind: 'fine' });
    assert.deepEqual(followNames('0', until(33)), { kind: 'too-deep' });
  });

  it('is as deep whichever branch is looked at first', () => {
    const ladder = (key: string): readonly string[] => {
      const at = Number(key);
      return at < 40 ? [String(at + 1), String(at + 2)] : [];
    };
    const turned = (key: string) => [...ladder(key)].reverse();
    assert.deepEqual(followNames('0', ladder), { kind: 'too-deep' });
    assert.deepEqual(followNames('0', turned), { kind: 'too-deep' });
  });
});

describe('a text as a script writes it', () => {
  it('has what would end it escaped', () => {
    assert.equal(textLiteral(String.raw`a "b" \ c`), String.raw`"a \"b\" \\ c"`);
    const { value } = statementOf(`x = ${textLiteral('"\\"')}`, 'setting');
    assert.equal(value?.kind === 'text' && value.value, '"\\"');
  });
});
