import type { Path, Span } from './ast';

/** What the lexer cuts a line into. */
export type Token =
  | (Path & { readonly kind: 'name' })
  | (Span & {
      readonly kind: 'number';
      /** null: looks like a number and is none. */
      readonly value: number | null;
      readonly digits: string;
      readonly digitsEnd: number;
      readonly unit: (Span & { readonly text: string }) | null;
    })
  | (Span & { readonly kind: 'text'; readonly value: string })
  | (Span & { readonly kind: 'date'; readonly text: string })
  | (Span & {
      readonly kind: 'sign';
      readonly text: Sign;
      readonly spaceBefore: boolean;
      readonly spaceAfter: boolean;
    })
  | (Span & { readonly kind: 'stray'; readonly text: string });

export type Sign = '=' | '[' | ']' | '(' | ')' | ',' | '->' | '..' | '+' | '-' | '*' | '/' | '@';

export type SignToken = Extract<Token, { kind: 'sign' }>;
export type NumberToken = Extract<Token, { kind: 'number' }>;
