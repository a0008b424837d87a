import type { Collection } from './model/collection';
import { type PathNode, type Stopped, walk } from './path-tree';

/** Why a path names no parameter. */
export type Missing =
  | { readonly reason: 'unknown-group'; readonly word: string; readonly groups: readonly string[] }
  | {
      readonly reason: 'unknown-member';
      /** `switch`, with the word that is none of its functions. */
      readonly collection: Collection;
      readonly word: string;
    }
  | {
      readonly reason: 'number-outside';
      readonly collection: Collection;
      readonly word: string;
      readonly from: number;
      readonly to: number;
    }
  | {
      readonly reason: 'unknown-property';
      /** The part of the path that is known, as written: `gyro.filter.1`. */
      readonly section: string;
      readonly word: string;
      /** What may follow there. */
      readonly properties: readonly string[];
    }
  /** A setting that its neighbours have, and that means nothing for this member: `from` of `motors-short`. */
  | {
      readonly reason: 'makes-no-sense';
      readonly section: string;
      readonly word: string;
      readonly why: string;
    }
  /** The path is known, but settings stand below it: `gyro.filter.1`. */
  | { readonly reason: 'section-only'; readonly section: string };

/** Undefined when the path does name a parameter. */
export function explainMissing(root: PathNode, path: string): Missing | undefined {
  const found = walk(root, path);
  if ('word' in found) return explainStop(found);
  return found.node.parameter === undefined ? { reason: 'section-only', section: path } : undefined;
}

function explainStop({ node, before, word }: Stopped): Missing {
  const { collection, member } = node;
  const senseless = member?.without?.find(({ setting }) => setting === word);
  if (senseless !== undefined) return { reason: 'makes-no-sense', section: before, word, why: senseless.why };
  if (node.name === '') return { reason: 'unknown-group', word, groups: [...node.branches.keys()] };
  if (collection?.keys.kind === 'closed') return { reason: 'unknown-member', collection, word };
  if (collection?.keys.kind === 'numbers') {
    const { from, to } = collection.keys;
    return { reason: 'number-outside', collection, word, from, to };
  }
  return { reason: 'unknown-property', section: before, word, properties: [...node.branches.keys()] };
}
