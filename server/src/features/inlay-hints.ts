import { hasReferences } from '../craft/references';
import type { Setting } from '../craft/setting';
import { valueText } from '../craft/value-text';
import type { ScriptLine } from '../language/script-line';
import type { Position, Range } from './range';
import type { Snapshot } from './snapshot';

export interface InlayHint {
  readonly position: Position;
  readonly label: string;
  readonly tooltip: string;
}

/**
 * Behind a value that is calculated: what it comes to, for each pack where they differ. Behind a line that
 * overrides another one, or is overridden for every pack: that.
 */
export function inlayHints(snapshot: Snapshot, range: Range): readonly InlayHint[] {
  const hints: InlayHint[] = [];
  for (let number = range.start.line; number <= range.end.line; number += 1) {
    const line = snapshot.script.document.lineAt(number);
    if (line === undefined) break;
    hints.push(...hintsFor(snapshot, line, number));
  }
  return hints;
}

function hintsFor(snapshot: Snapshot, line: ScriptLine, number: number): readonly InlayHint[] {
  const { statement, settingPath } = line;
  if (statement.kind !== 'setting' || statement.value === null || settingPath === null) return [];
  const position = { line: number, character: statement.value.end };
  const computed = hasReferences(statement.value) || isCalculated(statement.value.kind);
  const packs = line.section.pack === null ? snapshot.craft.packsOrNone() : [line.section.pack];
  const settings = packs.map((pack) => ({ pack, setting: snapshot.craft.setting(settingPath, pack) }));
  const own = settings.filter(({ setting }) => setting?.origin.line === line);
  const hints: InlayHint[] = [];
  const label = computed ? computedLabel(own) : '';
  if (label !== '') hints.push({ position, label: `= ${label}`, tooltip: 'What the calculation comes to' });
  if (own.length === 0 && settings.some(({ setting }) => setting !== undefined)) {
    hints.push({ position, label: 'overridden', tooltip: 'Another line sets this and counts instead' });
  }
  return hints;
}

function isCalculated(kind: string): boolean {
  return kind === 'sum' || kind === 'product' || kind === 'call';
}

interface PerPack {
  readonly pack: string | null;
  readonly setting: Setting | undefined;
}

function computedLabel(settings: readonly PerPack[]): string {
  const shown = settings.flatMap(({ pack, setting }) => {
    if (setting?.value === undefined || setting.value === null) return [];
    if (setting.value.kind !== 'quantity' && setting.value.kind !== 'count' && setting.value.kind !== 'range')
      return [];
    return [{ pack, text: valueText(setting.value, setting.found.parameter) }];
  });
  const [first] = shown;
  if (first === undefined) return '';
  if (shown.every(({ text }) => text === first.text)) return first.text;
  return shown.map(({ pack, text }) => `${text} (${pack})`).join(', ');
}
