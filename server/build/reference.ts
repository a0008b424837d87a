import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { compileCatalog } from './compile-catalog';
import { referencePage } from './reference-page';

// Writes the reference page anew; `npm run reference`. A test fails while it differs from the data.
const root = join(__dirname, '../..');
writeFileSync(join(root, 'schemas/REFERENCE.md'), referencePage(compileCatalog(root).bundle));
