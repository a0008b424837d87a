import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** A block of code in one of the project's documents. */
export interface CodeBlock {
  readonly document: string;
  /** Where its first line stands, from 1. */
  readonly line: number;
  readonly language: string;
  readonly text: string;
}

const root = join(__dirname, '../..');

/** Every document of the project. */
export const documents = [
  'README.md',
  'DEVELOPERS.md',
  'CHANGELOG.md',
  'client/media/gallery.md',
  'client/pictures/PICTURES.md',
  'schemas/ADDITIONS.md',
  'schemas/COMMAND-LINE.md',
  'schemas/EDITORS.md',
  'schemas/REFERENCE.md',
  'server/build/DEPENDENCIES.md',
  'server/build/package/PACKAGE.md',
  'server/build/package/npm-readme.md',
  'test/FAULT-CLASSES.md',
  'test/THREATS.md',
  'test/bench/FIGURES.md',
  'test/reference/PROOFS.md',
  'test/workbench/FIRST-TEN-MINUTES.md',
];

function documentText(name: string): string {
  return readFileSync(join(root, name), 'utf8');
}

/** The fenced blocks of code of a document, in order. */
export function codeBlocks(document: string): readonly CodeBlock[] {
  const text = documentText(document);
  return [...text.matchAll(/^```([\w-]*)\n([\s\S]*?)^```$/gm)].map(
    ({ 1: language = '', 2: code = '', index }) => ({
      document,
      line: text.slice(0, index).split('\n').length + 1,
      language,
      text: code,
    }),
  );
}
