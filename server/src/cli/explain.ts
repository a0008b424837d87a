import type { Catalog } from '../catalog/catalog';
import { suggestParameters, suggestWord } from '../catalog/suggest';
import { explainCheck, explainParameter } from '../features/explain';
import { plainText } from '../features/markdown';
import { explainEnding, explainSection, parametersEndingIn } from './explain-lists';
import { here } from './here';
import { readOptions } from './options';
import { exitCodes, UsageError } from './outcome';
import type { Terminal } from './terminal';

const width = 96;

/** `propsoff explain` */
export async function runExplain(args: readonly string[], terminal: Terminal): Promise<number> {
  const [name, ...more] = readOptions(args, {}).positionals;
  if (name === undefined || more.length > 0)
    throw new UsageError('explain takes one parameter, one group of them, or one check');
  const { catalog } = (await here()).additions;
  const told = name.includes('/') ? plain(explainCheck(catalog, name)) : settings(catalog, name);
  if (told === null) throw new UsageError(unknown(catalog, name));
  terminal.out(`${told}\n`);
  return exitCodes.fine;
}

/** A parameter, a group, or what ends in the words given. */
function settings(catalog: Catalog, name: string): string | null {
  const exact = plain(explainParameter(catalog, name)) ?? wrapped(explainSection(catalog, name));
  if (exact !== null) return exact;
  const found = parametersEndingIn(catalog, name);
  const [only] = found;
  if (only === undefined) return null;
  return found.length === 1 ? plain(explainParameter(catalog, only.name)) : explainEnding(name, found);
}

/** Markdown as a terminal shows it. */
function plain(markdown: string | null): string | null {
  return wrapped(markdown === null ? null : plainText(markdown));
}

function wrapped(text: string | null): string | null {
  return text === null ? null : text.split('\n').map(wrappedParagraph).join('\n');
}

function unknown(catalog: Catalog, name: string): string {
  const near = name.includes('/') ? suggestWord(catalog.checks.keys(), name) : nearParameters(catalog, name);
  const meant = near.length === 0 ? '' : `; did you mean ${near.join(', ')}?`;
  return `there is no parameter, group or check "${name}"${meant}`;
}

/** What is spelt much alike, and else what ends in the last word. */
function nearParameters(catalog: Catalog, name: string): readonly string[] {
  const near = suggestParameters(catalog, name, '').map(({ known }) => known.name);
  if (near.length > 0) return near;
  if (!name.includes('.')) return suggestWord(catalog.groups.keys(), name);
  return parametersEndingIn(catalog, name.slice(name.lastIndexOf('.') + 1)).map((known) => known.name);
}

/** Breaks a paragraph between words; a list stays as it is. */
function wrappedParagraph(paragraph: string): string {
  if (paragraph.startsWith('  ')) return paragraph;
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
