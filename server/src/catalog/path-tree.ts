import type { KnownParameter } from './known-parameter';
import type { Collection, Member } from './model/collection';

/**
 * The catalogue's names as a tree: one node a word, at most one open branch a node. Words come from users,
 * so branches are a `Map`: `constructor` is a word like any other.
 */
export interface PathNode {
  /** The words so far, as the catalogue spells them; empty at the root. */
  readonly name: string;
  readonly branches: Map<string, PathNode>;
  /** The collection that this node opens: its members come next. */
  collection?: Collection;
  /** Below a member, whichever it is. */
  open?: PathNode;
  /** The member of a collection that this branch is kept for. */
  readonly member?: Member;
  parameter?: KnownParameter;
}

export interface Reached {
  readonly node: PathNode;
}

/** Where a path stops making sense: the last node reached and the word that leads nowhere. */
export interface Stopped {
  readonly node: PathNode;
  /** The path up to the node, as written. */
  readonly before: string;
  readonly word: string;
}

export function pathTree(parameters: Iterable<KnownParameter>, collections: readonly Collection[]): PathNode {
  const root = node('');
  for (const collection of collections) grow(root, collection.path.split('.')).collection = collection;
  for (const known of parameters) grow(root, known.words).parameter = known;
  for (const collection of collections) branchMembers(grow(root, collection.path.split('.')), collection);
  return root;
}

/**
 * Members that have settings of their own, or go without some that the others have, get a branch of their own:
 * what all of them have, and what only this one has.
 */
function branchMembers(at: PathNode, { keys }: Collection): void {
  if (keys.kind !== 'closed') return;
  for (const member of keys.members) {
    const own = at.branches.get(member.name)?.branches;
    if (own === undefined && member.without === undefined) continue;
    const missing = new Set(member.without?.map(({ setting }) => setting));
    const shared = [...(at.open?.branches ?? [])].filter(([word]) => !missing.has(word));
    const branches = new Map([...shared, ...(own ?? [])]);
    at.branches.set(member.name, { name: `${at.name}.${member.name}`, branches, member });
  }
}

function node(name: string): PathNode {
  return { name, branches: new Map() };
}

function grow(root: PathNode, words: readonly string[]): PathNode {
  let at = root;
  for (const word of words) {
    const name = at.name === '' ? word : `${at.name}.${word}`;
    if (isPlaceholder(word)) {
      at.open ??= node(name);
      at = at.open;
    } else {
      const next = at.branches.get(word) ?? node(name);
      at.branches.set(word, next);
      at = next;
    }
  }
  return at;
}

export function isPlaceholder(word: string): boolean {
  return word.startsWith('<');
}

/** Walks a path as a script writes it: members by their own names, never by placeholder. */
export function walk(root: PathNode, path: string): Reached | Stopped {
  const words = path.split('.');
  let at = root;
  for (const [index, word] of words.entries()) {
    const next = at.branches.get(word);
    if (next !== undefined) {
      at = next;
    } else if (at.open !== undefined && at.collection !== undefined && takes(at.collection, word)) {
      at = at.open;
    } else {
      return { node: at, before: words.slice(0, index).join('.'), word };
    }
  }
  return { node: at };
}

/** Whether a collection can have a member of this name. */
export function takes(collection: Collection, key: string): boolean {
  const { keys } = collection;
  switch (keys.kind) {
    case 'open':
      return key !== '' && !isPlaceholder(key);
    case 'closed':
      return keys.members.some((member) => member.name === key);
    case 'numbers':
      return /^[1-9]\d{0,8}$/.test(key) && Number(key) >= keys.from && Number(key) <= keys.to;
  }
}

/** The parameters at and below a node, each once: what all members have stands below each that has a branch. */
export function below(at: PathNode): readonly KnownParameter[] {
  const inside = [...at.branches.values(), ...(at.open === undefined ? [] : [at.open])].flatMap(below);
  return [...new Set(at.parameter === undefined ? inside : [at.parameter, ...inside])];
}
