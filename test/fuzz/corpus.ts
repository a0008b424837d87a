import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Target } from './target';

/** Inputs that once broke something, by their target: `corpus/<target>/<what it was>.json`. */
export function corpusOf({ name }: Target): readonly { readonly title: string; readonly input: unknown }[] {
  const folder = join(__dirname, 'corpus', name);
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .filter((file) => file.endsWith('.json'))
    .sort()
    .map((file) => ({
      title: file.replace(/\.json$/, '').replaceAll('-', ' '),
      input: JSON.parse(readFileSync(join(folder, file), 'utf8')) as unknown,
    }));
}

/** Folders of the corpus, to see that each belongs to a target. */
export function corpusFolders(): readonly string[] {
  const folder = join(__dirname, 'corpus');
  return existsSync(folder) ? readdirSync(folder).sort() : [];
}
