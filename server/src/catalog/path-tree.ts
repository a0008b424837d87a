import type { KnownParameter } from './known-parameter';
import type { Collection } from './model/collection';

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
  parameter?: KnownParameter;
}

/** A node with the members that were named on the way to it. */
export interface Reached {
  readonly node: PathNode;
  readonly keys: readonly string[];
}

/** Where a path stops making sense: the last node reached and the word that leads nowhere. */
export interface Stopped {
  readonly node: PathNode;
  /** The path up to the node, as written. */
  readonly before: string;
  readonly word: string;
}

export function pathTree(parameters: Iterable<KnownParameter>, collections: Iterable<Collection>): PathNode {
  const root = node('');
  for (const collection of collections) grow(root, collection.path.split('.')).collection = collection;
  for (const known of parameters) grow(root, known.words).parameter = known;
  return root;
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
  const keys: string[] = [];
  let at = root;
  for (const [index, word] of words.entries()) {
    const next = at.branches.get(word);
    if (next !== undefined) {
      at = next;
    } else if (at.open !== undefined && at.collection !== undefined && takes(at.collection, word)) {
      keys.push(word);
      at = at.open;
    } else {
      return { node: at, before: words.slice(0, index).join('.'), word };
    }
  }
  return { node: at, keys };
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

/** The parameters at and below a node. */
export function below(at: PathNode): readonly KnownParameter[] {
  const inside = [...at.branches.values(), ...(at.open === undefined ? [] : [at.open])].flatMap(below);
  return at.parameter === undefined ? inside : [at.parameter, ...inside];
}
