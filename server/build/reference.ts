import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { additionSchema } from './addition-schema';
import { compileCatalog } from './compile-catalog';
import { referencePage } from './reference-page';

// Writes what is made from data and models anew; `npm run reference`. A test fails while they differ.
const root = join(__dirname, '../..');
writeFileSync(join(root, 'schemas/REFERENCE.md'), referencePage(compileCatalog(root).bundle));
writeFileSync(join(root, 'schemas/addition.schema.json'), additionSchema());
