import type { Catalog } from '../../catalog/catalog';
import { suggestParameters, suggestWord } from '../../catalog/suggest';
import { explainCheck, explainParameter } from '../../features/hover/explain';
import { plainText } from '../../features/markdown';
import { command, jsonOption } from '../command';
import { currentFolder } from '../files/here';
import { exitCodes, UsageError } from '../outcome';
import { explained } from '../report/explain-json';
import { explainEnding, explainSection, parametersEndingIn } from '../report/explain-lists';
import { jsonText } from '../report/visible';
import { proseWidth, wrapped } from '../report/wrapped';

/** `propsoff explain` */
export const explainCommand = command({
  name: 'explain',
  summary: 'the whole story of a parameter, a group or a check',
  usage: ['<parameter | group | check> [options]'],
  about: [
    'What a parameter does, what it takes, what higher and lower lead to, its risk, and how it is proved; what a check looks for and why. Of a group or a section, its parameters; of a last word, those that end in it.',
  ],
  options: { json: jsonOption('explain', 'one JSON object') },
  examples: [
    ['propsoff explain gyro.filter.1.cutoff', 'a parameter'],
    ['propsoff explain wire/port-shared', 'a check, as a report names it'],
    ['propsoff explain gyro', 'a group'],
    ['propsoff explain cutoff', 'every parameter that ends in a word'],
  ],
  exit: { fine: 'the name is known', findings: null },
  run: async ({ values, positionals }, terminal) => {
    const [name, ...more] = positionals;
    if (name === undefined || more.length > 0)
      throw new UsageError('explain takes one parameter, one group of them, or one check');
    const { catalog } = (await currentFolder()).additions;
    const data = explained(catalog, name);
    if (data === null) throw new UsageError(unknown(catalog, name));
    const text = () => `${broken(story(catalog, name), proseWidth(terminal.width))}\n`;
    await terminal.out(values.json === true ? jsonText(data) : text());
    return exitCodes.fine;
  },
});

/** What is known about a name, for people: a check, a parameter, a group, or what ends in the words given. */
function story(catalog: Catalog, name: string): string {
  const one = explainCheck(catalog, name) ?? explainParameter(catalog, name);
  if (one !== null) return plainText(one);
  const section = explainSection(catalog, name);
  if (section !== null) return section;
  const found = parametersEndingIn(catalog, name);
  const [only] = found;
  const story = found.length === 1 && only !== undefined ? explainParameter(catalog, only.name) : null;
  return story === null ? explainEnding(name, found) : plainText(story);
}

/** Paragraphs are broken between words; a list stays as it is. */
function broken(text: string, width: number): string {
  const paragraph = (line: string) =>
    line.startsWith('  ') ? line : wrapped(line, width, { indent: line.startsWith('- ') ? '  ' : '' });
  return text.split('\n').map(paragraph).join('\n');
}

function unknown(catalog: Catalog, name: string): string {
  const near = name.includes('/') ? suggestWord(catalog.checks.keys(), name) : nearParameters(catalog, name);
  const suggestion = near.length === 0 ? '' : `; did you mean ${near.join(', ')}?`;
  return `there is no parameter, group or check "${name}"${suggestion}`;
}

/** What is spelt much alike, and else what ends in the last word. */
function nearParameters(catalog: Catalog, name: string): readonly string[] {
  const near = suggestParameters(catalog, name, '').map(({ known }) => known.name);
  if (near.length > 0) return near;
  if (!name.includes('.')) return suggestWord(catalog.groups.keys(), name);
  return parametersEndingIn(catalog, name.slice(name.lastIndexOf('.') + 1)).map((known) => known.name);
}
