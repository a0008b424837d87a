import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { additionSchema, boardSchema, choicesSchema, keptSchema, layoutSchema } from './addition-schema';
import { compileCatalog } from './compile-catalog';
import { faultClassesPage } from './fault-classes';
import { outputForms, publishedSchema } from './output-schemas';
import { proofsPage } from './proofs';
import { referencePage } from './reference-page';

// Writes what is made from data and models anew; `npm run reference`. A test fails while they differ.
const root = join(__dirname, '../..');
writeFileSync(join(root, 'schemas/REFERENCE.md'), referencePage(compileCatalog(root).bundle, root));
writeFileSync(join(root, 'schemas/addition.schema.json'), additionSchema());
writeFileSync(join(root, 'schemas/board.schema.json'), boardSchema());
writeFileSync(join(root, 'schemas/kept-beside.schema.json'), keptSchema());
writeFileSync(join(root, 'schemas/recording-layout.schema.json'), layoutSchema());
writeFileSync(join(root, 'schemas/choices.schema.json'), choicesSchema());
mkdirSync(join(root, 'schemas/output'), { recursive: true });
for (const [command, form] of outputForms)
  writeFileSync(join(root, `schemas/output/${command}.schema.json`), publishedSchema(command, form));
writeFileSync(join(root, 'test/reference/PROOFS.md'), proofsPage(root));
writeFileSync(join(root, 'test/FAULT-CLASSES.md'), faultClassesPage(root));
