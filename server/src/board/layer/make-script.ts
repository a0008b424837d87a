import type { Catalog } from '../../catalog/catalog';
import { ownGroup, pathText, stepsOf } from '../../language/path-text';
import { type AcceptedBeside, type KeptBeside, nothingBeside } from '../kept/accepted';
import type { Listing, Stretch } from '../listing/listing';
import { readListing } from '../listing/read-listing';
import { forbidden } from '../meaning/forbidden';
import type { Profile } from '../profile/profile';
import { type BoardLayer, keptListing, type LayerLine } from './layer';
import { LayerReader } from './layer-reader';
import { TextLines, type TextRange } from './text-lines';

/** A craft script made from a capture, with what became of its lines. */
export interface MadeScript {
  readonly text: string;
  /** Settings that parameters stand for. */
  readonly understood: number;
  /** Settings that the script keeps as the board's own. */
  readonly own: number;
  /** Lines that could not be read; the script keeps them as comments. */
  readonly left: readonly LeftInScript[];
  /** Why the capture was not read at all; a sentence. */
  readonly refused: string | null;
}

/** A line of the capture (0-based), its text, and why it is no setting: a sentence. */
export interface LeftInScript {
  readonly line: number;
  readonly text: string;
  readonly reason: string;
}

/** Makes a craft script of a board's text. Nothing is lost: what no parameter stands for is the board's own. */
export function makeScript(
  profile: Profile | null,
  catalog: Catalog,
  capture: string,
  kept: KeptBeside = nothingBeside,
): MadeScript {
  const layer = new LayerReader(catalog, profile, kept).read(capture);
  const listing = keptListing(layer) ?? readListing(capture, layer.forms);
  const rows = rowsOf(listing, layer);
  const own = rows.filter(({ path }) => path[0] === ownGroup);
  const left = listing.left.map(({ number, at, reason }) => ({
    line: number,
    text: capture.slice(at.start, at.end),
    reason,
  }));
  const title = profile?.title ?? 'board that nobody has described';
  const parts = [
    [
      `# Made from text captured from a ${title}. Propellers off at the bench.`,
      ...left.map(({ text }) => `# not understood: ${shown(text)}`),
      ...(kept.fault === null ? [] : [`# what is accepted beside the text can't be read: ${kept.fault}`]),
      ...layer.unmatched.map(({ accepted }) => unmatchedText(accepted)),
    ],
    ...(profile === null ? [] : [['[board]', `profile = ${profile.name}`]]),
    ...sections(
      rows.filter(({ path }) => path[0] !== ownGroup && pathText(path) !== 'board.profile'),
      catalog,
    ),
    ...sections(own, catalog),
  ];
  const text = parts.map((part) => part.map((line) => `${line}\n`).join('')).join('\n');
  return {
    text,
    understood: listing.settings.length - own.length,
    own: own.length,
    left,
    refused: listing.refused,
  };
}

/** Kept as a comment that accepts nothing. */
function unmatchedText({ setting: { groups, name }, check, reason }: AcceptedBeside): string {
  return `# not taken over: accept ${check} of ${shown([...groups, name].join(' '))}: ${reason}`;
}

interface SettingLine {
  readonly path: readonly string[];
  /** With the acceptance of a risk of it behind it. */
  readonly value: string;
  /** Comments that stood right above it. */
  readonly above: readonly string[];
}

/** A row for each line that sets something; of a parameter that stands there twice, the last one counts. */
function rowsOf(listing: Listing, { lines }: BoardLayer): readonly SettingLine[] {
  const comments = new Comments(listing, lines);
  const rows = new Map<string, SettingLine>();
  for (const [index, { script, spans, acceptance }] of lines.entries()) {
    const setting = listing.settings[index];
    if (setting === undefined || spans === null) continue;
    const path = script.slice(spans.name.start, spans.name.end);
    const accepted = acceptance === null ? '' : ` # ${shown(acceptance.words)}`;
    const value = script.slice(spans.value.start, spans.value.end) + accepted;
    rows.set(path, { path: stepsOf(path), value, above: comments.above(setting.at.name) });
  }
  return [...rows.values()];
}

/** The comments of a listing, each told once: above the setting that follows it. What accepts a risk is in its line. */
class Comments {
  private next = 0;
  private readonly accepting: ReadonlySet<string>;
  private readonly places: TextLines;

  constructor(
    private readonly listing: Listing,
    lines: readonly LayerLine[],
  ) {
    this.places = new TextLines(listing.text);
    this.accepting = new Set(
      lines.flatMap(({ acceptance }) => (acceptance?.at ? [keyOf(acceptance.at)] : [])),
    );
  }

  above({ start }: Stretch): readonly string[] {
    const { comments, text, forms } = this.listing;
    const found: string[] = [];
    for (let at = comments[this.next]; at !== undefined && at.start < start; at = comments[this.next]) {
      this.next += 1;
      if (this.accepting.has(keyOf(this.places.rangeOf(at)))) continue;
      const comment = text.slice(at.start, at.end);
      const mark = forms.comments.find((one) => comment.startsWith(one)) ?? '';
      found.push(`# ${shown(comment.slice(mark.length).trim())}`);
    }
    return found;
  }
}

function keyOf({ start }: TextRange): string {
  return `${start.line}:${start.character}`;
}

/** Settings in the catalogue's order, then as they stood, section by section. */
function sections(rows: readonly SettingLine[], catalog: Catalog): readonly (readonly string[])[] {
  const order = new Map([...catalog.parameters.keys()].map((name, index) => [name, index]));
  const placeOf = ({ path }: SettingLine) =>
    order.get(catalog.parameter(pathText(path))?.name ?? '') ?? order.size;
  const bySection = new Map<string, string[]>();
  for (const { path, value, above } of rows.toSorted((one, other) => placeOf(one) - placeOf(other))) {
    const section = pathText(path.slice(0, -1));
    const lines = bySection.get(section) ?? [`[${section}]`];
    lines.push(...above, `${pathText(path.slice(-1))} = ${value}`);
    bySection.set(section, lines);
  }
  return [...bySection.values()];
}

/** A captured line as a comment may hold it: what would break or turn a line is shown by its number. */
function shown(text: string): string {
  return [...text]
    .map((character) =>
      forbidden.test(character) && character !== '\t'
        ? `\\u{${(character.codePointAt(0) ?? 0).toString(16)}}`
        : character,
    )
    .join('');
}
