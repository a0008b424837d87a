import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/**
 * The text of a file that lies beside the program.
 * @throws {Error} if it is not there
 */
export function textBeside(name: string, folder = __dirname): string {
  const path = join(folder, name);
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new Error(`${path} could not be read (${why}); install propsoff anew`);
  }
}
