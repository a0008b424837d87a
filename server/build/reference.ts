import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { additionSchema, boardSchema } from './addition-schema';
import { compileCatalog } from './compile-catalog';
import { outputForms, publishedSchema } from './output-schemas';
import { proofsList } from './proofs';
import { referencePage } from './reference-page';

// Writes what is made from data and models anew; `npm run reference`. A test fails while they differ.
const root = join(__dirname, '../..');
writeFileSync(join(root, 'schemas/REFERENCE.md'), referencePage(compileCatalog(root).bundle, root));
writeFileSync(join(root, 'schemas/addition.schema.json'), additionSchema());
writeFileSync(join(root, 'schemas/board.schema.json'), boardSchema());
mkdirSync(join(root, 'schemas/output'), { recursive: true });
for (const [command, form] of outputForms)
  writeFileSync(join(root, `schemas/output/${command}.schema.json`), publishedSchema(command, form));

/** The list is the last thing under its heading; nothing else may be written after it there. */
const developers = join(root, 'DEVELOPERS.md');
const text = readFileSync(developers, 'utf8');
const section = /(## Proof of the numbers\n\n[^\n]*\n\n)[\s\S]*?(?=\n\n## )/;
if (!section.test(text)) throw new Error('DEVELOPERS.md has no list under "Proof of the numbers"');
writeFileSync(
  developers,
  text.replace(section, (_, before: string) => before + proofsList(root)),
);
