import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { Database, type QueryContext } from '../../../server/src/query/database';
import { Input } from '../../../server/src/query/input';
import { Query } from '../../../server/src/query/query';

/** Cells of numbers that queries read, in whichever variant they are asked. */
class Sheet implements QueryContext {
  readonly computed: string[] = [];

  constructor(
    readonly variant: string | null = null,
    readonly database = new Database(),
    private readonly numbers = new Map<string, number>(),
  ) {}

  /** The same numbers, looked at in another variant. */
  in(variant: string): Sheet {
    return new Sheet(variant, this.database, this.numbers);
  }

  number(name: string): number {
    cells.read(this, name);
    return this.numbers.get(name) ?? 0;
  }

  own(): string | null {
    this.database.readVariant();
    return this.variant;
  }

  /** True if anything depended on it. */
  set(name: string, value: number): boolean {
    this.numbers.set(name, value);
    let isRead = false;
    this.database.change(() => {
      isRead = cells.invalidate(this, name);
    });
    return isRead;
  }
}

const cells = new Input<readonly [name: string]>();

/** A query that counts how often it is computed. */
function counted<K extends readonly string[], V>(name: string, compute: (sheet: Sheet, ...key: K) => V) {
  const computed: string[] = [];
  const query = new Query(name, (sheet: Sheet, ...key: K) => {
    computed.push([sheet.variant ?? '', ...key].join(' ').trim());
    return compute(sheet, ...key);
  });
  return { query, computed };
}

describe('a query', () => {
  it('is computed once for each key, until something that it read changes', () => {
    const { query, computed } = counted('double', (sheet, name: string) => 2 * sheet.number(name));
    const sheet = new Sheet();
    assert.deepEqual([query.get(sheet, 'a'), query.get(sheet, 'a'), query.get(sheet, 'b')], [0, 0, 0]);
    assert.deepEqual(computed, ['a', 'b']);
    assert.equal(sheet.set('a', 3), true);
    assert.deepEqual([query.get(sheet, 'a'), query.get(sheet, 'b')], [6, 0]);
    assert.deepEqual(computed, ['a', 'b', 'a']);
  });

  it('follows a change through other queries, and stops where a value is the same as before', () => {
    const sign = counted('sign', (sheet, name: string) => Math.sign(sheet.number(name)));
    const word = counted('word', (sheet, name: string) => (sign.query.get(sheet, name) > 0 ? 'up' : 'down'));
    const sheet = new Sheet();
    sheet.set('a', 1);
    assert.equal(word.query.get(sheet, 'a'), 'up');
    sheet.set('a', 2);
    assert.equal(word.query.get(sheet, 'a'), 'up');
    assert.deepEqual([sign.computed.length, word.computed.length], [2, 1]);
    sheet.set('a', -1);
    assert.equal(word.query.get(sheet, 'a'), 'down');
    assert.deepEqual([sign.computed.length, word.computed.length], [3, 2]);
  });

  it('keeps the value that it had where a new one is the same by its own measure', () => {
    const list = new Query(
      'list',
      (sheet: Sheet) => [sheet.number('a') > 0],
      ([one], [other]) => one === other,
    );
    const sheet = new Sheet();
    const before = list.get(sheet);
    sheet.set('a', -5);
    assert.equal(list.get(sheet), before);
    sheet.set('a', 5);
    assert.deepEqual(list.get(sheet), [true]);
  });

  it('depends on what it read the last time, not on what it read before', () => {
    const picked = new Query('picked', (sheet: Sheet) => sheet.number(sheet.number('which') > 0 ? 'a' : 'b'));
    const sheet = new Sheet();
    picked.get(sheet);
    sheet.set('which', 1);
    picked.get(sheet);
    assert.deepEqual([sheet.set('b', 4), sheet.set('a', 7)], [false, true]);
    assert.equal(picked.get(sheet), 7);
  });

  it('of which nobody asked again is forgotten with all that only it read', () => {
    const double = new Query('double', (sheet: Sheet, name: string) => 2 * sheet.number(name));
    const sheet = new Sheet();
    double.get(sheet, 'a');
    assert.equal(sheet.set('a', 1), true);
    assert.equal(sheet.set('a', 2), false);
    assert.equal(double.get(sheet, 'a'), 4);
  });

  it('may have nothing as its value, which is kept as well', () => {
    const { query, computed } = counted('nothing', () => undefined);
    const sheet = new Sheet();
    query.get(sheet);
    query.get(sheet);
    assert.equal(computed.length, 1);
  });

  it('refuses to depend on itself, and recovers', () => {
    const loop: Query<Sheet, readonly [], number> = new Query('loop', (sheet: Sheet) =>
      sheet.number('open') > 0 ? 1 : loop.get(sheet) + 1,
    );
    const sheet = new Sheet();
    assert.throws(() => loop.get(sheet), /loop depends on itself/);
    sheet.set('open', 1);
    assert.equal(loop.get(sheet), 1);
  });

  it('that fails does so for each that asks, and whoever lives with it hears when it no longer does', () => {
    const inverse = new Query('inverse', (sheet: Sheet) => {
      const number = sheet.number('a');
      if (number === 0) throw new Error('no inverse');
      return 1 / number;
    });
    const safe = new Query('safe', (sheet: Sheet) => {
      try {
        return inverse.get(sheet);
      } catch {
        return null;
      }
    });
    const sheet = new Sheet();
    assert.throws(() => inverse.get(sheet), /no inverse/);
    assert.equal(safe.get(sheet), null);
    sheet.set('a', 2);
    assert.equal(safe.get(sheet), 0.5);
    sheet.set('a', 0);
    assert.equal(safe.get(sheet), null);
  });

  it('takes any steps for a key (F04)', () => {
    const { query, computed } = counted('any', (_, ...names: readonly string[]) => names.length);
    const sheet = new Sheet();
    const keys = [['__proto__'], ['constructor'], ['a.b'], ['a', 'b'], ['a b'], []];
    for (const key of [...keys, ...keys]) assert.equal(query.get(sheet, ...key), key.length);
    assert.equal(computed.length, keys.length);
  });
});

