import type { FoundParameter } from '../catalog/catalog';
import { fileName } from '../craft/include-path';
import type { PlacedLine, Setting } from '../craft/setting';
import type { Value } from '../craft/value';
import { valueText } from '../craft/value-text';
import { CraftView } from '../craft/view';
import { figureOf, figureSources } from '../figures';
import { figureText } from '../sheet/which-pack';
import { findDimensionName } from '../units/dimension-names';
import { exactText } from '../units/quantity';
import { code, escaped } from './markdown';
import type { Snapshot } from './snapshot';

/** What a parameter holds on this craft, pack by pack where they differ, and where that was set. */
export function valueHere(snapshot: Snapshot, found: FoundParameter): readonly string[] {
  const packs = snapshot.craft.packsOrNone();
  const settings = packs.map((pack) => ({ pack, setting: snapshot.craft.setting(found.path, pack) }));
  const shown = settings.map(({ setting }) => (setting === undefined ? null : settingText(setting)));
  const [first] = settings;
  if (first === undefined || shown.every((text) => text === null)) return [];
  if (shown.every((text) => text === shown[0]))
    return [`**Here:** ${shown[0]}${originText(snapshot, first.setting)}`];
  return settings.map(({ pack, setting }, index) => {
    const text = shown[index] ?? 'not set';
    return `**With pack ${escaped(pack ?? '')}:** ${text}${originText(snapshot, setting)}`;
  });
}

function settingText({ value, found }: Setting): string {
  if (value === null) return 'set, but its value could not be understood';
  const text = valueText(value, found.parameter);
  const other = inOtherUnit(value, found);
  return other === null ? code(text) : `${code(text)} = ${code(other)}`;
}

/** The value in the next usual unit, where that says more than the first. */
export function inOtherUnit(value: Value, found: FoundParameter): string | null {
  if (value.kind !== 'quantity' || found.dimensionName === undefined) return null;
  const units = findDimensionName(found.dimensionName)?.units ?? [];
  const other = units.find((unit) => unit !== value.unit && isReadable(exactText(value.value, unit)));
  return other === undefined ? null : exactText(value.value, other);
}

/** Neither endless digits nor a row of zeros. */
function isReadable(text: string): boolean {
  const number = text.split(' ')[0] ?? '';
  return number.replace(/[-.]/g, '').length <= 6 && Math.abs(Number(number)) >= 0.01;
}

function originText(snapshot: Snapshot, setting: Setting | undefined): string {
  if (setting === undefined) return '';
  const overridden = setting.overridden.map((line) => placeText(snapshot, line));
  const over = overridden.length === 0 ? '' : `, in place of ${overridden.join(' and ')}`;
  const elsewhere =
    setting.origin.script === snapshot.script ? '' : ` (set in ${placeText(snapshot, setting.origin)})`;
  return `${elsewhere}${over}`;
}

function placeText(snapshot: Snapshot, { script, line }: PlacedLine): string {
  const where = script === snapshot.script ? '' : `${escaped(fileName(script.uri))} `;
  return `${where}line ${script.lineNumber(line) + 1}`;
}

/** Figures that hang on a parameter, with the pack in view. */
export function effectsOf(snapshot: Snapshot, found: FoundParameter): readonly string[] {
  const view = new CraftView(snapshot.craft, snapshot.pack);
  return figureSources.flatMap(({ id, title, from }) => {
    if (!from.includes(found.name) && !from.includes(found.path)) return [];
    const figure = figureOf(view, id);
    return figure === null
      ? []
      : [`${escaped(title)}: **${escaped(figureText(figure))}** (${escaped(figure.why)})`];
  });
}
