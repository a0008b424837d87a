import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { unzipSync } from 'fflate';
import { scratchFolder } from '../workbench/launch.mjs';
import { makePackage } from '../workbench/package.mjs';
import { makeNpmPackage } from '../workbench/package-npm.mjs';

/** A package of what was built; made once for all tests of a run, and gone when the run ends. */
function madeOnce(name: string, make: (path: string) => Promise<void>): () => Promise<string> {
  let made: Promise<string> | undefined;
  return () => {
    made ??= (async () => {
      const path = join(scratchFolder('made'), name);
      await make(path);
      return path;
    })();
    return made;
  };
}

export const packedExtension = madeOnce('propsoff.vsix', makePackage);

export const packedForNpm = madeOnce('propsoff.tgz', makeNpmPackage);

/** What a package holds, by path. */
export function contentsOf(path: string): ReadonlyMap<string, string> {
  const files = Object.entries(unzipSync(readFileSync(path)));
  return new Map(files.map(([name, bytes]) => [name, Buffer.from(bytes).toString('utf8')]));
}
