import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { unzipSync } from 'fflate';
import { scratchFolder } from '../workbench/launch.mjs';
import { makePackage } from '../workbench/package.mjs';

let made: Promise<string> | undefined;

/** The package of what was built; made once for all tests of a run, and gone when the run ends. */
export function packedExtension(): Promise<string> {
  made ??= (async () => {
    const path = join(scratchFolder('vsix'), 'propsoff.vsix');
    await makePackage(path);
    return path;
  })();
  return made;
}

/** What a package holds, by path. */
export function contentsOf(path: string): ReadonlyMap<string, string> {
  const files = Object.entries(unzipSync(readFileSync(path)));
  return new Map(files.map(([name, bytes]) => [name, Buffer.from(bytes).toString('utf8')]));
}