describe('an input', () => {
  it('that another query has just let go is still one of what reads it', () => {
    const early = new Query('early', (sheet: Sheet) => (sheet.number('which') > 0 ? 0 : sheet.number('a')));
    const late = new Query('late', (sheet: Sheet) => sheet.number('a') + early.get(sheet));
    const sheet = new Sheet();
    early.get(sheet);
    sheet.set('which', 1);
    assert.equal(late.get(sheet), 0);
    sheet.set('a', 3);
    assert.equal(late.get(sheet), 3);
  });

  it('that nothing reads while something is computed says so', () => {
    const sheet = new Sheet();
    sheet.number('a');
    assert.equal(sheet.set('a', 1), false);
  });
});

describe('what is asked in a variant', () => {
  it('is computed once for all of them where none of what it is made of asked which it is', () => {
    const inner = counted('inner', (sheet) => sheet.number('a'));
    const outer = counted('outer', (sheet) => inner.query.get(sheet) + 1);
    const sheet = new Sheet();
    assert.deepEqual([outer.query.get(sheet.in('one')), outer.query.get(sheet.in('two'))], [1, 1]);
    assert.deepEqual([inner.computed, outer.computed], [['one'], ['one']]);
  });

  it('is each variant’s own as soon as it asks, itself or through others, and is shared again after that', () => {
    const inner = counted('inner', (sheet) => (sheet.number('own') > 0 ? sheet.own() : 'all'));
    const outer = counted('outer', (sheet) => `${inner.query.get(sheet)}!`);
    const sheet = new Sheet();
    const ask = () => ['one', 'two', 'one'].map((variant) => outer.query.get(sheet.in(variant)));
    assert.deepEqual(ask(), ['all!', 'all!', 'all!']);
    sheet.set('own', 1);
    assert.deepEqual(ask(), ['one!', 'two!', 'one!']);
    sheet.set('own', 0);
    assert.deepEqual(ask(), ['all!', 'all!', 'all!']);
    sheet.set('own', 2);
    assert.deepEqual(ask(), ['one!', 'two!', 'one!']);
  });

  it('may ask for the same in another variant', () => {
    const first: Query<Sheet, readonly [], string> = new Query('first', (sheet: Sheet) =>
      sheet.variant === 'one' ? `${sheet.own()}` : `${sheet.own()} after ${first.get(sheet.in('one'))}`,
    );
    assert.equal(first.get(new Sheet('two')), 'two after one');
  });
});

describe('queries after any changes', () => {
  it('have the values that computing from scratch would give', () => {
    const step = fc.record({ name: fc.nat(3), value: fc.nat(5), asked: fc.nat(5), variant: fc.nat(2) });
    fc.assert(
      fc.property(fc.array(step, { maxLength: 40 }), (steps) => {
        // Query n reads number n % 4; where that is odd also each query below n, and where it is 5 its variant.
        const value = (sheet: Sheet, n: number, below: (m: number) => string): string => {
          const own = sheet.number(String(n % 4));
          if (own === 5) return `${sheet.own()}`;
          if (own % 2 === 0) return String(own);
          return [own, ...Array.from({ length: n }, (_, m) => below(m))].join();
        };
        const query: Query<Sheet, readonly [number], string> = new Query('n', (sheet: Sheet, n: number) =>
          value(sheet, n, (m) => query.get(sheet, m)),
        );
        const plain = (sheet: Sheet, n: number): string => value(sheet, n, (m) => plain(sheet, m));
        const sheet = new Sheet();
        for (const { name, value: number, asked, variant } of steps) {
          sheet.set(String(name), number);
          const seen = sheet.in(`v${variant}`);
          assert.equal(query.get(seen, asked), plain(seen, asked));
        }
      }),
    );
  });
});
