import type { Parameter } from '../catalog/model/parameter';
import { interpret } from '../craft/interpret';
import { inputKeys } from '../craft/keys';
import type { PlacedLine, Setting } from '../craft/setting';
import type { Value } from '../craft/value';
import { valueText } from '../craft/value-text';
import { CraftView } from '../craft/view';
import { figureOf, figureSources } from '../figures';
import type { Figure } from '../figures/figure';
import type { ConstantStatement, SettingStatement, ValueNode } from '../language/ast';
import type { ScriptLine } from '../language/script-line';
import { hasReferences } from '../language/value-nodes';
import { figureText, intervalText } from '../sheet/which-pack';
import { withoutTails } from '../units/number-text';
import { evaluatedText, otherUnitText } from './hover/quantity-text';
import { packOf, placeName, writtenValue } from './hover/value-here';
import type { Position, Range } from './range';
import type { Snapshot } from './snapshot';

export interface InlayHint {
  readonly position: Position;
  readonly label: string;
  readonly tooltip: string;
}

type HintText = Omit<InlayHint, 'position'>;

/**
 * Behind a value that is calculated: what it comes to, for each pack where they differ; behind one in a unit
 * that is often translated: that. Behind a setting that a figure hangs on: the figure, as `FigureSource.hint` says.
 * Behind a line that overrides another one, or is overridden: by what.
 */
export function inlayHints(snapshot: Snapshot, range: Range): readonly InlayHint[] {
  const hints: InlayHint[] = [];
  for (let number = range.start.line; number <= range.end.line; number += 1) {
    const line = snapshot.script.document.lineAt(number);
    if (line === undefined) break;
    const { statement } = line;
    if ((statement.kind !== 'setting' && statement.kind !== 'constant') || statement.value === null) continue;
    const position = { line: number, character: statement.value.end };
    hints.push(...hintsFor(snapshot, line, statement).map((hint) => ({ position, ...hint })));
  }
  return hints;
}

function hintsFor(
  snapshot: Snapshot,
  line: ScriptLine,
  statement: SettingStatement | ConstantStatement,
): readonly HintText[] {
  if (statement.kind === 'constant') return constantHints(snapshot, line, statement);
  const { settingPath, section } = line;
  if (settingPath === null) return [];
  const packs = section.pack === null ? snapshot.craft.packsOrNone() : [section.pack];
  const settings = packs.flatMap((pack) => {
    const setting = snapshot.craft.setting(settingPath, pack);
    return setting === undefined ? [] : [{ pack, setting }];
  });
  const own = settings.filter(({ setting }) => setting.origin.line === line);
  const others = settings.filter(({ setting }) => setting.origin.line !== line);
  if (own.length === 0) return others.slice(0, 1).map((other) => overriddenHint(snapshot, other));
  return [
    ...(isCalculated(statement.value) ? calculatedHints(own) : translationHints(own, statement.value)),
    ...effectHints(snapshot, own),
    ...others.map(({ pack, setting }) => otherPackHint(snapshot, pack, setting)),
    ...overridingHints(snapshot, own),
  ];
}

interface PerPack {
  readonly pack: string | null;
  readonly setting: Setting;
}

function isCalculated(value: ValueNode | null): boolean {
  if (value === null) return false;
  return hasReferences(value) || value.kind === 'sum' || value.kind === 'product' || value.kind === 'call';
}

function constantHints(
  { craft, pack }: Snapshot,
  line: ScriptLine,
  { name, value }: ConstantStatement,
): readonly HintText[] {
  const counts = craft.lines(inputKeys.constant(name.text)).at(-1)?.line === line;
  const result = craft.constant(name.text, pack);
  if (!counts || !isCalculated(value) || result.kind !== 'value') return [];
  return [{ label: `= ${evaluatedText(result.value)}`, tooltip: 'What the calculation comes to' }];
}

