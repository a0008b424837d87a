import type { Catalog } from '../catalog/catalog';
import type { Entry } from './entries';
import { lineFormOf } from './line-form';
import { meaningOf } from './meaning/meanings';
import { Speller } from './meaning/spelling';
import { keyOf } from './one-group';
import type { Manner, Profile, RowFound } from './profile/profile';
import { type PlacedBoardLine, readBoardLines, type SettingLine } from './read-lines';

/** What values are compared by. */
interface Judge {
  readonly profile: Profile;
  readonly catalog: Catalog;
}

/** A settings line of a capture with its number (0-based). */
export interface CapturedSetting extends SettingLine {
  readonly number: number;
}

export interface ProofRow {
  readonly group: string;
  readonly name: string;
  /** The parameter, where the script sets it or the profile knows it. */
  readonly path: string | null;
  /** In the board's spelling; null: the script says nothing. */
  readonly wanted: string | null;
  /** null: the capture says nothing. */
  readonly held: string | null;
  readonly verdict: 'equal' | 'different' | 'missing' | 'extra' | 'repeated';
  /** Line of the capture, 0-based. */
  readonly line: number | null;
}

/** What a script says against what a capture shows that the board holds. */
export interface Proof {
  readonly rows: readonly ProofRow[];
  /** How the capture shows that part of it is missing; null where it looks whole. */
  readonly truncated: string | null;
  /** Lines that are nothing the profile knows, 0-based. */
  readonly unknown: readonly number[];
  readonly counts: Readonly<Record<ProofRow['verdict'], number>>;
  readonly isEqual: boolean;
}

/** Holds the lines that a script asks for against a capture. */
export function prove(profile: Profile, catalog: Catalog, entries: readonly Entry[], capture: string): Proof {
  const judge: Judge = { profile, catalog };
  const lines = readBoardLines(profile, capture);
  const settings = lines.flatMap(({ number, line }) =>
    line.kind === 'setting' ? [{ ...line, number }] : [],
  );
  const wanted = new Map(entries.map((entry) => [keyOf(entry.group, entry.name), entry]));
  const seen = new Set<string>();
  const rows: ProofRow[] = [];
  for (const setting of settings) {
    const key = keyOf(setting.group, setting.name.text);
    const entry = wanted.get(key);
    rows.push(seen.has(key) ? repeated(setting, entry) : rowOf(judge, setting, entry));
    seen.add(key);
  }
  for (const [key, { group, name, path, value }] of wanted) {
    if (!seen.has(key))
      rows.push({ group, name, path, wanted: value, held: null, verdict: 'missing', line: null });
  }
  const counts = { equal: 0, different: 0, missing: 0, extra: 0, repeated: 0 };
  for (const { verdict } of rows) counts[verdict] += 1;
  const truncated = truncation(profile, lines, settings.length);
  const unknown = lines.flatMap(({ number, line }) => (line.kind === 'unknown' ? [number] : []));
  const isEqual = counts.equal === rows.length && truncated === null && unknown.length === 0;
  return { rows, truncated, unknown, counts, isEqual };
}

function rowOf(judge: Judge, setting: CapturedSetting, entry: Entry | undefined): ProofRow {
  const { group, name, value, found, number } = setting;
  const row = { group, name: name.text, held: value.text, line: number };
  if (entry === undefined)
    return { ...row, path: found?.row.setting.means ?? null, wanted: null, verdict: 'extra' };
  const isSame = isEqualText(entry.value, value.text, found, judge);
  return { ...row, path: entry.path, wanted: entry.value, verdict: isSame ? 'equal' : 'different' };
}

function repeated(
  { group, name, value, found, number }: CapturedSetting,
  entry: Entry | undefined,
): ProofRow {
  const path = entry?.path ?? found?.row.setting.means ?? null;
  const wanted = entry?.value ?? null;
  return { group, name: name.text, path, wanted, held: value.text, verdict: 'repeated', line: number };
}

/** Equal as texts, or as numbers within half of the board's step. */
function isEqualText(one: string, other: string, found: RowFound | undefined, judge: Judge): boolean {
  if (one === other) return true;
  const [first, second] = [one, other].map((number) => numberOf(number, judge.profile.manner));
  if (first === undefined || second === undefined || first === null || second === null) return false;
  const grain = found === undefined ? null : grainOf(found, judge);
  const spare = grain === null ? 1e-9 * Math.max(Math.abs(first), Math.abs(second)) : grain / 2;
  return Math.abs(first - second) < spare;
}

function numberOf(text: string, { decimal }: Manner): number | null {
  const plain = decimal === ',' ? text.replace(',', '.') : text;
  return /^[+-]?\d{1,15}(\.\d{1,15})?$/.test(plain) ? Number(plain) : null;
}

/** The board's step in its own numbers; null where it has none. */
function grainOf({ row, member }: RowFound, { catalog, profile }: Judge): number | null {
  const meaning = meaningOf(profile, row);
  const found = catalog.parameter(meaning?.means.replace(/<[a-z]+>/, () => member ?? 'any') ?? '');
  if (meaning === undefined || found === undefined) return null;
  return new Speller(meaning, found, profile.manner).grain(meaning.parts.indexOf(row));
}

/** Whether the end of a capture is there, and all that it counts. */
function truncation(profile: Profile, lines: readonly PlacedBoardLine[], settings: number): string | null {
  if (lineFormOf(profile)?.closing.length === 0) return null;
  const closings = lines.flatMap(({ line }) => (line.kind === 'closing' ? [line] : []));
  if (closings.length === 0) return 'its closing line is missing';
  const count = closings.find((line) => line.count !== null)?.count ?? null;
  if (count === null || count === settings) return null;
  return `its closing line counts ${count} settings, and ${settings} are there`;
}
