import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { Cells } from '../../../server/src/craft/cells';

/** Cells over an input that can be changed, with a record of what was computed. */
function bench() {
  const cells = new Cells();
  const inputs = new Map([
    ['a', 1],
    ['b', 10],
  ]);
  const computed: string[] = [];
  const input = (key: string): number => {
    cells.read(key);
    return inputs.get(key) ?? 0;
  };
  const cell = (key: string, compute: () => number): number =>
    cells.get(key, () => {
      computed.push(key);
      return compute();
    });
  const double = () => cell('double a', () => 2 * input('a'));
  const sum = () => cell('sum', () => double() + input('b'));
  const set = (key: string, value: number) => {
    inputs.set(key, value);
    return cells.changed([key]);
  };
  return { cells, computed, double, sum, set };
}

describe('computed answers', () => {
  it('are kept until something that they read changes', () => {
    const { sum, computed } = bench();
    assert.equal(sum(), 12);
    assert.equal(sum(), 12);
    assert.deepEqual(computed, ['sum', 'double a']);
  });

  it('are computed again after a change, and only those that it concerns', () => {
    const { sum, set, computed } = bench();
    sum();
    assert.deepEqual([...set('b', 20)], ['sum']);
    computed.length = 0;
    assert.equal(sum(), 22);
    assert.deepEqual(computed, ['sum']);
  });

  it('follow a change through other answers', () => {
    const { sum, set, computed } = bench();
    sum();
    assert.deepEqual([...set('a', 5)].sort(), ['double a', 'sum']);
    computed.length = 0;
    assert.equal(sum(), 20);
    assert.deepEqual(computed, ['sum', 'double a']);
  });

  it('depend on what was read the last time, not on what was read before', () => {
    const cells = new Cells();
    let useOther = false;
    const value = () =>
      cells.get('value', () => {
        cells.read('switch');
        cells.read(useOther ? 'other' : 'one');
        return useOther;
      });
    value();
    useOther = true;
    cells.changed(['switch']);
    value();
    assert.equal(cells.changed(['one']).size, 0);
    assert.equal(cells.changed(['other']).size, 1);
  });

  it('change nothing where nobody looked', () => {
    const { set } = bench();
    assert.equal(set('a', 2).size, 0);
  });

  it('refuse to depend on themselves, and recover', () => {
    const cells = new Cells();
    const loop = (): number => cells.get('loop', () => loop() + 1);
    assert.throws(loop, /depends on itself/);
    assert.equal(
      cells.get('loop', () => 1),
      1,
    );
  });

  it('keep nothing of a computation that failed', () => {
    const cells = new Cells();
    const fail = () =>
      cells.get('x', () => {
        throw new Error('no');
      });
    assert.throws(fail, /no/);
    assert.equal(
      cells.get('x', () => 2),
      2,
    );
  });

  it('that go with an input are computed again when it changes, and so is what read them', () => {
    const cells = new Cells();
    let held = 1;
    const own = () =>
      cells.getOf('a', () => {
        cells.read('a');
        return held;
      });
    const next = () => cells.get('next', () => own() + 1);
    assert.deepEqual([own(), next()], [1, 2]);
    held = 5;
    assert.deepEqual([own(), next()], [1, 2]);
    assert.deepEqual([...cells.changed(['a'])].sort(), ['a', 'next']);
    assert.deepEqual([next(), own()], [6, 5]);
  });

  it('that did not read which pack is in view are computed once for all packs', () => {
    const cells = new Cells();
    const asked: string[] = [];
    const answer = (pack: string) =>
      cells.getWith(pack, 'figure', 'mass', () => {
        asked.push(pack);
        cells.read('mass');
        return 'heavy';
      });
    assert.deepEqual([answer('sprint'), answer('cruise')], ['heavy', 'heavy']);
    assert.deepEqual(asked, ['sprint']);
    assert.deepEqual([...cells.changed(['mass'])], ['mass']);
    answer('cruise');
    assert.deepEqual(asked, ['sprint', 'cruise']);
  });

  it('that read it, themselves or through others, are computed for each pack', () => {
    const cells = new Cells();
    let isOwn = true;
    const inner = (pack: string) =>
      cells.getWith(pack, 'inner', 'x', () => {
        cells.read('switch');
        if (!isOwn) return 'all';
        cells.readPack();
        return pack;
      });
    const outer = (pack: string) => cells.getWith(pack, 'outer', 'x', () => `${inner(pack)}!`);
    const ask = () => [outer('sprint'), outer('cruise'), outer('sprint')];
    assert.deepEqual(ask(), ['sprint!', 'cruise!', 'sprint!']);
    isOwn = false;
    cells.changed(['switch']);
    assert.deepEqual(ask(), ['all!', 'all!', 'all!']);
    isOwn = true;
    cells.changed(['switch']);
    assert.deepEqual(ask(), ['sprint!', 'cruise!', 'sprint!']);
  });

  it('with a pack in view refuse to depend on themselves, and recover', () => {
    const cells = new Cells();
    const loop = (): number => cells.getWith('sprint', 'loop', 'x', () => loop() + 1);
    assert.throws(loop, /depends on itself/);
    assert.equal(
      cells.getWith('sprint', 'loop', 'x', () => 1),
      1,
    );
  });

  it('with very many readers lose them one by one', () => {
    const cells = new Cells();
    const count = 200;
    const sum = (n: number) =>
      cells.get(`sum ${n}`, () => {
        cells.read('all');
        cells.read(`own ${n}`);
        return n;
      });
    const ask = () => Array.from({ length: count }, (_, n) => sum(n));
    ask();
    for (let n = 0; n < count; n += 2) assert.deepEqual([...cells.changed([`own ${n}`])], [`sum ${n}`]);
    assert.equal(cells.changed(['all']).size, count / 2);
    ask();
    assert.equal(cells.changed(['all']).size, count);
  });

  it('may be nothing at all, which is kept as well', () => {
    const cells = new Cells();
    let times = 0;
    const nothing = () =>
      cells.get('x', () => {
        times += 1;
        return undefined;
      });
    nothing();
    nothing();
    assert.equal(times, 1);
  });

  it('are always those that computing from scratch would give', () => {
    const step = fc.record({ input: fc.nat(3), value: fc.nat(5), asked: fc.nat(5) });
    fc.assert(
      fc.property(fc.array(step, { maxLength: 40 }), (steps) => {
        const inputs = [0, 0, 0, 0];
        const cells = new Cells();
        // Cell n reads input n % 4 and, where that is odd, every cell below n.
        const value = (n: number, get: (key: number) => number, read: (key: number) => number): number => {
          const own = read(n % 4);
          if (own % 2 === 0) return own;
          return Array.from({ length: n }, (_, below) => get(below)).reduce((sum, one) => sum + one, own);
        };
        const plain = (n: number): number => value(n, plain, (key) => inputs[key] ?? 0);
        const kept = (n: number): number =>
          cells.get(`cell ${n}`, () =>
            value(n, kept, (key) => {
              cells.read(`input ${key}`);
              return inputs[key] ?? 0;
            }),
          );
        for (const { input, value: newValue, asked } of steps) {
          inputs[input] = newValue;
          cells.changed([`input ${input}`]);
          assert.equal(kept(asked), plain(asked));
        }
      }),
    );
  });
});
