import type { BoardSetting } from '../../catalog/model/board-profile';
import type { LeftLine, ListedSetting, Listing, SettingKey, Stretch } from '../listing/listing';
import { settingKey } from '../listing/setting-key';
import type { Profile } from '../profile/profile';
import { withItems } from '../profile/with-items';
import { type Entries, type Entry, holdsEntry } from '../writing/entries';
import type { LeftOut } from '../writing/left-out';
import {
  type BesideChange,
  besideChange,
  type SaidBeside,
  saidBeside,
  saidInRow,
  saidOfAnother,
} from './beside';
import { cutOff } from './cut-off';

/**
 * What became of one setting: `default`: the listing leaves it out, as it does with what is at its default; `beside`:
 * its value is the same, what its line says beside it is not.
 */
export type Verdict = 'different' | 'beside' | 'missing' | 'twice' | 'default' | 'extra' | 'equal';

/** In the order in which they are reported. */
const verdicts: readonly Verdict[] = ['different', 'beside', 'missing', 'twice', 'default', 'extra', 'equal'];

export interface ProofRow extends SettingKey {
  /** The setting of the craft; null where the craft says nothing of it. */
  readonly path: string | null;
  /** In the board's spelling; null: the craft says nothing. */
  readonly wanted: string | null;
  /** null: the capture says nothing. */
  readonly held: string | null;
  readonly verdict: Verdict;
  /** What its line says otherwise beside the value; null where nothing. */
  readonly beside: BesideChange | null;
  /** Its value in the capture; null where it is not there. */
  readonly at: Stretch | null;
}

/** What a craft says against what a capture shows that its board holds. */
export interface Proof {
  /** What a script sets by hand and the capture can't show: safety first, each with its reason. */
  readonly notCompared: readonly LeftOut[];
  /** Paths that were named as knowingly left, as far as something of them would have counted. */
  readonly excepted: readonly string[];
  /** By verdict, then in the order of the capture. */
  readonly rows: readonly ProofRow[];
  readonly counts: Readonly<Record<Verdict, number>>;
  /** Lines of the capture that could not be read. */
  readonly left: readonly LeftLine[];
  /** How the capture shows that part of it is missing, as the end of a sentence; null where it looks whole. */
  readonly cutOff: string | null;
  /** Whether about half is missing and nobody has said that the listing leaves out what is at its default: it may. */
  readonly seemsToOmit: boolean;
  /** Whether all that a script sets by hand is there, and nothing else is wrong. */
  readonly isWhole: boolean;
}

export interface ProofQuestion {
  readonly profile: Profile | null;
  readonly entries: Entries;
  /** The board's text that the craft includes, if it does. */
  readonly captured: Listing | null;
  readonly capture: Listing;
  /** Paths of settings that are knowingly left. */
  readonly except: ReadonlySet<string>;
  /** Whether settings of which the craft says nothing count. */
  readonly ignoresExtra: boolean;
  /** Whether the listing shows only what differs from the defaults, whatever the profile says. */
  readonly omitsDefaults?: boolean;
}

/** Holds what a craft asks for against a capture. */
export function prove(question: ProofQuestion): Proof {
  const { profile, entries, captured, except, ignoresExtra } = question;
  const capture = withItems(question.capture, profile);
  const omitsDefaults = question.omitsDefaults === true || profile?.text.omitsDefaults === true;
  const wanted = new Map(entries.entries.map((entry) => [settingKey(entry), entry]));
  const known = new KnownBeside(captured === null ? null : withItems(captured, profile), profile);
  const held = capture.settings.map((setting) => heldRow(setting, wanted, known));
  const seen = new Set(capture.settings.map(settingKey));
  const absent = entries.entries.filter((entry) => !seen.has(settingKey(entry)));
  const unheld = absent.map((entry) => (omitsDefaults ? omittedRow(entry, known) : missingRow(entry)));
  const unknown = unheld.flatMap(({ left }) => left ?? []);
  const byHand = [...entries.left.filter(isOfBoard), ...unknown];
  const isExcepted = ({ path }: { readonly path: string | null }) => path !== null && except.has(path);
  const all = [...held, ...unheld.flatMap(({ row }) => row ?? [])];
  const rows = all.filter((row) => row.verdict === 'equal' || !isExcepted(row));
  const counts = countsOf(rows);
  const cut = cutOff(capture);
  const notCompared = byHand.filter((one) => !isExcepted(one));
  const wrong =
    counts.different + counts.beside + counts.missing + counts.twice + (ignoresExtra ? 0 : counts.extra);
  return {
    notCompared,
    excepted: [...new Set([...byHand, ...all].filter(isExcepted).flatMap(({ path }) => path ?? []))],
    rows: verdicts.flatMap((verdict) => rows.filter((row) => row.verdict === verdict)),
    counts,
    left: capture.left,
    cutOff: cut,
    seemsToOmit: !omitsDefaults && cut === null && isAboutHalf(counts),
    isWhole: notCompared.length === 0 && wrong === 0 && cut === null && capture.left.length === 0,
  };
}

