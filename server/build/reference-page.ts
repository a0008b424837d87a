import type { Bundle } from '../src/catalog/model/bundle';
import type { Check } from '../src/catalog/model/check';
import type { Source } from '../src/catalog/model/common';
import type { Parameter } from '../src/catalog/model/parameter';
import { allowedText } from '../src/features/parameter-text';

/** The page that lists every check and every parameter, in Markdown, made from the data alone. */
export function referencePage(bundle: Bundle): string {
  const checks = bundle.checks.flatMap((file) => file.checks);
  const parameters = bundle.parameters.flatMap((file) => file.parameters);
  return [
    '# Reference',
    'Made from the data in this folder by `npm run reference`; edit the data, not this page.',
    `\`propsoff explain <name>\` tells the whole story of each line below.`,
    `## Checks (${checks.length})`,
    ...bundle.checks.map(({ group, checks: rows }) => checkTable(group, rows)),
    `## Parameters (${parameters.length})`,
    ...bundle.parameters.map(
      (file) => `### ${file.title}\n\n${file.summary}\n\n${parameterTable(file.parameters)}`,
    ),
    '',
  ].join('\n\n');
}

function checkTable(group: string, checks: readonly Check[]): string {
  const rows = checks.map(({ id, level, message, source }) =>
    row([`\`${id}\``, level, plain(message), plain(sourceOf(source))]),
  );
  return `### ${group}\n\n${table(['check', 'level', 'says', 'source'], rows)}`;
}

function sourceOf({ text, date }: Source): string {
  return date === undefined ? text : `${text} (${date})`;
}

function parameterTable(parameters: readonly Parameter[]): string {
  const rows = parameters.map((parameter) =>
    row([
      `\`${parameter.name}\``,
      plain(parameter.title),
      plain(allowedText(parameter)),
      parameter.default === null ? '' : `\`${parameter.default.value}\``,
    ]),
  );
  return table(['parameter', 'what it is', 'takes', 'assumed when not set'], rows);
}

function table(heads: readonly string[], rows: readonly string[]): string {
  return [row(heads), row(heads.map(() => '---')), ...rows].join('\n');
}

function row(cells: readonly string[]): string {
  return `| ${cells.join(' | ')} |`;
}

/** Text as it is: nothing in it ends its cell or begins a tag. The brackets round optional parts go. */
function plain(text: string): string {
  return text
    .replace(/\[\[|\]\]/g, '')
    .replaceAll('|', '\\|')
    .replaceAll('<', '&lt;')
    .replaceAll('\n', ' ');
}
