import type { Catalog } from '../catalog/catalog';
import { suggestParameters, suggestWord } from '../catalog/suggest';
import { explainCheck, explainParameter } from '../features/explain';
import { plainText } from '../features/markdown';
import { readOptions } from './options';
import { exitCodes, UsageError } from './outcome';
import type { Terminal } from './terminal';

const width = 96;

/** `propsoff explain` */
export async function runExplain(
  args: readonly string[],
  terminal: Terminal,
  catalog: Catalog,
): Promise<number> {
  const [name, ...more] = readOptions(args, {}).positionals;
  if (name === undefined || more.length > 0) throw new UsageError('explain takes one parameter or one check');
  const story = name.includes('/') ? explainCheck(catalog, name) : explainParameter(catalog, name);
  if (story === null) throw new UsageError(unknown(catalog, name));
  terminal.out(`${plainText(story).split('\n').map(wrapped).join('\n')}\n`);
  return exitCodes.fine;
}

function unknown(catalog: Catalog, name: string): string {
  const near = name.includes('/')
    ? suggestWord(catalog.checks.keys(), name)
    : suggestParameters(catalog, name, '').map(({ known }) => known.name);
  const meant = near.length === 0 ? '' : `; did you mean ${near.join(', ')}?`;
  return `there is no parameter or check "${name}"${meant}`;
}

/** Breaks a paragraph between words. */
function wrapped(paragraph: string): string {
  const indent = paragraph.startsWith('- ') ? '  ' : '';
  const lines = [''];
  for (const word of paragraph.split(' ')) {
    const last = lines.at(-1) ?? '';
    const longer = last === '' || last === indent ? `${last}${word}` : `${last} ${word}`;
    if (longer.length <= width || last.trim() === '') lines[lines.length - 1] = longer;
    else lines.push(`${indent}${word}`);
  }
  return lines.join('\n');
}
