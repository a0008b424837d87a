import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { command } from '../command';
import { exitCodes, UsageError } from '../outcome';

/**
 * `propsoff server --stdio`: the very file that the extension starts, and it lies beside this one. The protocol's
 * library reads `--stdio` itself and ends the process when the editor is gone.
 */
export const serverCommand = command({
  name: 'server',
  summary: 'the language server, for editors that start one by a command',
  usage: ['--stdio'],
  about: [
    'Speaks the language server protocol over standard input and output until the editor leaves. schemas/EDITORS.md shows how two editors are set up for it.',
  ],
  options: {
    stdio: { type: 'boolean', about: 'over standard input and output: the only way there is' },
    clientProcessId: {
      type: 'string',
      value: 'number',
      about: 'the editor’s process, as editors’ libraries add it by themselves',
    },
  },
  examples: [['propsoff server --stdio', 'what an editor runs']],
  exit: { fine: 'the editor has left', findings: null },
  run: async ({ values, positionals }) => {
    if (values.stdio !== true || positionals.length > 0)
      throw new UsageError('server speaks over standard input and output only: propsoff server --stdio');
    const path = join(__dirname, 'server.js');
    if (!existsSync(path)) throw new UsageError(`${path} is not there; install propsoff anew`);
    createRequire(path)(path);
    return exitCodes.fine;
  },
});
