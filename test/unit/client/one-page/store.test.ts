import { strict as assert } from 'node:assert';
import { type KeptStorage, type KeptTwice, Store } from '../../../../client/one-page/store';

/** A browser's storage that takes so many characters, and none at all while it is forbidden. */
class FakeStorage implements KeptStorage {
  readonly items = new Map<string, string>();
  room = Number.POSITIVE_INFINITY;
  isForbidden = false;

  get length(): number {
    return this.items.size;
  }

  key(index: number): string | null {
    return [...this.items.keys()][index] ?? null;
  }

  getItem(key: string): string | null {
    return this.items.get(key) ?? null;
  }

  setItem(key: string, value: string): void {
    const others = [...this.items].filter(([name]) => name !== key);
    const taken = others.reduce((sum, [name, text]) => sum + name.length + text.length, 0);
    if (taken + key.length + value.length > this.room)
      throw Object.assign(new Error('no room'), { name: 'QuotaExceededError' });
    this.items.set(key, value);
  }

  removeItem(key: string): void {
    this.items.delete(key);
  }
}

type Take = (key: string | null, value: string | null) => void;

function stored(storage = new FakeStorage()) {
  let elsewhere: Take = () => undefined;
  const given = () => {
    if (storage.isForbidden) throw Object.assign(new Error('not here'), { name: 'SecurityError' });
    return storage;
  };
  const store = new Store(given, (take) => {
    elsewhere = take;
  });
  const faults: (string | null)[] = [];
  store.onFault((why) => faults.push(why));
  return { store, storage, faults, elsewhere: (key: string, value: string | null) => elsewhere(key, value) };
}

describe('what the page without an install keeps', () => {
  it('is there again', () => {
    const { store, storage } = stored();
    store.write('wren.craft', '[craft]\n');
    store.write('boards/wren.json', '{}\n');
    store.remember('theme', 'dark');
    store.keep();
    store.remember('card', 'ticked');
    store.keep();
    store.remember('card', undefined);
    assert.equal(store.remembered('card'), undefined, 'not even before it is written');
    store.keep();
    assert.equal(storage.getItem('propsoff/card'), null);
    const again = stored(storage).store;
    assert.deepEqual(again.paths(), ['boards/wren.json', 'wren.craft']);
    assert.equal(again.read('wren.craft'), '[craft]\n');
    assert.equal(again.remembered('theme'), 'dark');
  });

  it('is still here while the storage is full, which is said, and goes there once there is room', () => {
    const { store, storage, faults } = stored();
    store.write('old.craft', 'x'.repeat(100));
    store.keep();
    storage.room = 150;
    store.write('new.craft', 'y'.repeat(100));
    store.keep();
    assert.match(faults.at(-1) ?? '', /storage is full/);
    assert.equal(store.read('new.craft'), 'y'.repeat(100));
    assert.equal(storage.items.get('propsoff/file/old.craft'), 'x'.repeat(100), 'nothing kept is lost');
    store.remove('old.craft');
    store.keep();
    assert.equal(faults.at(-1), null);
    assert.equal(stored(storage).store.read('new.craft'), 'y'.repeat(100));
  });

  it('is only here where the browser keeps nothing, which is said from the start', () => {
    const storage = new FakeStorage();
    storage.isForbidden = true;
    const { store } = stored(storage);
    assert.match(store.whyNotKept ?? '', /keeps nothing/);
    store.write('wren.craft', '[craft]\n');
    store.keep();
    assert.equal(store.read('wren.craft'), '[craft]\n');
    assert.equal(store.remembered('theme'), undefined);
  });

  it('follows another tab, but for what is not kept yet', () => {
    const { store, elsewhere } = stored();
    const changed: string[] = [];
    store.onChangedElsewhere((path) => changed.push(path));
    store.write('wren.craft', 'one');
    elsewhere('propsoff/file/wren.craft', 'theirs');
    assert.equal(store.read('wren.craft'), 'one', 'what was just written here comes last');
    store.keep();
    elsewhere('propsoff/file/wren.craft', 'theirs');
    elsewhere('propsoff/file/gone.craft', null);
    elsewhere('somebody-else', 'x');
    assert.equal(store.read('wren.craft'), 'theirs');
    assert.deepEqual(changed, ['wren.craft']);
  });

  it('keeps both of what two tabs wrote into one text without hearing of each other, and says so', () => {
    const { store, storage, elsewhere } = stored();
    const twice: KeptTwice[] = [];
    store.onKeptTwice((both) => twice.push(both));
    store.write('wren.craft', 'first');
    store.keep();
    storage.setItem('propsoff/file/wren.craft', 'theirs');
    store.write('wren.craft', 'mine');
    elsewhere('propsoff/file/wren.craft', 'theirs');
    store.keep();
    assert.deepEqual(twice, [{ path: 'wren.craft', copy: 'wren-2.craft' }]);
    const again = stored(storage).store;
    assert.equal(again.read('wren.craft'), 'mine');
    assert.equal(again.read('wren-2.craft'), 'theirs');
    store.write('wren.craft', 'mine, and more');
    store.remove('wren-2.craft');
    store.keep();
    assert.equal(twice.length, 1, 'what this tab wrote itself is no other tab’s');

    storage.setItem('propsoff/file/wren.craft', 'theirs again');
    store.remove('wren.craft');
    store.keep();
    assert.deepEqual(
      stored(storage).store.paths(),
      ['wren-2.craft'],
      'nor is it lost where it is deleted here',
    );
  });

  it('looks again at what other tabs wrote while this one slept, and hears what they remember', () => {
    const { store, storage, elsewhere } = stored();
    const changed: string[] = [];
    store.onChangedElsewhere((path) => changed.push(path));
    store.onRememberedElsewhere((key) => changed.push(key));
    for (const path of ['wren.craft', 'gone.craft', 'same.craft']) store.write(path, 'one');
    store.keep();
    storage.setItem('propsoff/file/wren.craft', 'two');
    storage.removeItem('propsoff/file/gone.craft');
    storage.setItem('propsoff/file/new.craft', 'three');
    store.write('typed.craft', 'not kept yet');
    store.lookAgain();
    elsewhere('propsoff/card of wren', '{}');
    assert.deepEqual(store.paths(), ['new.craft', 'same.craft', 'typed.craft', 'wren.craft']);
    assert.equal(store.read('wren.craft'), 'two');
    assert.deepEqual(changed.sort(), ['card of wren', 'gone.craft', 'new.craft', 'wren.craft']);
  });

  it('takes what is remembered wrongly for nothing', () => {
    const storage = new FakeStorage();
    storage.items.set('propsoff/open', '{"paths":');
    assert.equal(stored(storage).store.remembered('open'), undefined);
  });
});
