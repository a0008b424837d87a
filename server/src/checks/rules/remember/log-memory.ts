import type { Hardware } from '../../../catalog/model/board-hardware';
import type { CodeRule } from '../../rule';

/** Whether the board has what the log is to be written to. */
export const logMemoryRules: readonly CodeRule[] = [
  {
    ids: ['remember/no-log-memory'],
    scope: 'craft',
    check(view, report) {
      const { log } = view.hardware;
      const medium = view.word('record.medium');
      if (log === undefined || medium === null || medium === 'off' || medium === log?.medium) return;
      const has = log === null ? 'no memory for a log' : `${sized(log)} only`;
      report({
        id: 'remember/no-log-memory',
        at: 'record.medium',
        values: { medium, board: view.boardTitle, has },
        related: [{ at: 'board.profile', message: 'The board.' }],
        fixes: [{ title: 'Keep no log', set: 'record.medium', to: 'off' }],
      });
    },
  },
];

function sized({ medium, size }: NonNullable<Hardware['log']>): string {
  return size === undefined ? medium : `${medium} of ${size}`;
}
