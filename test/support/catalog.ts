import { join } from 'node:path';
import { compileCatalog } from '../../server/build/compile-catalog';
import { loadCatalog } from '../../server/src/catalog/catalog';

const { bundle, problems } = compileCatalog(join(__dirname, '../..'));
if (problems.length > 0) throw new Error(`the catalogue has problems:\n${problems.join('\n')}`);

/** The data of the real catalogue, compiled once for all tests of a process. */
export const testBundle = bundle;

/** The real catalogue. */
export const testCatalog = loadCatalog(bundle);
