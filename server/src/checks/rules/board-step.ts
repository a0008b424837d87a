import { differ, pathsOf } from '../../board/entries';
import { namesOf, profileOf } from '../../board/profile';
import { Speller } from '../../board/spelling';
import type { BoardSetting, BoardText } from '../../catalog/model/board-text';
import { valueText } from '../../craft/value-text';
import type { CraftView } from '../../craft/view';
import type { CodeRule, RuleFinding } from '../rule';

/** Says what the board will hold where it counts in coarser steps than the script does, and what it won't take. */
const boardStep: CodeRule = {
  ids: ['line/board-step', 'line/board-limit'],
  scope: 'pack',
  check(view, report) {
    const profile = view.board === undefined ? null : profileOf(view.board);
    if (profile === null) return;
    for (const { group, settings } of profile.groups) {
      for (const row of settings) {
        for (const { path, member } of pathsOf(view, row.parameter)) {
          if (!view.isSet(path) || namesOf(row, group, member) === null) continue;
          // Kept for each setting: a keystroke in one asks nothing of the others.
          const found = view.kept('held', path, () => heldFinding(view, path, row, profile.text));
          if (found !== null) report(found);
        }
      }
    }
  },
};

export const boardRules: readonly CodeRule[] = [boardStep];

function heldFinding(view: CraftView, path: string, row: BoardSetting, text: BoardText): RuleFinding | null {
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
  if (held.kind !== 'value' || row.step === undefined || !differ(value, held.value, row)) return null;
  const heldText = valueText(held.value, found.parameter);
  return {
    id: 'line/board-step',
    at: path,
    values: { given, held: heldText, step: row.step, board },
    fixes: [{ title: `Write ${heldText}`, set: path, to: heldText }],
  };
}
