import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { readOptions } from './options';
import { exitCodes, UsageError } from './outcome';

/**
 * `propsoff server --stdio`: the language server, for editors that start one by a command. It is the very file
 * that the extension starts, and lies beside this one; the protocol's library reads `--stdio` itself and ends
 * the process when the editor is gone.
 */
export async function runServer(args: readonly string[]): Promise<number> {
  const { values, positionals } = readOptions(args, {
    stdio: { type: 'boolean' },
    // Editors' libraries add it by themselves.
    clientProcessId: { type: 'string' },
  });
  if (values.stdio !== true || positionals.length > 0) {
    throw new UsageError('server speaks over standard input and output only: propsoff server --stdio');
  }
  const path = join(__dirname, 'server.js');
  if (!existsSync(path)) throw new UsageError(`${path} is not there; install propsoff anew`);
  await import(pathToFileURL(path).href);
  return exitCodes.fine;
}
