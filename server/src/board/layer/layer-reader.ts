import type { Catalog } from '../../catalog/catalog';
import type { Forms } from '../../catalog/model/board-forms';
import { type KeptBeside, nothingBeside } from '../kept/accepted';
import type { ListedSetting, Listing } from '../listing/listing';
import { readListing } from '../listing/read-listing';
import { settingKey } from '../listing/setting-key';
import type { Profile } from '../profile/profile';
import { withItems } from '../profile/with-items';
import { acceptancesIn, unmatchedIn, withBeside } from './acceptances';
import { type Acceptances, type BoardLayer, keepListing, type LayerSetting, statedAnywhere } from './layer';
import { patchedSettings } from './patched-line';
import { ScriptLines } from './script-lines';
import { TextLines } from './text-lines';

/** Reads a board's text again after each edit: of most edits, only the line that changed. */
export class LayerReader {
  /** Those of the text as it was opened: a half-typed line does not turn the reading over. */
  private forms: Forms | null;
  private asOpened: ReadonlyMap<string, string> | null = null;
  private before: BoardLayer | null = null;

  constructor(
    private readonly catalog: Catalog,
    readonly profile: Profile | null,
    private kept: KeptBeside = nothingBeside,
  ) {
    this.forms = profile?.text.forms ?? null;
  }

  /** Something else is kept beside the text from now on. */
  keep(kept: KeptBeside): void {
    this.kept = kept;
    this.before = null;
  }

  read(text: string): BoardLayer {
    const lines = new TextLines(text);
    const layer = this.patched(text, lines) ?? this.readAnew(text, lines);
    this.before = layer;
    return layer;
  }

  private readAnew(text: string, lines: TextLines): BoardLayer {
    const listing = this.listing(text);
    if (this.profile === null) this.forms = listing.settings.length === 0 ? null : listing.forms;
    const settings = listing.settings.map((setting) => placed(setting, lines));
    const comments = listing.comments.map((at) => lines.rangeOf(at));
    const inComments = acceptancesIn(comments, lines.texts, settings);
    const acceptances = withBeside(inComments, this.kept.accepted, settings);
    const script = this.scriptLines(settings, acceptances).all();
    const layer = {
      text,
      texts: lines.texts,
      profile: this.profile,
      forms: listing.forms,
      settings,
      lines: script,
      acceptances,
      kept: this.kept,
      unmatched: unmatchedIn(this.kept.accepted, settings, script),
      headings: listing.headings.map(({ groups, at }) => ({ groups, at: lines.rangeOf(at) })),
      breaksAt: listing.breaksAt,
      left: listing.left.map(({ at, reason }) => ({ at: lines.rangeOf(at), reason })),
      beside: [
        ...listing.comments,
        ...listing.echoes,
        ...[...listing.openings, ...listing.closings].map(({ at }) => at),
      ].map((at) => lines.rangeOf(at)),
      asOpened: this.opened(settings),
      refused: listing.refused,
    };
    keepListing(layer, listing);
    return layer;
  }

  private scriptLines(settings: readonly LayerSetting[], acceptances: Acceptances): ScriptLines {
    return new ScriptLines(this.profile, this.catalog, settings, acceptances);
  }

  /** The values of the text as it was first read; a profile says more than they could. */
  private opened(settings: readonly LayerSetting[]): ReadonlyMap<string, string> | null {
    if (this.profile !== null || settings.length === 0) return null;
    this.asOpened ??= new Map(settings.map((setting) => [settingKey(setting), setting.value]));
    return this.asOpened;
  }

  /** By the forms in use, unless they are found and this text is plainly another one. */
  private listing(text: string): Listing {
    const read = withItems(readListing(text, this.forms), this.profile);
    const isOther = this.profile === null && this.forms !== null && read.understood < 0.5;
    return isOther ? readListing(text, null) : read;
  }

  /** The layer with one line changed; null where more may be another now. */
  private patched(text: string, { texts }: TextLines): BoardLayer | null {
    const { before, forms } = this;
    if (before === null || forms === null || before.refused !== null) return null;
    const number = onlyChange(before.texts, texts);
    if (number === null) return null;
    const patch = patchedSettings(before, number, texts[number] ?? '', forms);
    if (patch === null) return null;
    const isRenamed = (index: number, name: string) => name !== before.settings[index]?.name;
    // What is accepted beside the text is known by names.
    if (this.kept.accepted.length > 0 && [...patch].some(([index, { name }]) => isRenamed(index, name)))
      return null;
    const settings = [...before.settings];
    for (const [index, setting] of patch) settings[index] = setting;
    const { acceptances } = before;
    const script = this.scriptLines(settings, acceptances);
    const lines = [...before.lines];
    for (const [index, { name }] of patch) {
      // What a setting of another name held together with others is without it now.
      const were = isRenamed(index, name)
        ? this.scriptLines(before.settings, acceptances).together(index)
        : [];
      for (const one of [...were, ...script.together(index)]) lines[one] = script.lineAt(one);
    }
    return { ...before, text, texts, settings, lines };
  }
}

function placed(
  { groups, name, occurrence, item, value, style, at, stated, packedIn }: ListedSetting,
  lines: TextLines,
): LayerSetting {
  return {
    groups,
    name,
    occurrence,
    ...(item === undefined ? {} : { item }),
    value,
    style,
    at: { name: lines.rangeOf(at.name), value: lines.rangeOf(at.value) },
    stated: statedAnywhere(stated),
    ...(packedIn === undefined ? {} : { packedIn }),
  };
}

/** The number of the one line that differs; null where none does or more do. */
function onlyChange(before: readonly string[], after: readonly string[]): number | null {
  if (before.length !== after.length) return null;
  let changed: number | null = null;
  for (const [number, text] of after.entries()) {
    if (text === before[number]) continue;
    if (changed !== null) return null;
    changed = number;
  }
  return changed;
}
