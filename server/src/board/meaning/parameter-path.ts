import type { Meaning } from './meanings';

/** The member that a board's pack settings are read into: a board knows one pack, and not its name. */
export const capturedPack = 'captured';

/** The parameter's path on the craft that a board's text is read into. */
export function parameterPath({ means }: Pick<Meaning, 'means'>, member: string | null): string {
  return means.replace(/<[a-z]+>/, () => member ?? capturedPack);
}
