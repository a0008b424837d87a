import type { FoundParameter } from '../../catalog/catalog';
import type { Craft } from '../../craft/craft';
import { fileName } from '../../craft/include-path';
import type { PlacedLine, Setting } from '../../craft/setting';
import { valueText } from '../../craft/value-text';
import { CraftView } from '../../craft/view';
import { figureOf, figureSource, figureSources } from '../../figures';
import type { Figure } from '../../figures/figure';
import { notKnown } from '../../sheet/not-known';
import { figureText, intervalText } from '../../sheet/which-pack';
import { withheldFigures } from '../../sheet/withheld-figures';
import { code, escaped } from '../markdown';
import type { Snapshot } from '../snapshot';
import { otherUnitText } from './quantity-text';

/** What a parameter holds on this craft, pack by pack where they differ, and where that was set. */
export function valueHere(snapshot: Snapshot, found: FoundParameter): readonly string[] {
  const shown = snapshot.craft.packsOrNone().map((pack) => {
    const setting = snapshot.craft.setting(found.path, pack);
    return { pack, text: setting === undefined ? null : settingText(snapshot, setting) };
  });
  const [first] = shown;
  if (first === undefined || shown.every(({ text }) => text === null)) return [];
  if (shown.every(({ text }) => text === first.text)) return [`**Here:** ${first.text}`];
  const lines = shown.map(({ pack, text }) => `- **With ${escaped(pack ?? '')}:** ${text ?? 'not set'}`);
  return [lines.join('\n')];
}

function settingText(snapshot: Snapshot, setting: Setting): string {
  const { value, found, origin, overridden } = setting;
  const elsewhere = origin.script === snapshot.script ? '' : `, set in ${placeText(snapshot, origin)}`;
  const over = overridden.map((line) => `${writtenText(line)} in ${placeText(snapshot, line)}`);
  const inPlace = over.length === 0 ? '' : `, in place of ${over.join(' and ')}`;
  if (value === null) return `set, but its value could not be understood${elsewhere}${inPlace}`;
  const translated = otherUnitText(value, found);
  return `${code(valueText(value, found.parameter))}${translated === null ? '' : ` ${translated}`}${elsewhere}${inPlace}`;
}

/** A line's value as it was written, for a line that another one overrides. */
export function writtenValue({ line: { statement, text } }: PlacedLine): string | null {
  if (statement.kind !== 'setting' || statement.value === null) return null;
  return text.slice(statement.value.start, statement.value.end);
}

function writtenText(line: PlacedLine): string {
  const written = writtenValue(line);
  return written === null ? 'what stands' : code(written);
}

/** `line 12`, or `club-habits.craft, line 12` for another text than the one in view. */
export function placeName(snapshot: Snapshot, { script, line }: PlacedLine): string {
  const where = script === snapshot.script ? '' : `${fileName(script.uri)}, `;
  const number = script.lineNumber(line);
  // A board's text has its own lines, of which only some set something.
  const inText = snapshot.layer(script.uri)?.settings[number]?.at.name.start.line;
  return `${where}line ${(inText ?? number) + 1}`;
}

function placeText(snapshot: Snapshot, line: PlacedLine): string {
  return escaped(placeName(snapshot, line));
}

/** A hover is no sheet: the figures closest to the parameter are enough. */
const mostFigures = 4;

/** Figures that hang on a parameter, with a pack in view. */
export function effectsOf(
  snapshot: Snapshot,
  found: FoundParameter,
  inView: string | null,
): readonly string[] {
  const pack = packOf(found) ?? inView;
  const view = new CraftView(snapshot.craft, pack);
  const figures = figureSources
    .filter(({ from }) => from.includes(found.name) || from.includes(found.path))
    .flatMap(({ id }) => figureOf(view, id) ?? []);
  return [
    ...figuresText(figures.slice(0, mostFigures), snapshot, pack),
    ...unknownText(snapshot.craft, found),
  ];
}

/** So many sentences about what is not known are enough. */
const mostUnknown = 2;

/** Figures that hang on a parameter, or wait for it, and can't be computed: with what would make them known. */
function unknownText(craft: Craft, { name, path }: FoundParameter): readonly string[] {
  const waiting = withheldFigures(craft).filter(({ id, needs, refused }) => {
    const from = figureSource(id)?.from ?? [];
    return needs.includes(path) || refused.includes(path) || from.includes(name) || from.includes(path);
  });
  if (waiting.length === 0) return [];
  const sentences = notKnown(craft, waiting).slice(0, mostUnknown);
  return [sentences.map(({ text }) => `- ${escaped(text)}`).join('\n')];
}

/** Figures of a pack alone: what its own settings come to. */
export function packFigureTexts(snapshot: Snapshot, pack: string): readonly string[] {
  const view = new CraftView(snapshot.craft, pack);
  const own = figureSources.filter(({ from }) => from[0]?.startsWith('pack.<name>.') === true);
  return figuresText(
    own.flatMap(({ id }) => figureOf(view, id) ?? []),
    snapshot,
    null,
  );
}

/** Each with its reason; what they assume is said once for all of them. */
function figuresText(figures: readonly Figure[], snapshot: Snapshot, pack: string | null): readonly string[] {
  if (figures.length === 0) return [];
  const isOne = pack === null || snapshot.craft.packs().length < 2;
  const assumed = [...new Set(figures.flatMap((figure) => figure.assumed))];
  return [
    ...(isOne ? [] : [`**With ${escaped(pack)}:**`]),
    figures.map((figure) => `- ${figureLine(figure)}`).join('\n'),
    ...(assumed.length === 0 ? [] : [`Assumed: ${escaped(assumed.join('; '))}.`]),
  ];
}

function figureLine(figure: Figure): string {
  const span = intervalText(figure);
  const about = span === null ? '' : ` (${span})`;
  return `${escaped(figure.title)}: **${escaped(figureText(figure))}**${escaped(about)} = ${escaped(figure.why)}`;
}

/** The pack that a parameter belongs to by its own name. */
export function packOf({ name, keys }: FoundParameter): string | null {
  return name.startsWith('pack.<name>.') ? (keys[0] ?? null) : null;
}
