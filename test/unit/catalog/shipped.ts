import { type Compiled, compileCatalog } from '../../../server/build/compile-catalog';
import { type Catalog, loadCatalog } from '../../../server/src/catalog/catalog';

let compiled: Compiled | undefined;
let catalog: Catalog | undefined;

/** The data of `schemas/` as the build would take it, compiled once for all tests. */
export function shippedData(): Compiled {
  compiled ??= compileCatalog(process.cwd());
  return compiled;
}

export function shippedCatalog(): Catalog {
  catalog ??= loadCatalog(shippedData().bundle);
  return catalog;
}

/** A catalogue name with its open parts filled in: `pack.sprint.cells`, `gyro.filter.2.centre`. */
export function filledIn(name: string): string {
  return name
    .replace('<function>', 'arm')
    .replace('<element>', 'cell-voltage')
    .replace('<device>', 'battery-lead')
    .replace('<number>', '2')
    .replace('<situation>', 'fast-turn')
    .replace(/<[a-z]+>/, 'sprint');
}
