import type { Catalog } from '../../catalog/catalog';
import { valueText } from '../../craft/value-text';
import { bareLiteral } from '../../language/own-line';
import { pathText } from '../../language/path-text';
import type { SettingKey } from '../listing/listing';
import { ownPath } from '../listing/own-path';
import { nameKey, settingKey } from '../listing/setting-key';
import { type Meaning, meaningOf, namesOf } from '../meaning/meanings';
import { parameterPath } from '../meaning/parameter-path';
import { roleOfPort } from '../meaning/port-roles';
import { Speller } from '../meaning/spelling';
import { inItsUnit } from '../meaning/stated-unit';
import type { Profile, RowFound } from '../profile/profile';
import type { Acceptances, LayerAcceptance, LayerLine, LayerSetting, LayerTrouble } from './layer';

/** Turns the settings of a text into lines of a craft script. */
export class ScriptLines {
  /** The last setting of each name that has a meaning, by the board's name. */
  private readonly last = new Map<string, LayerSetting>();
  private readonly byKey = new Map<string, LayerSetting>();
  private readonly found: readonly (RowFound | undefined)[];

  constructor(
    private readonly profile: Profile | null,
    private readonly catalog: Catalog,
    private readonly settings: readonly LayerSetting[],
    private readonly acceptances: Acceptances,
  ) {
    this.found = settings.map(({ groups, name, occurrence, item }) =>
      profile?.find(groups, name, occurrence, item),
    );
    for (const [index, setting] of settings.entries())
      if (this.found[index]?.row.setting.means !== undefined) {
        this.last.set(nameKey(setting), setting);
        this.byKey.set(settingKey(setting), setting);
      }
  }

  all(): readonly LayerLine[] {
    return this.settings.map((_, index) => this.lineAt(index));
  }

  lineAt(index: number): LayerLine {
    const line = this.plainLine(index);
    const accepted = this.acceptances.size === 0 || line.spans === null ? undefined : this.acceptedAt(index);
    if (accepted === undefined) return line;
    return { ...line, script: `${line.script} # ${accepted.words}`, acceptance: accepted };
  }

  /** What stands at one of the settings that hold a parameter together counts for all of them. */
  private acceptedAt(index: number): LayerAcceptance | undefined {
    for (const part of [index, ...this.together(index)]) {
      const found = this.acceptances.get(part);
      if (found !== undefined) return found;
    }
    return undefined;
  }

  private plainLine(index: number): LayerLine {
    const setting = this.settings[index];
    const found = this.found[index];
    const nothing = { script: '', spans: null, found, trouble: null, acceptance: null };
    if (setting === undefined) return nothing;
    const { profile } = this;
    const meaning =
      profile === null || found === undefined ? undefined : (meaningOf(profile, found.row) ?? undefined);
    if (profile !== null && found !== undefined && meaning !== undefined)
      return { ...nothing, ...this.mapped(setting, profile, meaning, found) };
    const role = profile === null ? null : this.roleOf(setting, profile, found);
    if (role !== null) return { ...nothing, ...role };
    const path = pathText(ownPath(setting));
    const trouble = profile === null || found !== undefined ? null : unknown(profile, setting);
    return { ...nothing, ...scriptLine(path, bareLiteral(setting.value)), trouble };
  }

  /** What the setting of a port says; null where its word is none of the roles that are known. */
  private roleOf(
    { value }: LayerSetting,
    { board }: Profile,
    found: RowFound | undefined,
  ): Pick<LayerLine, 'script' | 'spans'> | null {
    const port = found?.row.setting.port;
    const path = port === undefined ? null : roleOfPort(board, value);
    return port === undefined || path === null ? null : scriptLine(path, port);
  }

  /** The places of settings that hold a parameter together with one of them, itself among them. */
  together(index: number): readonly number[] {
    const found = this.found[index];
    const meaning =
      this.profile === null || found === undefined ? undefined : meaningOf(this.profile, found.row);
    if (meaning === undefined || meaning.parts.length < 2) return [index];
    return this.found.flatMap((other, at) =>
      other !== undefined && other.member === found?.member && meaning.parts.includes(other.row) ? [at] : [],
    );
  }

  /** The last of a name, or the one of several that a row is about. */
  private settingOf(key: SettingKey, occurrence: number | undefined): LayerSetting | undefined {
    return occurrence === undefined ? this.last.get(nameKey(key)) : this.byKey.get(settingKey(key));
  }

  /** A parameter of several settings stands where its first one does. */
  private mapped(
    setting: LayerSetting,
    profile: Profile,
    meaning: Meaning,
    { row, member }: RowFound,
  ): Partial<LayerLine> {
    const path = parameterPath(meaning, member);
    const own = meaning.parts.indexOf(row);
    const names = namesOf(profile, meaning, member) ?? [];
    const parts = names.map((one, part) => this.settingOf(one, meaning.parts[part]?.setting.occurrence));
    const missing = names.filter((_, part) => parts[part] === undefined);
    if (missing.length > 0) {
      // What a listing leaves out is as its default has it.
      if (profile.text.omitsDefaults === true) return own > 0 ? {} : scriptLine(path, '');
      const values = { board: profile.title, path, missing: missing.map(({ name }) => name).join(', ') };
      return { trouble: { id: 'board/part-missing', values, in: 'name' } };
    }
    if (own > 0) return {};
    const parameter = this.catalog.parameter(path);
    if (parameter === undefined) return {};
    const { kind } = parameter.parameter;
    const isText = kind === 'text' || kind === 'bare';
    const unitOf = (part: number) => meaning.parts[part]?.setting.unit;
    const written = parts.map((one, part) =>
      one === undefined ? '' : spelledValue(one, unitOf(part), isText),
    );
    // The line itself counts for its own part: where it stands there twice, each tells its own value.
    written[own] = spelledValue(setting, row.setting.unit, isText);
    const understood = new Speller(meaning, parameter, profile.manner).read(written);
    if (understood.kind === 'unclear') {
      const given = written[understood.part] ?? '';
      const values = { board: profile.title, given, reason: understood.reason };
      // Set, but nobody knows to what: nothing may be said to be missing.
      return { ...scriptLine(path, ''), trouble: { id: 'board/value-unclear', values, in: 'value' } };
    }
    return scriptLine(path, valueText(understood.value, parameter.parameter));
  }
}

/** A text with its quotes: a profile says itself which ones the board writes. Around all else they mean nothing. */
function spelledValue(
  { value, style, stated }: LayerSetting,
  unit: string | undefined,
  isText: boolean,
): string {
  const isQuoted = isText && style.kind === 'quoted';
  return isQuoted ? style.mark + value + style.mark : inItsUnit(value, stated, unit);
}

function unknown({ title, rows }: Profile, { name, groups, packedIn }: LayerSetting): LayerTrouble | null {
  // A profile without rows lists nothing, so nothing can be missing from it; of a number it lists the digits that it knows.
  if (rows.length === 0 || packedIn !== undefined) return null;
  return {
    id: 'board/unknown-setting',
    values: { board: title, name, group: groups.join(' / ') },
    in: 'name',
  };
}

function scriptLine(path: string, value: string): Pick<LayerLine, 'script' | 'spans'> {
  const start = path.length + 3;
  return {
    script: `${path} = ${value}`,
    spans: { name: { start: 0, end: path.length }, value: { start, end: start + value.length } },
  };
}
