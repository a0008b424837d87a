import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { perItem } from '../../../server/src/checks/per-item';
import { Cells } from '../../../server/src/craft/cells';

/** A list that may change, what was asked of its items, and how often. */
class Log {
  readonly cells = new Cells();
  readonly asked: string[] = [];
  private values: number[];

  constructor(count: number) {
    this.values = Array.from({ length: count }, (_, index) => index);
  }

  answers(): readonly string[] {
    const items = () => this.cells.get('items', () => this.read('list').map((_, index) => index));
    return perItem(this.cells, 'log', items, (index) => {
      this.asked.push(String(index));
      const value = this.read(`item ${index}`)[index] ?? 0;
      return value % 3 === 0 ? [`${index}: ${value}`] : [];
    });
  }

  change(index: number, value: number): void {
    this.values[index] = value;
    this.cells.changed([`item ${index}`]);
  }

  resize(count: number): void {
    this.values = Array.from({ length: count }, (_, index) => index);
    this.cells.changed(['list', ...this.values.map((_, index) => `item ${index}`)]);
  }

  wanted(): readonly string[] {
    return this.values.flatMap((value, index) => (value % 3 === 0 ? [`${index}: ${value}`] : []));
  }

  private read(key: string): readonly number[] {
    this.cells.read(key);
    return this.values;
  }
}

describe('what is said of each item of a list', () => {
  it('is the same as asking each in turn, through any changes', () => {
    const change = fc.record({
      index: fc.nat(299),
      value: fc.nat(20),
      size: fc.nat(300),
      isResize: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.nat(300), fc.array(change, { maxLength: 12 }), (count, changes) => {
        const log = new Log(count);
        assert.deepEqual(log.answers(), log.wanted());
        let size = count;
        for (const { index, value, size: next, isResize } of changes) {
          if (isResize) {
            size = next;
            log.resize(size);
          } else if (index < size) log.change(index, value);
          assert.deepEqual(log.answers(), log.wanted());
        }
      }),
    );
  });

  it('is asked again of a few neighbours only, however long the list is', () => {
    const log = new Log(10_000);
    log.answers();
    assert.equal(log.asked.length, 10_000);
    log.asked.length = 0;
    log.change(5000, 3);
    assert.deepEqual(log.answers(), log.wanted());
    assert.ok(log.asked.includes('5000'));
    assert.ok(log.asked.length <= 8, `${log.asked.length} were asked`);
  });

  it('may be thinned on the way to what the whole needs', () => {
    const cells = new Cells();
    const values = Array.from({ length: 500 }, (_, index) => (index * 37) % 501);
    const most = (said: readonly number[]) => [...said].sort((one, other) => other - one).slice(0, 1);
    const items = () => {
      cells.read('list');
      return values;
    };
    const greatest = perItem(cells, 'most', items, (value) => [value], most);
    assert.deepEqual(greatest, [Math.max(...values)]);
  });
});
