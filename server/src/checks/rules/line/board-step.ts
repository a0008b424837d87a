import { altered } from '../../../board/altered';
import { differ, pathsOf } from '../../../board/entries';
import { namesOf, type Profile, profileOf } from '../../../board/profile';
import { Speller } from '../../../board/spelling';
import type { BoardSetting, BoardText } from '../../../catalog/model/board-text';
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

function isOfPack({ parameter }: BoardSetting): boolean {
  return parameter.startsWith('pack.<');
}

function heldIn(
  view: CraftView,
  profile: Profile,
  isWanted: (row: BoardSetting) => boolean,
): readonly RuleFinding[] {
  const held: RuleFinding[] = [];
  for (const { group, settings } of profile.groups) {
    for (const row of settings) {
      if (!isWanted(row)) continue;
      for (const { path, member } of pathsOf(view, row.parameter)) {
        if (!view.isSet(path) || namesOf(row, group, member) === null) continue;
        // Kept for each setting: a keystroke in one asks nothing of the others.
        const found = heldFinding(view, path, row, profile.text);
        if (found !== null) held.push(found);
      }
    }
  }
  return held;
}

const heldForAll = viewQuery('held rows', (view, profile: Profile) =>
  heldIn(view, profile, (row) => !isOfPack(row)),
);

const heldFinding = viewQuery('held', (view, path: string, row: BoardSetting, text: BoardText) =>
  heldWhere(view, path, row, text),
);

function heldWhere(view: CraftView, path: string, row: BoardSetting, text: BoardText): RuleFinding | null {
  const value = view.value(path);
  const found = view.catalog.parameter(path);
  if (value === null || found === undefined) return null;
  const board = view.board?.title ?? 'the board';
  const speller = new Speller(row, found, text);
  const spelled = speller.write(value);
  const given = view.shown(path);
  if (spelled.kind === 'refused')
    return { id: 'line/board-limit', at: path, values: { given, board, reason: spelled.reason } };
  const held = speller.read(spelled.texts);
  if (held.kind !== 'value') return null;
  const heldText = valueText(held.value, found.parameter);
  const values = { given, held: heldText, step: row.step ?? '', board };
  if (altered(value, held.value, found) > mostAltered) return { id: 'line/board-loses', at: path, values };
  if (row.step === undefined || !differ(value, held.value, row)) return null;
  const fixes = [{ title: `Write ${heldText}`, set: path, to: heldText }];
  return { id: 'line/board-step', at: path, values, fixes };
}

/** What is further off than this share is another value, and not a rounded one. Common practice. */
const mostAltered = 0.2;
