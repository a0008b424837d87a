import { EventEmitter } from './host/values';

/** What begins the name of everything that is kept in the browser's storage. */
const own = 'propsoff/';
const fileKey = `${own}file/`;

/** What is used of a browser's storage; each call may throw. */
export interface KeptStorage {
  readonly length: number;
  key(index: number): string | null;
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
  removeItem(key: string): void;
}

/** What another tab wrote of a text that was changed here too is kept as `copy`. */
export interface KeptTwice {
  readonly path: string;
  readonly copy: string;
}

/** Why nothing is kept, as a sentence. */
export type NotKept = string | null;

/**
 * Texts by their paths, and small things that are remembered. What is here counts, and is written to the browser's
 * storage in a moment; where that fails it stays here, it is said, and it is tried again with the next change.
 */
export class Store {
  private readonly texts = new Map<string, string>();
  /** What the storage is to hold under a key; null: nothing any more. */
  private readonly waiting = new Map<string, string | null>();
  /** What the storage held of a text when this page last wrote or read it there. */
  private readonly seen = new Map<string, string | null>();
  private timer: ReturnType<typeof setTimeout> | undefined;
  private fault: NotKept = null;
  private readonly faulted = new EventEmitter<NotKept>();
  /** The storage takes nothing more, or takes it again. */
  readonly onFault = this.faulted.event;
  private readonly changed = new EventEmitter<string>();
  /** A text is another one, or gone, by somebody else: in another tab of this page. */
  readonly onChangedElsewhere = this.changed.event;
  private readonly rememberedElsewhere = new EventEmitter<string>();
  /** Another tab remembers something else under this key. */
  readonly onRememberedElsewhere = this.rememberedElsewhere.event;
  private readonly keptTwice = new EventEmitter<KeptTwice>();
  readonly onKeptTwice = this.keptTwice.event;

  constructor(
    private readonly storage: () => KeptStorage,
    elsewhere: (take: (key: string | null, value: string | null) => void) => void,
  ) {
    for (const [key, text] of this.textsThere()) {
      this.texts.set(key.slice(fileKey.length), text);
      this.seen.set(key, text);
    }
    elsewhere((key, value) => this.takeElsewhere(key, value));
  }

  get whyNotKept(): NotKept {
    return this.fault;
  }

  paths(): readonly string[] {
    return [...this.texts.keys()].sort((one, other) => one.localeCompare(other));
  }

  read(path: string): string | undefined {
    return this.texts.get(path);
  }

  write(path: string, text: string): void {
    this.texts.set(path, text);
    this.wait(fileKey + path, text);
  }

  remove(path: string): void {
    this.texts.delete(path);
    this.wait(fileKey + path, null);
  }

  remembered(key: string): unknown {
    const waiting = this.waiting.get(own + key);
    const text = waiting !== undefined ? waiting : this.try(() => this.storage().getItem(own + key));
    try {
      return typeof text === 'string' ? (JSON.parse(text) as unknown) : undefined;
    } catch {
      return undefined;
    }
  }

  /** Undefined is nothing to remember. */
  remember(key: string, value: unknown): void {
    this.wait(own + key, value === undefined ? null : JSON.stringify(value));
  }

  /** Writes what waits; what goes first makes room for the rest. */
  keep(): void {
    clearTimeout(this.timer);
    const isKept = this.try(() => {
      const kept = this.storage();
      const inOrder = [...this.waiting].sort(
        ([, one], [, other]) => Number(other === null) - Number(one === null),
      );
      for (const [key, value] of inOrder) {
        this.keepTheirs(kept, key, value);
        if (value === null) kept.removeItem(key);
        else kept.setItem(key, value);
        this.seen.set(key, value);
        this.waiting.delete(key);
      }
      return true;
    });
    if (isKept === true) this.setFault(null);
  }

  /** A tab that slept has heard nothing of the others meanwhile. */
  lookAgain(): void {
    const there = this.textsThere();
    if (this.fault !== null) return;
    const gone = this.paths().map((path) => fileKey + path);
    for (const key of gone) if (!there.has(key)) this.takeElsewhere(key, null);
    for (const [key, text] of there) this.takeElsewhere(key, text);
  }

  /** `wren-2.craft` for `wren.craft` where that is taken. */
  free(path: string, first = 1): string {
    const [, base = path, ending = ''] = /^(.*?)(\.[^.]*)$/.exec(path) ?? [];
    for (let number = first; ; number += 1) {
      const free = number === 1 ? path : `${base}-${number}${ending}`;
      if (!this.texts.has(free)) return free;
    }
  }

  /** All texts that the storage holds, by their keys. */
  private textsThere(): ReadonlyMap<string, string> {
    const there = new Map<string, string>();
    this.try(() => {
      const kept = this.storage();
      for (let index = 0; index < kept.length; index += 1) {
        const key = kept.key(index);
        if (key?.startsWith(fileKey)) there.set(key, kept.getItem(key) ?? '');
      }
    });
    return there;
  }

  /** What another tab has written in the meantime, and this one has not seen, is kept under another name. */
  private keepTheirs(kept: KeptStorage, key: string, mine: string | null): void {
    const path = key.slice(fileKey.length);
    if (!key.startsWith(fileKey) || isRecord(path)) return;
    const theirs = kept.getItem(key);
    if (theirs === null || theirs === mine || theirs === (this.seen.get(key) ?? null)) return;
    const copy = this.free(path, 2);
    kept.setItem(fileKey + copy, theirs);
    this.seen.set(fileKey + copy, theirs);
    this.texts.set(copy, theirs);
    this.keptTwice.fire({ path, copy });
  }

  private wait(key: string, value: string | null): void {
    this.waiting.set(key, value);
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.keep(), 0);
  }

  private try<T>(work: () => T): T | undefined {
    try {
      return work();
    } catch (error) {
      this.setFault(sentenceOf(error));
      return undefined;
    }
  }

  private setFault(fault: NotKept): void {
    if (fault === this.fault) return;
    this.fault = fault;
    this.faulted.fire(fault);
  }

  /** Of two tabs the one that wrote last is right, as on a disk; what could not be kept here stays. */
  private takeElsewhere(key: string | null, value: string | null): void {
    if (key === null || !key.startsWith(own)) return;
    if (!key.startsWith(fileKey)) {
      this.rememberedElsewhere.fire(key.slice(own.length));
      return;
    }
    if (this.waiting.has(key)) return;
    this.seen.set(key, value);
    const path = key.slice(fileKey.length);
    if (this.texts.get(path) === (value ?? undefined)) return;
    if (value === null) this.texts.delete(path);
    else this.texts.set(path, value);
    this.changed.fire(path);
  }
}

/** What is kept beside a text is written by the page, not by a person. */
function isRecord(path: string): boolean {
  return /\.(craft|boardtext)\.\w+\.json$/.test(path);
}

function sentenceOf(error: unknown): string {
  const isFull = error instanceof Error && /quota/i.test(error.name);
  return isFull
    ? 'The browser’s storage is full: your last changes are on this page only. Save them as a file before you close it, or delete scripts that you do not need.'
    : 'This browser keeps nothing for this page: what you write is on this page only. Save it as a file before you close it.';
}
