import type { Forgettable, QueryContext, Reading } from './database';
import { Dependency, type Dependent } from './dependency';
import type { Key } from './key-map';

/** What a memo needs of its query. */
export interface MemoQuery<C extends QueryContext, K extends Key, V> {
  readonly name: string;
  compute(context: C, ...key: K): V;
  isSame(one: V, other: V): boolean;
  /** It has begun to depend on the variant in which it is asked, or no longer does. */
  moved(memo: Memo<C, K, V>): void;
  forgotten(memo: Memo<C, K, V>): void;
}

const none = Symbol('no value');
const nothing: readonly never[] = [];

/** The value of a query for one key, with what it was computed from. */
export class Memo<C extends QueryContext, K extends Key, V>
  extends Dependency
  implements Dependent, Forgettable
{
  /** None before the first computation, and after one that failed. */
  private value: V | typeof none = none;
  private state: 'valid' | 'doubtful' | 'outdated' | 'computing' = 'outdated';
  /** Bare where it is one, as of a setting: of 10,000 that takes half a megabyte less. */
  private dependencies: Dependency | readonly Dependency[] = nothing;
  isVaried = false;

  constructor(
    private readonly query: MemoQuery<C, K, V>,
    readonly context: C,
    readonly key: K,
  ) {
    super();
  }

  get isComputing(): boolean {
    return this.state === 'computing';
  }

  /** The value; whatever is being computed depends on it from now on. */
  read(): V {
    try {
      return this.upToDate();
    } finally {
      this.context.database.read(this, this.isVaried);
    }
  }

  /** A computation that fails does so again for whoever asks: here its dependents only hear of a change. */
  settle(): void {
    if (this.state === 'valid') return;
    try {
      this.upToDate();
    } catch {
      this.invalidateDependents('outdated');
    }
  }

  invalidate(state: 'doubtful' | 'outdated'): void {
    if (this.state === 'valid') {
      this.state = state;
      this.context.database.idles(this);
      this.invalidateDependents('doubtful');
    } else if (this.state === 'doubtful') this.state = state;
  }

  forget(): void {
    this.value = none;
    this.state = 'outdated';
    for (const dependency of this.dependencyList()) dependency.removeDependent(this);
    this.dependencies = nothing;
    this.query.forgotten(this);
  }

  /** A memo that is valid stays: somebody may ask for it again. */
  protected abandoned(): void {}

  private upToDate(): V {
    if (this.state === 'doubtful') this.lookInto();
    return this.state === 'valid' && this.value !== none ? this.value : this.computed();
  }

  /** Whether anything that it was computed from has another value now; the first such dependency makes it outdated. */
  private lookInto(): void {
    for (const dependency of this.dependencyList()) {
      dependency.settle();
      if (this.state !== 'doubtful') return;
    }
    this.becomeValid();
  }

  private computed(): V {
    const { query, context, key } = this;
    if (this.state === 'computing') throw new Error(`${query.name} depends on itself`);
    this.state = 'computing';
    const reading = context.database.begin();
    let value: V | typeof none = none;
    try {
      value = query.compute(context, ...key);
      if (this.value === none || !query.isSame(this.value, value)) return value;
      value = this.value;
      return value;
    } finally {
      context.database.end();
      this.keep(value, reading);
    }
  }

  private keep(value: V | typeof none, { dependencies, isVaried }: Reading): void {
    this.depend(dependencies);
    const hasChanged = !Object.is(value, this.value) || value === none || isVaried !== this.isVaried;
    this.value = value;
    if (isVaried !== this.isVaried) {
      this.isVaried = isVaried;
      this.query.moved(this);
    }
    if (hasChanged) this.invalidateDependents('outdated');
    this.becomeValid();
  }

  private depend(dependencies: ReadonlySet<Dependency>): void {
    for (const dependency of dependencies) dependency.addDependent(this);
    for (const dependency of this.dependencyList())
      if (!dependencies.has(dependency)) dependency.removeDependent(this);
    const [first = nothing] = dependencies;
    this.dependencies = dependencies.size < 2 ? first : [...dependencies];
  }

  private dependencyList(): readonly Dependency[] {
    return this.dependencies instanceof Dependency ? [this.dependencies] : this.dependencies;
  }

  private becomeValid(): void {
    this.state = 'valid';
    this.context.database.settled(this);
  }
}
