import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type WrittenParameterFile, writtenParameterFile } from '../src/catalog/model/parameter';

/**
 * Makes `related` lead both ways in `schemas/parameters`: where one parameter names another that does not
 * name it in return, the return is written. Run by hand after adding parameters: `npx tsx server/build/relate.ts`.
 */
function relate(folder: string): void {
  const files = readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .map((name) => join(folder, name));
  const contents = files.map((path) => ({
    path,
    file: writtenParameterFile.parse(JSON.parse(readFileSync(path, 'utf8'))),
  }));
  addReturns(contents.map(({ file }) => file));
  for (const { path, file } of contents) writeFileSync(path, `${JSON.stringify(file, null, 2)}\n`);
}

function addReturns(files: readonly WrittenParameterFile[]): void {
  const parameters = new Map(files.flatMap((file) => file.parameters).map((one) => [one.name, one]));
  for (const one of parameters.values()) {
    for (const name of one.related) {
      const other = parameters.get(name);
      if (other !== undefined && other !== one && !other.related.includes(one.name))
        other.related.push(one.name);
    }
  }
}

relate(join(process.cwd(), 'schemas', 'parameters'));
