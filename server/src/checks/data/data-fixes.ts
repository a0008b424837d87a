import type { Check } from '../../catalog/model/check';
import type { CheckFix } from '../../catalog/model/fix';
import type { CraftView } from '../../craft/view';
import type { Amount } from '../../units/distinct-texts';
import type { RuleFix, RuleLine } from '../rule';
import { holds, readCondition } from './condition';
import { dataScope } from './data-scope';
import { filledTemplate, slotsIn, slotText } from './data-template';
import { namingPack } from './members';
import { offered } from './offers';

/** What the fixes of a finding are made from. */
export interface FixSlots {
  readonly view: CraftView;
  /** What the finding's sentences show. */
  readonly values: Readonly<Record<string, string | Amount>>;
  /** Puts the names in angle brackets into a text. */
  readonly naming: (text: string) => string;
}

/** The fixes that are written as data, with their values; without those of which a value is not known. */
export function filledFixes(fixes: readonly CheckFix[], slots: FixSlots): readonly RuleFix[] {
  return fixes
    .filter(({ when = [] }) => when.every((text) => isSo(text, slots)))
    .flatMap((fix) => filledFix(fix, slots) ?? []);
}

/** The fixes that stand with the words of a check that is code: `<axis>` is the value that its sentences call so. */
export function wordedFixes(
  view: CraftView,
  { fixes = [] }: Check,
  values: Readonly<Record<string, string | Amount>>,
): readonly RuleFix[] {
  if (fixes.length === 0) return [];
  const naming = (text: string) =>
    namingPack(text, view.pack).replace(/<([a-z]+)>/g, (whole, name: string) =>
      String(values[name] ?? whole),
    );
  return filledFixes(fixes, { view: view.anew(), values, naming });
}

function isSo(text: string, { view, naming }: FixSlots): boolean {
  return holds(readCondition(naming(text)), view, dataScope(view));
}

function filledFix(fix: CheckFix, slots: FixSlots): RuleFix | null {
  const title = slots.naming(fix.title);
  const values = slotValues(title.replaceAll('{to}', ''), 'set' in fix ? slots.naming(fix.set) : '', slots);
  if (values === null) return null;
  if ('remove' in fix) {
    const remove = fix.remove.flatMap((path) => filled(path, '', slots) ?? []);
    return remove.length < fix.remove.length ? null : { title, values, remove };
  }
  const { also = [], forPack } = fix;
  const [first, ...others] = [fix, ...also].flatMap((line) => filledLine(line, slots) ?? []);
  return first === undefined || others.length < also.length
    ? null
    : { title, values, ...first, also: others, forPack };
}

function filledLine({ set, to, look }: RuleLine, slots: FixSlots): RuleLine | null {
  const path = filled(set, '', slots);
  const value = path === null ? null : filled(to, path, slots);
  return path === null || value === null ? null : { set: path, to: value, look };
}

/** Null where a slot has no value. `set`: the setting that the text is for. */
function filled(template: string, set: string, slots: FixSlots): string | null {
  const text = slots.naming(template);
  const values = slotValues(text, set, slots);
  return values === null ? null : filledTemplate(text, values);
}

function slotValues(text: string, set: string, slots: FixSlots): Readonly<Record<string, string>> | null {
  const shown: Record<string, string> = {};
  for (const slot of slotsIn(text)) {
    const value = slotValue(slot, set, slots);
    if (value === null || nothing.has(value)) return null;
    shown[slot] = value;
  }
  return shown;
}

function slotValue(slot: string, set: string, { view, values }: FixSlots): string | null {
  const offer = offered(slot, view, set);
  if (offer !== undefined) return offer;
  return String(values[slot] ?? slotText(slot, view, dataScope(view)));
}

/** What a slot says of a value that there is not. */
const nothing: ReadonlySet<string> = new Set(['', 'not set', 'unknown']);
