import { altered } from '../../../board/meaning/altered';
import { differ } from '../../../board/meaning/differ';
import { type Meaning, meaningsOf, namesOf } from '../../../board/meaning/meanings';
import { pathsOf } from '../../../board/meaning/paths';
import { Speller } from '../../../board/meaning/spelling';
import { type Profile, profileOf, type SpellingManner } from '../../../board/profile/profile';
import { valueText } from '../../../craft/value-text';
import { type CraftView, viewQuery } from '../../../craft/view';
import type { CodeRule, RuleFinding } from '../../rule';

/** Says what the board will hold where it counts in coarser steps than the script does, and what it won't take. */
const boardStep: CodeRule = {
  ids: ['line/board-step', 'line/board-loses', 'line/board-limit'],
  scope: 'pack',
  check(view, report) {
    const profile = view.board === undefined ? null : profileOf(view.board);
    if (profile === null) return;
    // Kept by themselves: packs mostly share all but what is about a pack.
    for (const found of [...heldForAll(view, profile), ...heldIn(view, profile, isOfPack)]) report(found);
  },
};

export const boardRules: readonly CodeRule[] = [boardStep];

function isOfPack({ means }: Meaning): boolean {
  return means.startsWith('pack.<');
}

function heldIn(
  view: CraftView,
  profile: Profile,
  isWanted: (meaning: Meaning) => boolean,
): readonly RuleFinding[] {
  const held: RuleFinding[] = [];
  for (const meaning of meaningsOf(profile)) {
    if (!isWanted(meaning)) continue;
    for (const { path, member } of pathsOf(view, meaning.means)) {
      if (!view.isSet(path) || namesOf(profile, meaning, member) === null) continue;
      // Kept for each setting: a keystroke in one asks nothing of the others.
      const found = heldFinding(view, path, meaning, profile.manner);
      if (found !== null) held.push(found);
    }
  }
  return held;
}

const heldForAll = viewQuery('held rows', (view, profile: Profile) =>
  heldIn(view, profile, (meaning) => !isOfPack(meaning)),
);

const heldFinding = viewQuery('held', (view, path: string, meaning: Meaning, manner: SpellingManner) =>
  heldWhere(view, path, meaning, manner),
);

function heldWhere(
  view: CraftView,
  path: string,
  meaning: Meaning,
  manner: SpellingManner,
): RuleFinding | null {
  const value = view.value(path);
  const found = view.catalog.parameter(path);
  if (value === null || found === undefined) return null;
  const board = view.boardTitle;
  const speller = new Speller(meaning, found, manner);
  const spelled = speller.write(value);
  const given = view.shown(path);
  if (spelled.kind === 'refused') {
    const nearest = speller.nearest(value);
    const isTaken = nearest !== null && speller.write(nearest).kind === 'texts';
    const to = isTaken ? valueText(nearest, found.parameter) : null;
    const fixes =
      to === null ? [] : [{ title: 'Write {to}, the nearest that the board takes', set: path, to }];
    return { id: 'line/board-limit', at: path, values: { given, board, reason: spelled.reason }, fixes };
  }
  const held = speller.read(spelled.texts);
  if (held.kind !== 'value') return null;
  const heldText = valueText(held.value, found.parameter);
  const step = meaning.parts[0]?.setting.counts?.step;
  const values = { given, held: heldText, step: step ?? '', board };
  if (altered(value, held.value, found) > mostAltered) return { id: 'line/board-loses', at: path, values };
  if (step === undefined || !differ(value, held.value, meaning.by)) return null;
  const fixes = [{ title: 'Write {to}', set: path, to: heldText }];
  return { id: 'line/board-step', at: path, values, fixes };
}

/** What is further off than this share is another value, and not a rounded one. Common practice. */
const mostAltered = 0.2;