/** Only what a board holds can be in its text. */
function isOfBoard({ heldBy, isByHand, reason }: LeftOut): boolean {
  return isByHand && (heldBy === 'board' || reason !== null);
}

function heldRow(setting: ListedSetting, wanted: ReadonlyMap<string, Entry>, known: KnownBeside): ProofRow {
  const { groups, name, occurrence, item, value, at } = setting;
  const row = { groups, name, occurrence, item, held: value, at: at.value, beside: null };
  const entry = wanted.get(settingKey(setting));
  if (entry === undefined) {
    const isAgain = occurrence > 1 && wanted.has(settingKey({ ...setting, occurrence: 1 }));
    return { ...row, path: null, wanted: null, verdict: isAgain ? 'twice' : 'extra' };
  }
  const isSame = holdsEntry(entry, value, setting.stated);
  const compared = { ...row, path: entry.path, wanted: entry.value };
  if (!isSame) return { ...compared, verdict: 'different' };
  const beside = besideChange(known.of(setting), setting);
  return { ...compared, beside, verdict: beside === null ? 'equal' : 'beside' };
}

/** What is known of what the board's lines say beside their values. */
class KnownBeside {
  private readonly captured: ReadonlyMap<string, ListedSetting>;

  constructor(
    captured: Listing | null,
    private readonly profile: Profile | null,
  ) {
    this.captured = new Map(captured?.settings.map((setting) => [settingKey(setting), setting]));
  }

  of(setting: ListedSetting): SaidBeside {
    const before = this.captured.get(settingKey(setting));
    if (before !== undefined)
      return before.value === setting.value ? saidBeside(before) : saidOfAnother(before);
    const row = this.rowOf(setting);
    return row === undefined ? {} : saidInRow(row, setting);
  }

  /** As the profile or the captured text states it; null where neither does. */
  defaultOf(key: SettingKey): string | null {
    return this.rowOf(key)?.default ?? this.captured.get(settingKey(key))?.stated?.default ?? null;
  }

  private rowOf({ groups, name, occurrence, item }: SettingKey): BoardSetting | undefined {
    return this.profile?.find(groups, name, occurrence, item)?.row.setting;
  }
}

interface Absent {
  readonly row?: ProofRow;
  readonly left?: LeftOut;
}

function missingRow(entry: Entry): Absent {
  return { row: { ...absentRow(entry), verdict: 'missing' } };
}

/** A setting that the capture does not show, for it is at its default. */
function omittedRow(entry: Entry, known: KnownBeside): Absent {
  const { path, groups, name, occurrence, item } = entry;
  const byDefault = known.defaultOf(entry);
  if (byDefault === null) {
    const reason = 'the listing leaves out what is at its default, and nobody has said what that is';
    const settings = [{ groups, name, occurrence, item }];
    return { left: { path, settings, title: path, reason, heldBy: 'board', urgency: 2, isByHand: true } };
  }
  const isSame = holdsEntry(entry, byDefault);
  return { row: { ...absentRow(entry), held: byDefault, verdict: isSame ? 'default' : 'different' } };
}

function absentRow({ groups, name, occurrence, item, path, value }: Entry): Omit<ProofRow, 'verdict'> {
  return { groups, name, occurrence, item, path, wanted: value, held: null, at: null, beside: null };
}

/** Fewer may have been taken out of a capture by hand. */
const leastMissing = 4;

function isAboutHalf({ missing, equal, beside, different }: Proof['counts']): boolean {
  const there = equal + beside + different;
  return there > 0 && missing >= leastMissing && 2 * missing >= 0.9 * (missing + there);
}

function countsOf(rows: readonly ProofRow[]): Record<Verdict, number> {
  const counts = { different: 0, beside: 0, missing: 0, twice: 0, default: 0, extra: 0, equal: 0 };
  for (const { verdict } of rows) counts[verdict] += 1;
  return counts;
}
