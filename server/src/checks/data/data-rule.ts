import type { Catalog } from '../../catalog/catalog';
import type { DataCheck } from '../../catalog/model/check';
import type { CraftView } from '../../craft/view';
import type { CodeRule, RuleFinding } from '../rule';
import { type Condition, holds, readCondition } from './condition';
import { filledFixes } from './data-fixes';
import { dataScope } from './data-scope';
import { slotsIn, slotText } from './data-template';
import { memberSlot, namingMember, namingPack, placeholderOf } from './members';

/** Makes a rule that runs from one that is written as data. Throws when a condition can't be read. */
export function dataRule(check: DataCheck, catalog: Catalog): CodeRule {
  const placeholder = placeholderOf(check, catalog);
  const read = new Map<string, readonly Condition[]>();
  const conditionsFor = (member: string): readonly Condition[] => {
    const known = read.get(member);
    if (known !== undefined) return known;
    if (read.size > mostMembersKept) read.clear();
    const conditions = check.when.map((text) => readCondition(namingMember(text, placeholder, member)));
    read.set(member, conditions);
    return conditions;
  };
  conditionsFor(placeholder === null ? '' : 'member'); // a condition that can't be read is found out now, not at the first craft
  return {
    ids: [check.id],
    scope: check.scope,
    each: check.each,
    ...(check.whole === undefined ? {} : { whole: check.whole }),
    check(view, report, member) {
      const scope = dataScope(view);
      if (!conditionsFor(member).every((condition) => holds(condition, view, scope))) return;
      // A sentence that would name a value nobody could read says nothing: that line has its own finding.
      const own = view.anew();
      const finding = findingOf(check, own, member, placeholder);
      if (own.unreadable.length === 0) report(finding);
    },
  };
}

const mostMembersKept = 200;

function findingOf(
  check: DataCheck,
  view: CraftView,
  member: string,
  placeholder: string | null,
): RuleFinding {
  const scope = dataScope(view);
  const show = (slot: string) =>
    slot === memberSlot ? member : slotText(namingMember(slot, placeholder, member), view, scope);
  const slots = slotsIn(`${check.message} ${check.advice}`);
  const values = Object.fromEntries(slots.map((slot) => [slot, show(slot)]));
  const valuesOf = (text: string) =>
    Object.fromEntries(
      slotsIn(text)
        .filter((slot) => slot !== 'to')
        .map((slot) => [slot, String(show(slot))]),
    );
  return {
    id: check.id,
    at: namingMember(check.at, placeholder, member),
    values,
    related: (check.related ?? []).map(({ at, message }) => ({
      at: namingMember(at, placeholder, member),
      message,
      values: valuesOf(message),
    })),
    // Made when they are looked at: most never are.
    get fixes() {
      const naming = (text: string) =>
        namingPack(namingMember(text, placeholder, member).replaceAll(`{${memberSlot}}`, member), view.pack);
      return filledFixes(check.fixes ?? [], { view: view.anew(), values: {}, naming });
    },
  };
}
