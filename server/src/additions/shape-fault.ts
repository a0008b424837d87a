import type * as z from 'zod/mini';
import type { Fault } from '../catalog/faults/fault';

type Issue = z.core.$ZodIssue;

/** The first way in which data does not fit its model, in words. `key`: the name that is too much there. */
export function shapeFault(error: z.core.$ZodError): Fault & { readonly key?: string } {
  const [issue] = error.issues;
  if (issue === undefined) return { at: [], message: 'it does not fit its model' };
  const at = issue.path.filter((part): part is string | number => typeof part !== 'symbol');
  const key = issue.code === 'unrecognized_keys' ? issue.keys[0] : undefined;
  return { at, message: described(issue), ...(key === undefined ? {} : { key }) };
}

function described(issue: Issue): string {
  const last = String(issue.path.at(-1) ?? 'this');
  switch (issue.code) {
    case 'invalid_type':
      return `${article(issue.expected)} was expected for ${last}`;
    case 'unrecognized_keys':
      return `"${issue.keys[0]}" is not known here`;
    case 'invalid_value':
      return `${last} is one of: ${issue.values.map(String).join(', ')}`;
    case 'invalid_union':
      return `${last} is one of: ${('options' in issue ? (issue.options ?? []) : []).map(String).join(', ')}`;
    case 'too_small':
      return `${last} is too short or too small: ${issue.inclusive === false ? 'more than' : 'at least'} ${issue.minimum}`;
    case 'too_big':
      return `${last} is too long or too large: at most ${issue.maximum}`;
    case 'invalid_format':
      return `${last} is not in the form of a name: small letters, with hyphens between words`;
    default:
      return issue.message;
  }
}

function article(type: string): string {
  if (type === 'string') return 'a text in double quotes';
  if (type === 'array' || type === 'tuple') return 'a list in brackets';
  if (type === 'object') return 'an object in braces';
  return /^[aeiou]/.test(type) ? `an ${type}` : `a ${type}`;
}
