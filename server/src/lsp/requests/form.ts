/**
 * What a value that was sent must be: told where it is not, as the end of a sentence; null where it is. `name`: what
 * the value is called. `T`: what it is known to be afterwards.
 */
export interface Form<T> {
  (value: unknown, name: string): string | null;
  /** Never there: it ties the form to what it lets through. */
  readonly lets?: T;
}

const must =
  (isRight: (value: unknown) => boolean, what: string) =>
  (value: unknown, name: string): string | null =>
    isRight(value) ? null : `${name} must be ${what}`;

export const text: Form<string> = must((value) => typeof value === 'string', 'a text');
export const flag: Form<boolean> = must((value) => typeof value === 'boolean', 'true or false');
export const number: Form<number> = must(
  (value) => typeof value === 'number' && Number.isFinite(value),
  'a number',
);
export const count: Form<number> = must(
  (value) => typeof value === 'number' && Number.isInteger(value) && value >= 0,
  'a whole number from 0 up',
);

/** One of these words. */
export function oneOf<T extends string>(words: readonly T[]): Form<T> {
  return must((value) => words.some((word) => word === value), `one of ${words.join(', ')}`);
}

/** The same, or left out: what a handler finds there by its name only. */
export function leftOutOr<T>(form: Form<T>): Form<T | undefined> {
  return (value, name) => (value === undefined ? null : form(value, name));
}

/** The same, left out, or null. */
export function optional<T>(form: Form<T>): Form<T | null> {
  return (value, name) => (value === undefined || value === null ? null : form(value, name));
}

export function list<T>(of: Form<T>): Form<readonly T[]> {
  return (value, name) => {
    if (!Array.isArray(value)) return `${name} must be a list`;
    for (const [index, one] of value.entries()) {
      const fault = of(one, `${name}[${index}]`);
      if (fault !== null) return fault;
    }
    return null;
  };
}

/** An object with these members; it may have others. */
export function object<T extends object>(members: { readonly [Name in keyof T]: Form<T[Name]> }): Form<T> {
  const all = Object.entries<Form<unknown>>(members);
  return (value, name) => {
    if (typeof value !== 'object' || value === null || Array.isArray(value))
      return `${name} must be an object`;
    for (const [member, form] of all) {
      const held: unknown = Reflect.get(value, member);
      const fault = form(held, `${name}.${member}`);
      if (fault !== null) return fault;
    }
    return null;
  };
}

export const position = object({ line: count, character: count });
export const range = object({ start: position, end: position });

/** Members of the parameters of what is asked about a script; about a place, or a range, in it. */
export const about = { textDocument: object({ uri: text }) };
export const here = { ...about, position };
export const within = { ...about, range };
