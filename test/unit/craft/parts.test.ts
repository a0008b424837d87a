import { strict as assert } from 'node:assert';
import { followNames } from '../../../server/src/craft/follow-names';
import { fileName, resolveInclude } from '../../../server/src/craft/include-path';
import { inputKeys, pathOfLine, subjectsOf } from '../../../server/src/craft/keys';
import { LineIndex } from '../../../server/src/craft/line-index';
import { membershipsIn } from '../../../server/src/craft/memberships';
import { Document } from '../../../server/src/language/document';
import { quoted } from '../../../server/src/language/quoted-text';
import type { ScriptLine } from '../../../server/src/language/script-line';
import { hasReferences, referencesIn } from '../../../server/src/language/value-nodes';
import { testCatalog } from '../../support/catalog';
import { statementOf } from '../../support/lines';
import { spelled } from '../../support/spelled-keys';

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
    [0, ['constant a'], null],
    [1, ['include'], null],
    [2, ['section p gyro', 'overlay'], 'gyro'],
    [3, ['setting p gyro.rate', 'acceptance'], 'gyro.rate'],
    [4, [], null],
    [5, [], null],
    [6, ['acceptance'], null],
    [7, ['section esc'], 'esc'],
    [8, [], null],
  ];
  for (const [number, keys, subject] of cases) {
    it(`line ${number}: ${keys.join(', ') || 'nothing'}`, () => {
      const line = lineOf(`${text}\n`, number);
      assert.deepEqual(spelled(subjectsOf(line)), keys);
      assert.equal(pathOfLine(line), subject);
    });
  }

  it('has steps, so that names may hold any characters', () => {
    assert.deepEqual(inputKeys.setting('gyro.rate', 'p'), ['setting', 'p', 'gyro.rate']);
    assert.notDeepEqual(inputKeys.setting('a'), inputKeys.section('a'));
  });
});

describe('an index of lines', () => {
  const key = inputKeys.setting('a');
  const [one, two, three] = [...Document.of('a = 1\na = 2\na = 3').lines()];

  it('knows one line and many, and forgets them again', () => {
    assert.ok(one && two && three);
    const index = new LineIndex();
    assert.deepEqual(index.get(key), []);
    for (const line of [one, two, three]) index.add(key, line);
    assert.deepEqual(index.get(key), [one, two, three]);
    assert.ok(index.isRepeated(key));
    index.remove(key, two);
    assert.deepEqual(index.get(key), [one, three]);
    index.remove(key, one);
    assert.ok(!index.isRepeated(key));
    assert.deepEqual(index.get(key), [three]);
    index.remove(key, three);
    assert.ok(!index.has(key));
  });

  it('tells subjects apart by all their steps', () => {
    assert.ok(one && two);
    const index = new LineIndex();
    const subjects = ['flight.day-1.wind', 'flight.day-2.wind', 'flight'].map((path) =>
      inputKeys.setting(path),
    );
    for (const subject of [...subjects, inputKeys.constant('flight')]) index.add(subject, one);
    index.add(inputKeys.setting('flight.day-1.pack'), two);
    assert.deepEqual(index.get(inputKeys.setting('flight.day-1.pack')), [two]);
    assert.ok(!index.has(inputKeys.setting('flight.day-1')));
    assert.ok(!index.has(inputKeys.setting('flight', 'day-1')));
    index.remove(inputKeys.setting('flight.day-2.wind'), one);
    assert.ok(!index.has(inputKeys.setting('flight.day-2.wind')));
    assert.deepEqual(index.get(inputKeys.setting('flight.day-1.wind')), [one]);
  });

  it('is not troubled by a line that it does not have', () => {
    assert.ok(one && two);
    const index = new LineIndex();
    index.remove(key, one);
    index.add(key, one);
    index.remove(key, two);
    assert.deepEqual(index.get(key), [one]);
  });

  it('takes any name for a step (F04)', () => {
    assert.ok(one);
    const proto = inputKeys.constant('__proto__');
    const index = new LineIndex();
    assert.deepEqual(index.get(proto), []);
    index.add(proto, one);
    assert.deepEqual(index.get(proto), [one]);
  });
});

describe('members of collections that a path names', () => {
  const cases: readonly [string, readonly string[]][] = [
    ['pack.sprint.cells', ['pack sprint']],
    ['pack.sprint', ['pack sprint']],
    ['gyro.filter.2.centre', ['gyro.filter 2']],
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
    assert.equal(quoted(String.raw`a "b" \ c`), String.raw`"a \"b\" \\ c"`);
    const { value } = statementOf(`x = ${quoted('"\\"')}`, 'setting');
    assert.equal(value?.kind === 'text' && value.value, '"\\"');
  });
});
