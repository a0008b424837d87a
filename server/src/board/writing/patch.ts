import type { ListedSetting, Listing, Stretch } from '../listing/listing';
import { withDigits } from '../listing/packed';
import { settingKey } from '../listing/setting-key';
import { lookOf } from '../listing/value-look';
import type { Entry } from './entries';
import { tokenFor } from './tokens';

/** One value that stands otherwise in the patched text than in the captured one. */
export interface ValueChange {
  readonly entry: Entry;
  readonly before: string;
  readonly after: string;
}

/** Something that can't be written, and why: the end of a sentence. */
export interface Unwritten {
  readonly entry: Entry;
  readonly reason: string;
}

export interface Patched {
  readonly text: string;
  readonly changes: readonly ValueChange[];
  readonly unwritten: readonly Unwritten[];
  /** What the captured text has no setting for. */
  readonly absent: readonly Entry[];
}

interface Edit {
  readonly at: Stretch;
  readonly text: string;
}

/** Puts values into a captured text: all that is the same stays as it stands there, character by character. */
export function patch(listing: Listing, entries: readonly Entry[]): Patched {
  const listed = new Map(listing.settings.map((setting) => [settingKey(setting), setting]));
  const edits: Edit[] = [];
  const digits = new ChangedDigits();
  const changes: ValueChange[] = [];
  const unwritten: Unwritten[] = [];
  const absent: Entry[] = [];
  for (const entry of entries) {
    const setting = listed.get(settingKey(entry));
    if (setting === undefined) {
      absent.push(entry);
      continue;
    }
    const token = tokenFor(entry, setting, listing);
    const at = setting.at.value;
    const before = setting.packedIn === undefined ? listing.text.slice(at.start, at.end) : setting.value;
    if (token.kind === 'refused') unwritten.push({ entry, reason: token.reason });
    else if (token.text !== before && token.text !== setting.value) {
      if (setting.packedIn === undefined)
        edits.push({ at, text: token.text }, ...withoutReading(setting, listing));
      else digits.add(setting, token.text);
      changes.push({ entry, before: setting.value, after: entry.value });
    }
  }
  edits.push(...digits.edits(listing));
  return { text: edited(listing.text, edits), changes, unwritten, absent };
}

/** Takes away what a listing says that a value came to, `1500 (1.5 kHz)`: with another value it is wrong. */
function withoutReading({ at, value, stated }: ListedSetting, { text, forms }: Listing): readonly Edit[] {
  const { end } = at.value;
  const lineEnd = text.slice(end).search(/[\r\n]|$/);
  const behind = text.slice(end, end + lineEnd).trimEnd();
  const [, reading = ''] = /^\s{0,40}[([](?:= ?)?([^()[\]]{1,40})[)\]]$/.exec(behind) ?? [];
  if (forms.container !== 'lines' || stated === null || !isReading(value, reading, forms.decimal)) return [];
  return [{ at: { start: end, end: end + behind.length }, text: '' }];
}

/** Whether an amount may be what a number comes to; a whole part of something, `25 (0.1 s)`, is how it counts. */
function isReading(value: string, reading: string, mark: Listing['forms']['decimal']): boolean {
  const [own, look] = [lookOf(value, mark), lookOf(reading, mark)];
  if (own.kind !== 'number' || look.kind !== 'measure') return false;
  return !isPowerOfTen(look.number.value) || isPowerOfTen(own.value);
}

function isPowerOfTen(number: number): boolean {
  return number > 0 && Number.isInteger(Number(Math.log10(number).toFixed(9)));
}

function edited(text: string, edits: readonly Edit[]): string {
  const parts: string[] = [];
  let from = 0;
  for (const { at, text: own } of [...edits].sort((one, other) => one.at.start - other.at.start)) {
    parts.push(text.slice(from, at.start), own);
    from = at.end;
  }
  return parts.join('') + text.slice(from);
}

/** Digits of numbers that change, all of one number together. */
class ChangedDigits {
  private readonly byStart = new Map<
    number,
    { readonly of: ListedSetting; readonly digits: Map<number, string> }
  >();

  add(of: ListedSetting, digit: string): void {
    const { start } = of.at.value;
    const known = this.byStart.get(start) ?? { of, digits: new Map<number, string>() };
    known.digits.set((of.item ?? 1) - 1, digit);
    this.byStart.set(start, known);
  }

  edits({ forms }: Listing): readonly Edit[] {
    return [...this.byStart.values()].map(({ of, digits }) => {
      const { packedIn = of.value, at } = of;
      return { at: at.value, text: withDigits(packedIn, digits, forms.decimal) ?? packedIn };
    });
  }
}
