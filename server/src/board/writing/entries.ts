import type { FoundParameter } from '../../catalog/catalog';
import type { Value } from '../../craft/value';
import type { CraftView } from '../../craft/view';
import { isOwnPath, stepsOf } from '../../language/path-text';
import type { SettingKey, Stated } from '../listing/listing';
import { settingOfOwnPath } from '../listing/own-path';
import { settingKey } from '../listing/setting-key';
import { sameValue } from '../listing/value-look';
import { differ } from '../meaning/differ';
import { type Meaning, meaningsOf, namesOf } from '../meaning/meanings';
import { pathsOf } from '../meaning/paths';
import { portEntries } from '../meaning/port-roles';
import { Speller } from '../meaning/spelling';
import { inItsUnit } from '../meaning/stated-unit';
import type { Profile } from '../profile/profile';
import { type LeftOut, leftOutOf } from './left-out';

/** One setting that a craft asks the board to hold. */
export interface Entry extends SettingKey {
  /** In the board's spelling, without its quotes. */
  readonly value: string;
  /** Around the value, where the profile says so; a captured text knows better. */
  readonly quote: string;
  /** The setting of the craft that it comes from. */
  readonly path: string;
  /** How finely the board keeps it, in its own numbers; null where nobody knows. */
  readonly step: number | null;
  /** Whether another text of the board says the same number; null where it is none with a meaning. */
  readonly isSame: ((held: string) => boolean) | null;
  /** The unit that its profile's listing states beside it; null where it states none. */
  readonly unit: string | null;
}

/** Whether the board holds what an entry asks for. `stated`: what stands beside what it holds. */
export function holdsEntry(
  { value, step, isSame, unit }: Entry,
  held: string,
  stated: Pick<Stated, 'unit'> | null = null,
): boolean {
  const inUnit = inItsUnit(held, stated, unit ?? undefined);
  if (inUnit !== held && isSame !== null) return isSame(inUnit);
  return sameValue(value, held, step ?? undefined) || (isSame?.(held) ?? false);
}

/** A parameter that the board will hold otherwise than the script says it: rounded to its step. */
export interface Rounding {
  readonly path: string;
  readonly given: Value;
  readonly held: Value;
  readonly found: FoundParameter;
}

export interface Entries {
  /** Those with a meaning in the profile's order, then the board's own in the script's. */
  readonly entries: readonly Entry[];
  readonly roundings: readonly Rounding[];
  /** What the craft sets and the board is not given, safety first. */
  readonly left: readonly LeftOut[];
}

/** What a craft with the view's pack comes to on a board. Without a profile only the board's own settings do. */
export function entriesOf(profile: Profile | null, view: CraftView): Entries {
  const made = new EntriesMaker(view);
  if (profile !== null) for (const meaning of meaningsOf(profile)) made.takeMeaning(profile, meaning);
  if (profile !== null) made.nameRoles(profile);
  if (profile !== null) made.nameUncounted(profile);
  made.takeRest();
  if (profile !== null) made.takeRoles(profile);
  return made.finished();
}

const unreadable = 'its value can’t be read';

class EntriesMaker {
  private readonly entries = new Map<string, Entry>();
  private readonly roundings: Rounding[] = [];
  private readonly left: LeftOut[] = [];
  /** Paths that some row of the profile stands for. */
  private readonly named = new Set<string>();

  constructor(private readonly view: CraftView) {}

  takeMeaning(profile: Profile, meaning: Meaning): void {
    for (const { path, member } of pathsOf(this.view, meaning.means)) {
      this.named.add(path);
      this.takePath(profile, meaning, path, member);
    }
  }

