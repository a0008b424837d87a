import type { Hardware } from '../../../catalog/model/board-hardware';
import type { CraftView } from '../../../craft/view';
import { type Unmet, unmetNeeds } from '../../board-needs';
import { listed } from '../../report/listed';
import type { CodeRule, RuleFinding } from '../../rule';

/** One note a craft: what nobody has described of its board, and which checks wait for that. */
const described: CodeRule = {
  ids: ['wire/board-missing', 'wire/board-undescribed', 'wire/board-faulty'],
  scope: 'craft',
  whole: true,
  check(view, report) {
    const id = idFor(view);
    const unmet = id === null ? [] : unmetNeeds(view);
    if (id !== null && unmet.length > 0) report(finding(id, view, unmet));
  },
};

/** Nothing is said of a board that is still being read, and of one that there is not: that is told as a word. */
function idFor(view: CraftView): string | null {
  if (view.isMissing('board.profile')) return 'wire/board-missing';
  if (view.board !== undefined) return 'wire/board-undescribed';
  return view.catalog.isFaulty(view.craft.boardName() ?? '') ? 'wire/board-faulty' : null;
}

function finding(id: string, view: CraftView, unmet: readonly Unmet[]): RuleFinding {
  const count = new Set(unmet.flatMap(({ checks }) => checks)).size;
  const parts = [...new Set(unmet.map(({ key }) => inWords[key]))];
  return {
    id,
    at: 'board.profile',
    values: {
      board: view.boardTitle,
      name: view.craft.boardName() ?? '',
      parts: listed(parts),
      checks: count === 1 ? '1 check waits' : `${count} checks wait`,
    },
    // Of another board it is not known what is to be described.
    related: (id === 'wire/board-undescribed' ? unmet : []).map(({ part, checks }) => ({
      at: 'board.profile',
      message: `${part}, for ${listed(checks)}.`,
    })),
  };
}

const inWords: Readonly<Record<keyof Hardware, string>> = {
  ports: 'ports',
  serialClock: 'clock of the ports',
  motorOutputs: 'motor outputs',
  motorsAsPrinted: 'drawing of the motors',
  rails: 'rails',
  gyro: 'gyro',
  packInput: 'pack input',
  log: 'log',
  overlay: 'overlay',
  sensors: 'sensors',
};

export const boardDescribedRules: readonly CodeRule[] = [described];
