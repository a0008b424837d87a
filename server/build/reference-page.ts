import type { Bundle } from '../src/catalog/model/bundle';
import type { Check } from '../src/catalog/model/check';
import type { Parameter } from '../src/catalog/model/parameter';
import type { RecordingFindingWords } from '../src/catalog/model/recording-columns';
import { allowedText } from '../src/features/hover/parameter-text';
import { boardSections } from './reference-parts/boards';
import { collectionSections } from './reference-parts/collections';
import { editorSections } from './reference-parts/editor';
import { hardwareSections } from './reference-parts/hardware';
import { code, plain, sourceOf, table } from './reference-parts/table';

/**
 * The page that lists every check, parameter, table, board, command and setting, in Markdown, made from the data
 * and from package.json alone. `root` is the project's folder.
 */
export function referencePage(bundle: Bundle, root: string): string {
  const checks = bundle.checks.flatMap((file) => file.checks);
  const parameters = bundle.parameters.flatMap((file) => file.parameters);
  const sections = [
    `## Checks (${checks.length})`,
    ...bundle.checks.map(({ group, checks: rows }) => checkTable(group, rows)),
    `## What recordings show (${bundle.recordings.findings.length})`,
    foundTable(bundle.recordings.findings),
    `## Parameters (${parameters.length})`,
    ...bundle.parameters.map(
      (file) => `### ${file.title}\n\n${file.summary}\n\n${parameterTable(file.parameters)}`,
    ),
    ...collectionSections(bundle),
    ...hardwareSections(bundle),
    ...boardSections(bundle),
    ...editorSections(root),
  ];
  return [
    '# Reference',
    'Made from the data in this folder and from package.json by `npm run reference`; edit those, not this page.',
    '`propsoff explain <name>` tells the whole story of each check and parameter below.',
    contents(sections),
    ...sections,
    '',
  ].join('\n\n');
}

/** Links to the headings of the second level. */
function contents(sections: readonly string[]): string {
  return sections
    .flatMap((text) => /^## (.+)$/.exec(text)?.[1] ?? [])
    .map(
      (title) =>
        `- [${title}](#${title
          .toLowerCase()
          .replace(/[^\w ]/g, '')
          .replaceAll(' ', '-')})`,
    )
    .join('\n');
}

function checkTable(group: string, checks: readonly Check[]): string {
  const rows = checks.map(({ id, level, message, advice, source }) => [
    code(id),
    level,
    plain(message),
    plain(advice),
    sourceOf(source),
  ]);
  return `### ${group}\n\n${table(['check', 'level', 'says', 'what to do', 'source'], rows)}`;
}

function foundTable(rows: readonly RecordingFindingWords[]): string {
  return table(
    ['finding', 'level', 'says', 'what to do', 'when', 'source'],
    rows.map(({ id, level, message, advice, rule, source }) => [
      code(id),
      level,
      plain(message),
      plain(advice),
      plain(rule),
      sourceOf(source),
    ]),
  );
}

function parameterTable(parameters: readonly Parameter[]): string {
  const rows = parameters.map((parameter) => [
    code(parameter.name),
    plain(parameter.title),
    plain(allowedText(parameter)),
    parameter.default === null ? '' : code(`${parameter.default.value}`),
  ]);
  return table(['parameter', 'what it is', 'takes', 'assumed when not set'], rows);
}
