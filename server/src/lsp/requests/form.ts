/** Tells where a value is not of a form, as the end of a sentence; null where it is. `name`: what the value is called. */
export type Form = (value: unknown, name: string) => string | null;

const must =
  (isRight: (value: unknown) => boolean, what: string): Form =>
  (value, name) =>
    isRight(value) ? null : `${name} must be ${what}`;

export const text: Form = must((value) => typeof value === 'string', 'a text');
export const flag: Form = must((value) => typeof value === 'boolean', 'true or false');
export const count: Form = must(
  (value) => typeof value === 'number' && Number.isInteger(value) && value >= 0,
  'a whole number from 0 up',
);

/** The same, or left out: what a handler finds there by its name only. */
export function leftOutOr(form: Form): Form {
  return (value, name) => (value === undefined ? null : form(value, name));
}

/** The same, left out, or null. */
export function optional(form: Form): Form {
  return (value, name) => (value === undefined || value === null ? null : form(value, name));
}

export function list(of: Form): Form {
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
export function object(members: Readonly<Record<string, Form>>): Form {
  const all = Object.entries(members);
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
