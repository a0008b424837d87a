/** Characters that look like a space, with what is meant by each: a space, or nothing at all. */
export const lookAlikeSpace: ReadonlyMap<string, 'space' | 'nothing'> = new Map([
  ...[
    ...'\u00a0\u1680\u2000\u2001\u2002\u2003\u2004\u2005\u2006\u2007\u2008\u2009\u200a\u202f\u205f\u3000',
  ].map((character) => [character, 'space'] as const),
  ...[...'\u00ad\u200b\u200c\u200d\u2060\ufeff'].map((character) => [character, 'nothing'] as const),
]);

/**
 * Shows nothing within a text and parts it from what it seems to say. The joiners are left alone there: some
 * scripts and many pictures are written with them.
 */
export const unseenInText: ReadonlySet<string> = new Set('\u00ad\u200b\u2060\ufeff');

/** What stands between the two halves of a name and shows nothing. */
export const cutsName = /[A-Za-z0-9_.-][\u00ad\u200b-\u200d\u2060\ufeff]+[A-Za-z0-9_.-]/;

/** Characters that look like a minus. */
export const lookAlikeMinus: ReadonlySet<string> = new Set(
  '\u2010\u2011\u2012\u2013\u2014\u2212\ufe63\uff0d',
);

/** Characters that look like a double quote. */
export const lookAlikeQuote: ReadonlySet<string> = new Set(
  '\u201c\u201d\u201e\u201f\u2033\u00ab\u00bb\uff02',
);

/** Characters that look like the degree sign. */
export const lookAlikeDegree: ReadonlySet<string> = new Set('\u00ba\u02da');

/**
 * Control characters but the tab, and marks that turn the direction of writing: they show nothing, and can
 * make a line look like another one or smuggle a command into a terminal.
 */
export const hiddenCharacter = /(?!\t)[\p{Cc}\u202a-\u202e\u2066-\u2069]/u;
