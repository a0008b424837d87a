import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { brotliDecompressSync } from 'node:zlib';

/**
 * The text of a file that lies beside the program, as `packed` made it in the build: a fifth of its length, and
 * unpacked in a few milliseconds.
 * @throws {Error} if it is not there or not whole
 */
export function unpacked(name: string, folder = __dirname): string {
  const path = join(folder, name);
  try {
    return brotliDecompressSync(readFileSync(path)).toString();
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new Error(`${path} could not be read (${why}); install propsoff anew`);
  }
}
