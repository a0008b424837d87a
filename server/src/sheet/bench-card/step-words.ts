import { slotsIn, slotText } from '../../checks/data/data-template';
import { memberSlot, namingMember } from '../../checks/data/members';
import { sentenceOf } from '../../checks/report/render';
import type { Scope } from '../../craft/scope';
import type { CraftView } from '../../craft/view';
import { exactText } from '../../units/quantity';

/** A craft with one pack in, as a step looks at it. */
export interface StepView {
  readonly view: CraftView;
  readonly scope: Scope;
}

/** Which member of a collection a step, or a reading of it, is about. */
export interface StepMember {
  readonly member: string;
  readonly placeholder: string | null;
}

/** Fills a sentence of a step for all packs together: what differs between them is said of each. */
export function filledFor(
  text: string,
  packs: readonly StepView[],
  { member, placeholder }: StepMember,
): string {
  const values = slotsIn(text).map((slot) => [
    slot,
    slot === memberSlot
      ? member.replaceAll('-', ' ')
      : jointText(
          packs.map(({ view, scope }) => ({
            pack: view.pack,
            text: slotWords(view, namingMember(slot, placeholder, member), scope),
          })),
        ),
  ]);
  return sentenceOf(text, Object.fromEntries(values));
}

/** Whether any value in a sentence is another with another pack. */
export function differsIn(
  text: string,
  packs: readonly StepView[],
  { member, placeholder }: StepMember,
): boolean {
  return slotsIn(text).some((slot) => {
    if (slot === memberSlot) return false;
    const path = namingMember(slot, placeholder, member);
    return new Set(packs.map(({ view, scope }) => slotWords(view, path, scope))).size > 1;
  });
}

/** "25.2 V with sprint, 16.8 V with cruise"; said once where it is the same. A pack without a value says nothing. */
function jointText(values: readonly { readonly pack: string | null; readonly text: string }[]): string {
  const packsOf = new Map<string, string[]>();
  for (const { pack, text } of values) {
    const packs = packsOf.get(text) ?? [];
    packsOf.set(text, packs);
    if (pack !== null) packs.push(pack);
  }
  const [only] = packsOf.keys();
  if (packsOf.size === 1 && only !== undefined) return only;
  return [...packsOf]
    .filter(([text]) => text !== '')
    .map(([text, packs]) => `${text} with ${packs.join(' and ')}`)
    .join(', ');
}

/** Nothing for a setting without a value: it never stands in a sentence, and its part in double brackets goes. */
function slotWords(view: CraftView, slot: string, scope: Scope): string {
  const isSetting = view.catalog.parameter(slot) !== undefined;
  if (isSetting && (view.value(slot) === null || isNoTurn(view, slot))) return '';
  if (slot.startsWith('figure.') && figureIsUnknown(slot, scope)) return '';
  return valueWords(view, slot) ?? String(slotText(slot, view, scope));
}

/** A board that sits straight is not turned: nothing is to be said of it. */
function isNoTurn(view: CraftView, path: string): boolean {
  const value = view.value(path);
  return path.startsWith('board.mount-') && value?.kind === 'quantity' && value.value === 0;
}

function figureIsUnknown(slot: string, scope: Scope): boolean {
  return scope.parameter(slot).kind !== 'value';
}

/** Lists and ranges as people say them: "950 to 1250 us". Null for all else. */
function valueWords(view: CraftView, path: string): string | null {
  const value = view.value(path);
  if (value?.kind === 'words') return value.value.map((word) => word.replaceAll('-', ' ')).join(', ');
  if (value?.kind !== 'range') return null;
  const [low] = exactText(value.low, value.unit).split(' ');
  return `${low} to ${exactText(value.high, value.unit)}`;
}
