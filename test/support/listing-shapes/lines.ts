import type { Item, Line, Piece } from './listing';

export function literal(text: string): Piece {
  return { text, of: null };
}

export function namePiece(item: number, text: string): Piece {
  return { text, of: { item, field: 'name' } };
}

/** A value with its quotes and its unit; only what stands inside the quotes is the value. */
export function valuePieces(item: number, { value }: Item): readonly Piece[] {
  const { quote, text, unit } = value;
  return [
    ...(quote === '' ? [] : [literal(quote)]),
    { text, of: { item, field: 'value' } },
    ...(quote === '' ? [] : [literal(quote)]),
    ...(unit === null ? [] : [{ text: `${unit.gap}${unit.text}`, of: { item, field: 'unit' } as const }]),
  ];
}

/** A value as it is printed. */
export function printedValue(item: Item): string {
  return textOf(valuePieces(0, item));
}

function textOf(pieces: readonly Piece[]): string {
  return pieces.map(({ text }) => text).join('');
}

export function settingLine(...pieces: readonly (Piece | string | readonly Piece[])[]): Line {
  return { kind: 'setting', pieces: joined(pieces) };
}

export function headingLine(text: string): Line {
  return { kind: 'heading', pieces: [literal(text)] };
}

export function otherLine(text: string): Line {
  return { kind: 'other', pieces: [literal(text)] };
}

export function commentLine(text: string): Line {
  return { kind: 'comment', pieces: [literal(text)] };
}

export const blankLine: Line = { kind: 'blank', pieces: [] };

export function joined(pieces: readonly (Piece | string | readonly Piece[])[]): readonly Piece[] {
  return pieces.flatMap((piece) => (typeof piece === 'string' ? [literal(piece)] : piece));
}
