import type { CraftView } from '../craft/view';
import type { Raised } from './acceptances';
import { relatedTo, standingOf } from './place';
import type { RuleFinding } from './rule';
import { fixFor } from './rule-fix';

/** Gives what a rule says its place, its related places and its edits. */
export function raise(view: CraftView, said: RuleFinding): Raised {
  const check = view.catalog.check(said.id);
  if (check === undefined) throw new Error(`the catalogue has no check ${said.id}`);
  const { place, elsewhere, acceptedOn } = standingOf(view, said.at, said.mark ?? 'value');
  const here = elsewhere === null ? [] : [{ place: elsewhere, message: 'It is set here.' }];
  const related = (said.related ?? []).flatMap(({ at, message }) => relatedTo(view, at, message));
  const fixes = (said.fixes ?? []).flatMap((fix) => fixFor(view, fix) ?? []);
  const finding = {
    check,
    level: check.level,
    values: said.values ?? {},
    place,
    related: [...here, ...related],
    pack: view.pack,
    fixes,
    accepted: null,
  };
  return { finding, acceptedOn };
}
