import type { Answers } from './answers';
import { type PackShelves, shelfWith, shelvesOf } from './pack-shelves';

/**
 * Computed answers of a craft that is looked at once, as on the command line. They don't note what they read: a
 * change drops all of them. What doesn't depend on the pack in view is computed once for every pack.
 */
export class OnceCells implements Answers {
  readonly isForOneLook = true;
  private readonly answers: Shelf = new Map();
  private readonly packAnswers = new Map<string, PackShelves<Answer>>();
  /** Whether what is being computed has read so far which pack is in view. */
  private hasReadPack = false;

  read(): void {}

  readPack(): void {
    this.hasReadPack = true;
  }

  getOf<T>(input: string, compute: () => T): T {
    return this.get(input, compute);
  }

  get<T>(key: string, compute: () => T): T {
    const known = this.answers.get(key);
    if (known !== undefined) return this.told(known, key) as T;
    return this.computed(this.answers, key, compute).value as T;
  }

  getWith<T>(pack: string | null, kind: string, name: string, compute: () => T): T {
    const shelves = shelvesOf(this.packAnswers, kind);
    const { shared } = shelves;
    const forAll = shared.get(name);
    if (forAll !== undefined) return forAll.value as T;
    const own = shelfWith(shelves, pack);
    const known = own.get(name);
    if (known !== undefined) return this.told(known, name) as T;
    const answer = this.computed(own, name, compute);
    if (!answer.hasReadPack) shared.set(name, answer);
    return answer.value as T;
  }

  changed(): ReadonlySet<string> {
    const dropped = [...this.answers.keys(), ...this.packAnswers.keys()];
    this.answers.clear();
    this.packAnswers.clear();
    return new Set(dropped);
  }

  private told(answer: Answer, name: string): unknown {
    if (!answer.isThere) throw new Error(`${name} depends on itself`);
    if (answer.hasReadPack) this.hasReadPack = true;
    return answer.value;
  }

  /** Whoever asks for an answer depends on the pack in view as that answer does. */
  private computed(shelf: Shelf, name: string, compute: () => unknown): Answer {
    const before = this.hasReadPack;
    this.hasReadPack = false;
    const answer: Answer = { value: undefined, isThere: false, hasReadPack: false };
    shelf.set(name, answer);
    try {
      answer.value = compute();
      answer.isThere = true;
      answer.hasReadPack = this.hasReadPack;
      return answer;
    } finally {
      if (!answer.isThere) shelf.delete(name);
      this.hasReadPack ||= before;
    }
  }
}

interface Answer {
  value: unknown;
  /** False while it is being computed. */
  isThere: boolean;
  hasReadPack: boolean;
}

type Shelf = Map<string, Answer>;
