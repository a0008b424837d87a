import type { LineFix, Problem, Span } from './ast';

/** Makes a problem; `values` are put into its sentence. */
export function problem(
  id: string,
  { start, end }: Span,
  values: Readonly<Record<string, string>> = {},
  fixes: readonly LineFix[] = [],
): Problem {
  return { id, start, end, values, fixes };
}

/** What a problem's name was probably meant to be, as a value for its sentence, and the fixes that write it. */
export interface LateSuggestion {
  readonly suggestion: string;
  readonly fixes: readonly LineFix[];
  readonly elsewhere?: readonly string[];
}

/**
 * Makes a problem whose suggestion is made only when somebody looks at it: a long text of some
 * other kind has a foreign name on every line, and most are never shown.
 */
export function lateProblem(
  id: string,
  { start, end }: Span,
  known: Readonly<Record<string, string>>,
  suggest: () => LateSuggestion,
): Problem {
  let kept: LateSuggestion | undefined;
  const suggested = (): LateSuggestion => {
    kept ??= suggest();
    return kept;
  };
  const values = Object.defineProperty({ ...known }, 'suggestion', {
    enumerable: true,
    get: () => suggested().suggestion,
  });
  return offering({ id, start, end, values }, suggested);
}

/** A problem of which is made only when somebody looks at it what may mend it. */
export function offering(
  { id, start, end, values }: Omit<Problem, 'fixes'>,
  offer: () => Pick<Problem, 'fixes' | 'elsewhere'>,
): Problem {
  return {
    id,
    start,
    end,
    values,
    get fixes() {
      return offer().fixes;
    },
    get elsewhere() {
      return offer().elsewhere ?? [];
    },
  };
}

/** A fix that replaces one stretch. `{to}` in its title is what it writes. */
export function replacement(title: string, { start, end }: Span, newText: string): LineFix {
  return { title, values: { to: newText }, edits: [{ start, end, newText }] };
}

/** A character with its article, as it stands in a sentence: `an en dash (U+2013)`. */
export function characterPhrase(character: string): string {
  const name = characterName(character);
  return `${/^[aeio]/i.test(name) ? 'an' : 'a'} ${name}`;
}

/** Names a character for a message: `no-break space (U+00A0)`. */
export function characterName(character: string): string {
  const code = character.codePointAt(0) ?? 0;
  const name = names.get(code);
  const point = `U+${code.toString(16).toUpperCase().padStart(4, '0')}`;
  return name === undefined ? point : `${name} (${point})`;
}

const names = new Map([
  [0x00a0, 'no-break space'],
  [0x00ad, 'soft hyphen'],
  [0x2007, 'figure space'],
  [0x2009, 'thin space'],
  [0x200a, 'hair space'],
  [0x200b, 'zero-width space'],
  [0x200c, 'zero-width non-joiner'],
  [0x200d, 'zero-width joiner'],
  [0x2060, 'word joiner'],
  [0x202f, 'narrow no-break space'],
  [0x3000, 'ideographic space'],
  [0xfeff, 'zero-width no-break space, the byte order mark'],
  [0x2212, 'minus sign'],
  [0x2010, 'hyphen'],
  [0x2011, 'no-break hyphen'],
  [0x2013, 'en dash'],
  [0x2014, 'em dash'],
  [0xfe63, 'small hyphen-minus'],
  [0xff0d, 'full-width hyphen-minus'],
  [0x201c, 'left curly quote'],
  [0x201d, 'right curly quote'],
  [0x201e, 'low curly quote'],
  [0x2033, 'double prime'],
  [0x00ba, 'ordinal sign'],
  [0x02da, 'ring above'],
]);
