import type { Check } from '../../catalog/model/check';
import type { CraftView } from '../../craft/view';
import { type Amount, distinctTexts } from '../../units/distinct-texts';
import { wordedFixes } from '../data/data-fixes';
import type { RuleFinding, RuleFix } from '../rule';
import type { Raised } from './acceptances';
import { relatedTo, standingOf } from './place';
import { fixesFor } from './rule-fix';

/** Gives what a rule says its place, its related places and its edits. */
export function raise(view: CraftView, said: RuleFinding): Raised {
  const check = view.catalog.check(said.id);
  if (check === undefined) throw new Error(`the catalogue has no check ${said.id}`);
  const { place, elsewhere, acceptedOn } = standingOf(view, said.at, said.mark ?? 'value');
  // What is missing is reported at the section it belongs to, or at what goes with it: the words must not say more.
  const message = view.isSet(said.at) ? 'Set here: {at}.' : 'The section is here.';
  const here = elsewhere === null ? [] : [{ place: elsewhere, message, values: { at: said.at } }];
  const related = (said.related ?? []).flatMap((one) => relatedTo(view, one));
  const finding = {
    check,
    level: check.level,
    values: textsOf(said.values ?? {}),
    place,
    related: [...here, ...related],
    pack: view.pack,
    // Made when they are looked at: where a new line goes may change with lines that the rule has not read.
    get fixes() {
      return [...(said.fixes ?? []), ...worded(view, check, said)].flatMap((fix) => fixesFor(view, fix));
    },
    accepted: null,
  };
  return { finding, acceptedOn };
}

/** What the words of a rule that is code offer beside what the rule does. A rule that is data has said its own. */
function worded(view: CraftView, check: Check, { at, values = {} }: RuleFinding): readonly RuleFix[] {
  return check.by === 'data' ? [] : wordedFixes(view, check, { ...values, at });
}

/** What a rule says with numbers, as texts that can be told apart. */
function textsOf(values: Readonly<Record<string, string | Amount>>): Readonly<Record<string, string>> {
  const texts = distinctTexts(
    Object.values(values).map((value) =>
      typeof value === 'string' ? { fewest: 0, write: () => value } : value,
    ),
  );
  return Object.fromEntries(Object.keys(values).map((name, index) => [name, texts[index] ?? '']));
}
