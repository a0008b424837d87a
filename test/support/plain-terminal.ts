import type { Terminal } from '../../server/src/cli/terminal';

/** A terminal that swallows what it is told, with neither colour nor width: as a file is. */
export const plainTerminal: Terminal = {
  out: async () => {},
  tell: () => {},
  show: () => {},
  hasColour: false,
  width: null,
  canShowProgress: false,
  readStandardInput: async () => new Uint8Array(),
};
