import type { Hardware } from '../../../catalog/model/board-hardware';
import type { CraftView } from '../../../craft/view';
import { type Unmet, unmetNeeds } from '../../board-needs';
import { listed } from '../../report/render';
import type { CodeRule, RuleFinding } from '../../rule';

/** One note a craft: what nobody has described of its board, and which checks wait for that. */
const described: CodeRule = {
  ids: ['wire/board-missing', 'wire/board-undescribed'],
  scope: 'craft',
  whole: true,
  check(view, report) {
    const isMissing = view.isMissing('board.profile');
    if (!isMissing && view.board === undefined) return;
    const unmet = unmetNeeds(view);
    if (unmet.length > 0) report(finding(view, unmet, isMissing));
  },
};

function finding(view: CraftView, unmet: readonly Unmet[], isMissing: boolean): RuleFinding {
  const count = new Set(unmet.flatMap(({ checks }) => checks)).size;
  const parts = [...new Set(unmet.map(({ key }) => inWords[key]))];
  return {
    id: isMissing ? 'wire/board-missing' : 'wire/board-undescribed',
    at: 'board.profile',
    values: {
      board: view.boardTitle,
      name: view.board?.name ?? '',
      parts: listed(parts),
      checks: count === 1 ? '1 check waits' : `${count} checks wait`,
    },
    related: unmet.map(({ part, checks }) => ({
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
