import type { BoardLayer } from '../../../board/layer/layer';
import { unitFor } from '../../../board/meaning/counting';
import { Speller } from '../../../board/meaning/spelling';
import type { Catalog, FoundParameter } from '../../../catalog/catalog';
import { parseQuantity } from '../../../units/quantity';
import { fromBase, unitOf } from '../../../units/unit';
import { partsOf } from '../held';
import type { BoardNames } from './board-names';

/** One setting of the text with what it means. */
interface SettingOfText {
  readonly found: FoundParameter;
  readonly speller: Speller;
  /** As they stand in the text, in the order of the parameter's parts; empty where they don't. */
  readonly raw: readonly string[];
  /** As the script that the text comes to says it. */
  readonly said: string | null;
}

/** Values that the catalogue counts and calls in its own way, as the board writes them. */
export class BoardValues {
  private readonly known = new Map<string, SettingOfText | null>();
  private readonly lineOf: ReadonlyMap<string, number>;

  constructor(
    private readonly layer: BoardLayer,
    private readonly catalog: Catalog,
    private readonly names: BoardNames,
  ) {
    this.lineOf = new Map(
      layer.lines.flatMap(({ script, spans }, index) =>
        spans === null ? [] : [[script.slice(spans.name.start, spans.name.end), index]],
      ),
    );
  }

  /**
   * A number with its unit, as the board writes it. `paths`: what the sentence is about, its own setting first; what
   * stands there is told as it stands, and any other number of that kind as the own setting counts it.
   */
  quantity(text: string, number: string, paths: readonly string[]): string | null {
    const given = parseQuantity(text);
    if (given === undefined) return null;
    for (const path of paths) {
      const standing = this.standing(path);
      const raw = standing?.raw.find((one, part) =>
        isShownAs(number, text, standing.speller.numberOf(part, one)),
      );
      if (raw !== undefined && isAlike(standing?.found, text)) return raw;
    }
    const own = paths.map((path) => this.standing(path)).find((one) => isAlike(one?.found, text));
    return own?.speller.shownNumber(0, given.value) ?? null;
  }

  /** Whether the board counts numbers of a unit as a sentence does, so that none needs to be told twice. */
  isCountedAs(unit: string, paths: readonly string[]): boolean {
    return this.quantity(`7531 ${unit}`, '7531', paths) === '7531';
  }

  /** One of our words as the board writes it for a setting; null where it has none of its own. */
  word(word: string, path: string): string | null {
    return this.standing(path)?.speller.shownWord(word) ?? null;
  }

  /** `yes` for `on`; null where a setting is not turned on and off. */
  flag(isOn: boolean, path: string): string | null {
    const standing = this.standing(path);
    if (standing?.found.parameter.kind !== 'flag') return null;
    const spelled = standing.speller.write({ kind: 'flag', value: isOn });
    return spelled.kind === 'texts' ? (spelled.texts[0] ?? null) : null;
  }

  /** What stands in the text, where a script would write that; null where it is another value. */
  standingAs(said: string, path: string): string | null {
    const standing = this.standing(path);
    if (standing === null || standing.said !== said || standing.raw.length === 0) return null;
    const { kind } = standing.found.parameter;
    // On and off are plain words of a sentence.
    if (kind === 'quantity' || kind === 'count' || kind === 'text' || kind === 'flag') return null;
    return standing.raw.join(kind === 'range' ? ' to ' : ', ');
  }

  private standing(path: string): SettingOfText | null {
    const known = this.known.get(path);
    if (known !== undefined) return known;
    const made = this.standingOf(path);
    this.known.set(path, made);
    return made;
  }

  private standingOf(path: string): SettingOfText | null {
    const { profile, settings, lines } = this.layer;
    const held = this.names.heldAt(path);
    const found = this.catalog.parameter(path);
    if (profile === null || held === null || found === undefined) return null;
    const line = lines[this.lineOf.get(path) ?? -1];
    const value = line?.spans?.value;
    const said = line === undefined || value === undefined ? null : line.script.slice(value.start, value.end);
    const raw = partsOf(this.layer, profile, held).map((part) => settings[part]?.value ?? '');
    return { found, speller: new Speller(held.meaning, found, profile.manner), raw, said };
  }
}

/** Whether a number in a sentence is a value, to as many digits as the sentence shows. */
function isShownAs(number: string, text: string, value: number | null): boolean {
  if (value === null) return false;
  const digits = number.replace(/^-?0*\.?0*/, '').replace('.', '').length;
  const shown = fromBase(value, unitOf(text.slice(number.length).trim()));
  return Number(shown.toPrecision(Math.min(15, Math.max(digits, 3)))) === Number(number);
}

function isAlike(found: FoundParameter | undefined, text: string): boolean {
  const given = parseQuantity(text);
  if (found === undefined || given === undefined || !isCounted(found)) return false;
  const { dimension } = unitOf(unitFor(found.parameter));
  return JSON.stringify(dimension) === JSON.stringify(given.dimension);
}

/** Whether it is numbers with units that are spelled. */
function isCounted({ parameter: { kind } }: FoundParameter): boolean {
  return kind === 'quantity' || kind === 'range' || kind === 'curve';
}
