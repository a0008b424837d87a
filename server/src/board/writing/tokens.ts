import { isOwnPath } from '../../language/path-text';
import { cellsOf, type TableForm } from '../listing/forms/row';
import type { ListedSetting, Listing } from '../listing/listing';
import { type DecimalMark, numberLook } from '../listing/number-look';
import { lookOf } from '../listing/value-look';
import { writtenInLook } from '../listing/written-in-look';
import { forbidden } from '../meaning/forbidden';
import { isInOther } from '../meaning/stated-unit';
import { type Entry, holdsEntry } from './entries';

/** What is to stand in a captured text in place of a value, or why nothing can: the end of a sentence. */
export type CapturedToken =
  | { readonly kind: 'token'; readonly text: string }
  | { readonly kind: 'refused'; readonly reason: string };

/** A value in the place of a captured one: as it stands there where it is the same, else in its look. */
export function tokenFor(entry: Entry, listed: ListedSetting, { forms }: Listing): CapturedToken {
  const { value } = entry;
  if (listed.style.kind === 'presence') return presence(value, listed.style);
  if (holdsEntry(entry, listed.value, listed.stated)) return token(listed.value);
  if (entry.isSame !== null && isInOther(listed.stated, entry.unit ?? undefined))
    return refused(
      `it stands there in ${listed.stated?.unit ?? ''}, and its profile has it in ${entry.unit ?? ''}`,
    );
  if (forbidden.test(value)) return refused('it holds characters that no board reads');
  const text = inLook(entry, listed, forms.decimal);
  if (forms.container === 'xml' && holdsMarkOfXml(text)) return refused('it holds a mark of XML');
  if (listed.style.kind === 'quoted') return inQuotes(text, listed.style.mark);
  switch (forms.container) {
    case 'json':
      return token(jsonWords.has(text) || numberLook(text) !== null ? text : JSON.stringify(text));
    case 'yaml':
      return token(isPlainInYaml(text) ? text : JSON.stringify(text));
    case 'table':
      return cell(text, forms.table?.delimiter ?? ',');
    case 'xml':
      return token(text);
    case 'lines':
      return text === '' ? refused('its line would end without a value') : token(text);
  }
}

/**
 * What the pilot wrote for the board itself goes to it just so, and words as its profile spells them; numbers and
 * lists look as they did.
 */
function inLook({ value, path, isSame }: Entry, listed: ListedSetting, mark: DecimalMark): string {
  const { kind } = lookOf(listed.value, mark);
  const hasLook = isSame !== null || kind === 'list' || kind === 'tuple';
  return isOwnPath(path) || !hasLook ? value : (writtenInLook(value, listed.value, mark) ?? value);
}

/** An entity, such as `&amp;`, is none. */
function holdsMarkOfXml(text: string): boolean {
  const [, ...behind] = text.split('&');
  return text.includes('<') || !behind.every((one) => /^#?\w+;/.test(one));
}

const jsonWords: ReadonlySet<string> = new Set(['true', 'false', 'null']);
/** Whether YAML reads it as it stands: no mark that begins something else, no comment, no key. */
function isPlainInYaml(text: string): boolean {
  return /^[\p{L}\p{N}_.+-]/u.test(text) && ![': ', ' #', '\n'].some((mark) => `${text} `.includes(mark));
}

function presence(
  value: string,
  { negation, affirmation = '' }: ListedSetting['style'] & { readonly kind: 'presence' },
): CapturedToken {
  if (value === 'on') return token(affirmation);
  if (value !== 'off') return refused('its name alone says on or off');
  return negation === '' ? refused('nobody has said how it is written when it is off') : token(negation);
}

function inQuotes(text: string, mark: string): CapturedToken {
  const bare = text.replaceAll(`\\${mark}`, '').replaceAll(mark + mark, '');
  return bare.includes(mark) || bare.endsWith('\\')
    ? refused(`it holds ${mark}, which ends a text on this board`)
    : token(text);
}

function cell(text: string, delimiter: TableForm['delimiter']): CapturedToken {
  // Where blanks part the cells, an empty one can't be seen.
  const isOne = cellsOf(text, delimiter).length === 1 && (text !== '' || delimiter !== ' ');
  return isOne && !text.includes('"') ? token(text) : refused('it holds what parts the cells of the table');
}

function token(text: string): CapturedToken {
  return { kind: 'token', text };
}

function refused(reason: string): CapturedToken {
  return { kind: 'refused', reason };
}