  private takePath(profile: Profile, meaning: Meaning, path: string, member: string | null): void {
    const setting = this.view.setting(path);
    if (setting === undefined) return;
    const names = namesOf(profile, meaning, member);
    const value = this.view.value(path);
    if (names === null || value === null) {
      this.leave(path, names === null ? `the board has no ${member ?? ''}` : unreadable, names ?? []);
      return;
    }
    const speller = new Speller(meaning, setting.found, profile.manner);
    const spelled = speller.write(value);
    if (spelled.kind === 'refused') {
      this.leave(path, spelled.reason, names);
      return;
    }
    for (const [part, key] of names.entries()) {
      const written = unquoted(spelled.texts[part] ?? '', profile.manner.quote);
      const unit = meaning.parts[part]?.setting.unit ?? null;
      const isSame = speller.isNumber
        ? (held: string) => speller.isSameNumber(part, written.value, held)
        : null;
      this.add({ ...key, ...written, path, step: speller.grain(part), isSame, unit });
    }
    const held = speller.read(spelled.texts);
    if (held.kind === 'value' && differ(value, held.value, meaning.by))
      this.roundings.push({ path, given: value, held: held.value, found: setting.found });
  }

  /** Parameters that settings of ports stand for. */
  nameRoles({ rows, board }: Profile): void {
    const { taken, left } = portEntries(rows, board, this.view);
    for (const path of [...taken, ...left.keys()]) this.named.add(path);
    for (const [path, reason] of left) this.leave(path, reason);
  }

  /** Parameters whose part a setting of the board plays, where nobody knows how it is counted. */
  nameUncounted({ rows }: Profile): void {
    for (const { groups, name, setting } of rows) {
      for (const { path } of setting.role === undefined ? [] : pathsOf(this.view, setting.role)) {
        if (this.named.has(path) || !isSetHere(this.view, path)) continue;
        this.named.add(path);
        const of = [...groups, name].join(' ');
        this.leave(path, `it is ${of} of the board, and nobody has said how that is counted`);
      }
    }
  }

  /** What a port is for goes before what was its board's own. */
  takeRoles({ rows, board }: Profile): void {
    for (const [{ groups, name, setting }, { path, word }] of portEntries(rows, board, this.view).words) {
      const key = { groups, name, occurrence: setting.occurrence ?? 1 };
      this.add({ ...key, value: word, quote: '', path, step: null, isSame: null, unit: null });
    }
  }

  /** The board's own settings, and what no row of the profile stands for. */
  takeRest(): void {
    const paths = this.view.craft.settingPaths();
    for (const path of paths) {
      if (isOwnPath(path)) this.takeOwn(path);
      else if (!this.named.has(path) && isSetHere(this.view, path)) this.leave(path, null);
    }
  }

  private takeOwn(path: string): void {
    const { craft, pack } = this.view;
    const value = craft.bareText(path, pack);
    const key = settingOfOwnPath(stepsOf(path));
    if (value === undefined) return;
    if (key === null || value === null) this.leave(path, unreadable);
    else this.add({ ...key, value, quote: neededQuote(value), path, step: null, isSame: null, unit: null });
  }

  private add(entry: Entry): void {
    this.entries.set(settingKey(entry), entry);
  }

  private leave(path: string, reason: string | null, settings: readonly SettingKey[] = []): void {
    this.left.push(...leftOutOf(this.view, path, reason, settings));
  }

  finished(): Entries {
    const left = this.left.toSorted((one, other) => one.urgency - other.urgency);
    return { entries: [...this.entries.values()], roundings: this.roundings, left };
  }
}

/** Around a value that would be read as another without: an empty one, or one that begins as a quoted one does. */
function neededQuote(value: string): string {
  const isPlain = value !== '' && value === value.trim() && !/^["']/.test(value);
  return isPlain ? '' : (['"', "'"].find((mark) => !value.includes(mark)) ?? '');
}

/** A text is spelled with its quotes; a listing keeps them apart from the value. */
function unquoted(text: string, mark: string): Pick<Entry, 'value' | 'quote'> {
  const isQuoted = mark !== '' && text.length > 1 && text.startsWith(mark) && text.endsWith(mark);
  return isQuoted ? { value: text.slice(1, -1), quote: mark } : { value: text, quote: '' };
}

/** Whether a line of the craft sets a parameter for this pack. */
function isSetHere(view: CraftView, path: string): boolean {
  const packs = view.craft.packs().filter((pack) => pack !== view.pack);
  return (
    view.catalog.parameter(path) !== undefined &&
    view.isSet(path) &&
    !packs.some((pack) => path.startsWith(`pack.${pack}.`))
  );
}
