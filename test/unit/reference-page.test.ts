import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import {
  additionSchema,
  boardSchema,
  choicesSchema,
  keptSchema,
  layoutSchema,
} from '../../server/build/addition-schema';
import { compileCatalog } from '../../server/build/compile-catalog';
import { outputForms, publishedSchema } from '../../server/build/output-schemas';
import { outputTypes } from '../../server/build/output-types';
import { referencePage } from '../../server/build/reference-page';

const root = join(__dirname, '../..');

describe('the reference page', () => {
  it('says what the data says; `npm run reference` makes it anew', () => {
    const page = readFileSync(join(root, 'schemas/REFERENCE.md'), 'utf8');
    assert.equal(page, referencePage(compileCatalog(root).bundle, root));
  });
});

describe('the schema for files that add to the catalogue', () => {
  it('asks for what the model asks for; `npm run reference` makes it anew', () => {
    assert.equal(readFileSync(join(root, 'schemas/addition.schema.json'), 'utf8'), additionSchema());
    assert.equal(readFileSync(join(root, 'schemas/board.schema.json'), 'utf8'), boardSchema());
    assert.equal(readFileSync(join(root, 'schemas/kept-beside.schema.json'), 'utf8'), keptSchema());
    assert.equal(readFileSync(join(root, 'schemas/recording-layout.schema.json'), 'utf8'), layoutSchema());
    assert.equal(readFileSync(join(root, 'schemas/choices.schema.json'), 'utf8'), choicesSchema());
  });
});

describe('the schemas of what the command line prints', () => {
  it('have a type each, whatever they are made of', () => {
    const types = [...outputTypes().matchAll(/^export type (\w+)Output = \{$/gm)];
    assert.equal(types.length, outputForms.size);
  });

  for (const [command, form] of outputForms) {
    it(`say what the form of ${command} says; \`npm run reference\` makes them anew`, () => {
      const file = join(root, `schemas/output/${command}.schema.json`);
      assert.equal(readFileSync(file, 'utf8'), publishedSchema(command, form));
    });
  }
});
