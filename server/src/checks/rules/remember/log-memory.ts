import type { CodeRule } from '../../rule';

/** Whether the board has what the log is to be written to. */
export const logMemoryRules: readonly CodeRule[] = [
  {
    ids: ['remember/no-log-memory'],
    scope: 'craft',
    check(view, report) {
      const { board } = view;
      const medium = view.word('record.medium');
      if (board === undefined || medium === null || medium === 'off' || medium === board.log?.medium) return;
      const has =
        board.log === null ? 'no memory for a log' : `${board.log.medium} of ${board.log.size} only`;
      report({
        id: 'remember/no-log-memory',
        at: 'record.medium',
        values: { medium, board: board.title, has },
        related: [{ at: 'board.profile', message: 'The board.' }],
        fixes: [{ title: 'Keep no log', set: 'record.medium', to: 'off' }],
      });
    },
  },
];
