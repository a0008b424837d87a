import type { Terminal } from '../../server/src/cli/terminal';

/** A terminal that swallows what it is told, with neither colour nor width: as a file is. */
export const plainTerminal: Terminal = {
  out: () => {},
  err: () => {},
  hasColour: false,
  width: null,
  canShowProgress: false,
  readStandardInput: async () => '',
};