function calculatedHints(own: readonly PerPack[]): readonly HintText[] {
  const shown = own.flatMap(({ pack, setting: { value, found } }) => {
    const isNumber = value?.kind === 'quantity' || value?.kind === 'count' || value?.kind === 'range';
    return isNumber ? [{ pack, text: withoutTails(valueText(value, found.parameter)) }] : [];
  });
  const [first] = shown;
  if (first === undefined) return [];
  const label = shown.every(({ text }) => text === first.text)
    ? first.text
    : shown.map(({ pack, text }) => `${text} (${pack})`).join(', ');
  return [{ label: `= ${label}`, tooltip: 'What the calculation comes to' }];
}

function translationHints([first]: readonly PerPack[], written: ValueNode | null): readonly HintText[] {
  const unit = written?.kind === 'number' ? (written.unit?.text ?? null) : null;
  const label = first === undefined ? null : otherUnitText(first.setting.value, first.setting.found, unit);
  return label === null ? [] : [{ label, tooltip: 'The same in another unit' }];
}

/** What the line does on this craft: with the pack in view, if the line is for it. */
function effectHints(snapshot: Snapshot, own: readonly PerPack[]): readonly HintText[] {
  const shown = own.find(({ pack }) => pack === snapshot.pack) ?? own[0];
  if (shown === undefined) return [];
  const { found } = shown.setting;
  const pack = packOf(found) ?? shown.pack;
  const view = new CraftView(snapshot.craft, pack);
  return figureSources.flatMap(({ id, hint }) => {
    const isHere = hint?.at.includes(found.name) === true || hint?.at.includes(found.path) === true;
    const figure = isHere ? figureOf(view, id) : null;
    return hint === undefined || figure === null
      ? []
      : [{ label: hint.words(figureText(figure)), tooltip: tooltipOf(figure, pack) }];
  });
}

function tooltipOf(figure: Figure, pack: string | null): string {
  const span = intervalText(figure);
  const words = [
    `${figure.title}${pack === null ? '' : ` with pack ${pack}`}`,
    span === null ? figureText(figure) : `${figureText(figure)}, from low to high ${span}`,
    figure.why,
  ];
  const assumed = figure.assumed.length === 0 ? [] : [`Assumed: ${figure.assumed.join('; ')}.`];
  return [words.join(': '), ...assumed].join('\n');
}

function overriddenHint(snapshot: Snapshot, { setting }: PerPack): HintText {
  const where = placeName(snapshot, setting.origin);
  return { label: 'overridden', tooltip: `Does not count: ${where} sets this` };
}

function otherPackHint(snapshot: Snapshot, pack: string | null, { value, found, origin }: Setting): HintText {
  const text = value === null ? 'another value' : shownText(value, found.parameter);
  return {
    label: `${pack}: ${text}`,
    tooltip: `With pack ${pack}, ${placeName(snapshot, origin)} counts instead`,
  };
}

/** A value as a hint shows it. What only the board knows stays as it is. */
function shownText(value: Value, parameter: Parameter): string {
  const text = valueText(value, parameter);
  return value.kind === 'bare' ? text : withoutTails(text);
}

/** What stood before, where it is the same for all the packs that the line is for. */
function overridingHints(snapshot: Snapshot, own: readonly PerPack[]): readonly HintText[] {
  const [first] = own;
  const over = first?.setting.overridden[0];
  const written = over === undefined ? null : writtenValue(over);
  // Where nothing changes there is nothing to tell.
  if (first === undefined || over === undefined || written === null) return [];
  if (isSameValue(snapshot, first, over)) return [];
  return [{ label: `in place of ${written}`, tooltip: `${placeName(snapshot, over)} sets this too` }];
}

/** Whether a line that is overridden comes to what counts instead of it. */
function isSameValue({ craft }: Snapshot, { pack, setting }: PerPack, { line }: PlacedLine): boolean {
  const { value, found } = setting;
  const node = line.statement.kind === 'setting' ? line.statement.value : null;
  if (value === null || node === null) return false;
  const other = interpret(node, found, craft.scope(pack), craft.words(found)).value;
  return other !== null && valueText(other, found.parameter) === valueText(value, found.parameter);
}
