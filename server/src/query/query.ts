import type { Database, QueryContext } from './database';
import { type Key, KeyMap } from './key-map';
import { Memo, type MemoQuery } from './memo';

/** The memos of one query in one database. */
interface Memos<C extends QueryContext, K extends Key, V> {
  /** Of values that hold in every variant. */
  readonly shared: KeyMap<K, Memo<C, K, V>>;
  readonly byVariant: Map<string | null, KeyMap<K, Memo<C, K, V>>>;
}

/**
 * Something that is derived from inputs and other queries, computed when it is asked for and kept until something
 * that it read has another value.
 *
 *     const packs = new Query('packs', (craft: Craft) => …, sameItems);
 *     packs.get(craft);
 *
 * A value that did not read the variant in which it was asked is kept once for all of them: this is the only place
 * that decides what packs share.
 */
export class Query<C extends QueryContext, K extends Key, V> implements MemoQuery<C, K, V> {
  private readonly memos = new WeakMap<Database, Memos<C, K, V>>();

  constructor(
    readonly name: string,
    readonly compute: (context: C, ...key: K) => V,
    readonly isSame: (one: V, other: V) => boolean = Object.is,
  ) {}

  get(context: C, ...key: K): V {
    const memos = this.memosOf(context.database);
    return (
      sharedMemo(memos, context, key) ??
      ownMemo(memos, context, key) ??
      this.made(memos, context, key)
    ).read();
  }

  /** One that no longer depends on its variant stays where it is: the next one will be shared. */
  moved(memo: Memo<C, K, V>): void {
    if (!memo.isVaried) return;
    this.forgotten(memo);
    memosIn(this.memosOf(memo.context.database), memo.context).set(memo.key, memo);
  }

  forgotten(memo: Memo<C, K, V>): void {
    const memos = this.memosOf(memo.context.database);
    const { variant } = memo.context;
    for (const map of [memos.shared, memos.byVariant.get(variant)])
      if (map?.get(memo.key) === memo) map.delete(memo.key);
    if (memos.byVariant.get(variant)?.isEmpty === true) memos.byVariant.delete(variant);
  }

  private made(memos: Memos<C, K, V>, context: C, key: K): Memo<C, K, V> {
    const memo = new Memo(this, context, key);
    const map = memos.shared.has(key) ? memosIn(memos, context) : memos.shared;
    map.set(key, memo);
    return memo;
  }

  private memosOf(database: Database): Memos<C, K, V> {
    const known = this.memos.get(database);
    if (known !== undefined) return known;
    const made: Memos<C, K, V> = { shared: new KeyMap(), byVariant: new Map() };
    this.memos.set(database, made);
    return made;
  }
}

/** The memo that holds in every variant, if there is one; it may turn out to hold no longer. */
function sharedMemo<C extends QueryContext, K extends Key, V>(
  { shared }: Memos<C, K, V>,
  { variant }: C,
  key: K,
): Memo<C, K, V> | undefined {
  const memo = shared.get(key);
  if (memo === undefined || memo.context.variant === variant) return memo;
  if (memo.isComputing) return undefined;
  memo.settle();
  return memo.isVaried ? undefined : memo;
}

function ownMemo<C extends QueryContext, K extends Key, V>(
  { byVariant }: Memos<C, K, V>,
  { variant }: C,
  key: K,
): Memo<C, K, V> | undefined {
  return byVariant.get(variant)?.get(key);
}

function memosIn<C extends QueryContext, K extends Key, V>(
  { byVariant }: Memos<C, K, V>,
  { variant }: C,
): KeyMap<K, Memo<C, K, V>> {
  const known = byVariant.get(variant);
  if (known !== undefined) return known;
  const made = new KeyMap<K, Memo<C, K, V>>();
  byVariant.set(variant, made);
  return made;
}
