import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { additionSchema, boardSchema } from './addition-schema';
import { compileCatalog } from './compile-catalog';
import { faultTable } from './fault-table';
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

const developers = join(root, 'DEVELOPERS.md');

/** A list is the last thing under its heading, below one paragraph; nothing else may be written after it there. */
function withList(text: string, heading: string, list: string): string {
  const [before, rest] = text.split(`## ${heading}\n\n`);
  if (before === undefined || rest === undefined)
    throw new Error(`DEVELOPERS.md has no list under "${heading}"`);
  const [paragraph = ''] = rest.split('\n\n', 1);
  const next = rest.indexOf('\n\n## ');
  return `${before}## ${heading}\n\n${paragraph}\n\n${list}${next < 0 ? '\n' : rest.slice(next)}`;
}

const text = readFileSync(developers, 'utf8');
const proved = withList(text, 'Proof of the numbers', proofsList(root));
writeFileSync(developers, withList(proved, 'Faults that other tools have had', faultTable(root)));
