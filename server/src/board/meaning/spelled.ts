import type { Value } from '../../craft/value';

/** A value in the board's spelling, a text for each of the row's names. */
export type Spelled =
  | { readonly kind: 'texts'; readonly texts: readonly string[] }
  /** The board can't take it; why, as the end of a sentence. */
  | { readonly kind: 'refused'; readonly reason: string };

/** What a value in the board's spelling says, or why it says nothing. */
export type Understood =
  | { readonly kind: 'value'; readonly value: Value }
  | { readonly kind: 'unclear'; readonly part: number; readonly reason: string };

export function texts(text: string): Spelled {
  return { kind: 'texts', texts: [text] };
}

export function refused(reason: string): Spelled {
  return { kind: 'refused', reason };
}

/** The parts of one value; refused where one of them is. */
export function all(parts: readonly Spelled[]): Spelled {
  const without = parts.find((part) => part.kind === 'refused');
  if (without !== undefined) return without;
  return { kind: 'texts', texts: parts.flatMap((part) => (part.kind === 'texts' ? part.texts : [])) };
}

export function unclear(part: number, reason: string): Understood {
  return { kind: 'unclear', part, reason };
}
