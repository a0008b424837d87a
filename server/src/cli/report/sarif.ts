import { relative, resolve } from 'node:path';
import { URI } from 'vscode-uri';
import type { Catalog } from '../../catalog/catalog';
import type { Level } from '../../catalog/model/check';
import { replacementText } from '../../catalog/replacements';
import { notLookedAt } from '../../craft/read-as';
import { checkParagraphs } from '../../features/hover/check-text';
import type { Range } from '../../features/range';
import { versionText } from '../version';
import type { CheckedFile, ReportedFinding } from './checked-file';
import { jsonText, visible } from './visible';

/** The standard that the log follows; its own schema is where this leads. */
const schema = 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json';

/** Levels of the standard; what is only tidy is told from a note by its properties. */
const levelOf: Readonly<Record<Level, 'error' | 'warning' | 'note'>> = {
  'must-fix': 'error',
  risk: 'warning',
  note: 'note',
  tidy: 'note',
};

/** The name for the current folder: a log that holds no absolute path reads alike on every machine. */
const folder = 'SRCROOT';

/** The report as a log of SARIF 2.1.0, the open standard for results of static analysis (OASIS). */
export function sarifReport(
  checked: readonly CheckedFile[],
  unreadable: readonly string[],
  catalog: Catalog,
): string {
  const ids = [...new Set(checked.flatMap(({ findings }) => findings.map(({ id }) => id)))].sort();
  const indexes = new Map(ids.map((id, index) => [id, index]));
  const run = {
    tool: {
      driver: { name: 'Propsoff', version: versionText, rules: ids.map((id) => ruleOf(id, catalog)) },
    },
    invocations: [
      {
        executionSuccessful: unreadable.length === 0,
        toolExecutionNotifications: [
          ...unreadable.map((text) => ({ level: 'error', message: { text: visible(text) } })),
          ...checked.flatMap(omissionOf),
          ...checked.flatMap(notSeenOf),
          ...catalog.replacements.map((one) => ({ level: 'note', message: { text: replacementText(one) } })),
        ],
      },
    ],
    columnKind: 'utf16CodeUnits',
    newlineSequences: ['\r\n', '\n', '\r'],
    originalUriBaseIds: { [folder]: { description: { text: 'The folder in which propsoff ran.' } } },
    artifacts: checked.map(({ path }) => ({ location: artifact(path), roles: ['analysisTarget'] })),
    results: checked.flatMap(({ path, findings }) => findings.map((one) => resultOf(one, path, indexes))),
  };
  return jsonText({ $schema: schema, version: '2.1.0', runs: [run] });
}

/** A check; those of files that add to the catalogue are not in it and have their name alone. */
function ruleOf(id: string, catalog: Catalog) {
  const check = catalog.check(id);
  if (check === undefined) return { id };
  return {
    id,
    shortDescription: { text: check.title },
    fullDescription: { text: plain(check.message) },
    // The story itself: the address of a page would be one on the machine that ran the check.
    help: {
      text: `${plain(check.advice)} Source: ${check.source.text}.`,
      markdown: checkParagraphs(check, catalog).join('\n\n'),
    },
    defaultConfiguration: { level: levelOf[check.level] },
  };
}

/** A check's words without the brackets round optional parts; a value stands as its name. */
function plain(template: string): string {
  const named = (slot: string) => `<${slot.slice(1, -1).split(' ')[0] ?? ''}>`;
  return template.replace(/\[\[|\]\]/g, '').replace(/\{[^{}]*\}/g, named);
}

/** Nothing is left out silently. */
function omissionOf({ path, omitted }: CheckedFile) {
  if (omitted === 0) return [];
  const text = visible(`${path} has ${omitted} more findings than are shown here.`);
  return [{ level: 'warning', message: { text } }];
}

/** Nor is what could not be looked at, nor what checks would judge a craft by and nobody knows. */
function notSeenOf({ path, readAs, notKnown }: CheckedFile) {
  const unchecked = readAs === null ? null : notLookedAt(readAs);
  return [...(unchecked === null ? [] : [unchecked]), ...notKnown].map((text) => ({
    level: 'note',
    message: { text: visible(`${path}: ${text}`) },
    locations: [{ physicalLocation: { artifactLocation: artifact(path) } }],
  }));
}

function resultOf(finding: ReportedFinding, path: string, indexes: ReadonlyMap<string, number>) {
  const { id, level, message, advice, accepted, pack, range, line, related, fixes } = finding;
  const place = placeOf(path, range, line);
  return {
    ruleId: id,
    ruleIndex: indexes.get(id),
    level: levelOf[level],
    message: { text: `${message} ${advice}` },
    locations: [{ physicalLocation: place }],
    ...(related.length === 0
      ? {}
      : {
          relatedLocations: related.map((one) => ({
            physicalLocation: placeOf(one.path, one.range),
            message: { text: one.message },
          })),
        }),
    ...(fixes.length === 0 ? {} : { fixes: fixes.map(fixOf) }),
    ...(accepted === null ? {} : { suppressions: [{ kind: 'inSource', justification: accepted }] }),
    properties: { level, ...(pack === null ? {} : { pack }) },
  };
}

function placeOf(path: string, range: Range, line?: string) {
  const snippet = line === undefined || line === '' ? {} : { contextRegion: contextOf(range, line) };
  return { artifactLocation: artifact(path), region: regionOf(range), ...snippet };
}

function contextOf({ start }: Range, text: string) {
  return { startLine: start.line + 1, snippet: { text } };
}

/** Lines and columns counted from 1; the end column is the one after the last. */
function regionOf({ start, end }: Range) {
  return {
    startLine: start.line + 1,
    startColumn: start.character + 1,
    endLine: end.line + 1,
    endColumn: end.character + 1,
  };
}

/** The edits of a fix, file by file. */
function fixOf({ title, edits }: ReportedFinding['fixes'][number]) {
  const paths = [...new Set(edits.map(({ path }) => path))];
  return {
    description: { text: title },
    artifactChanges: paths.map((path) => ({
      artifactLocation: artifact(path),
      replacements: edits
        .filter((edit) => edit.path === path)
        .map(({ range, newText }) => ({
          deletedRegion: regionOf(range),
          ...(newText === '' ? {} : { insertedContent: { text: newText } }),
        })),
    })),
  };
}

/** A file by a path below the current folder, or else by where it is. */
function artifact(path: string) {
  if (path === '-') return { uri: 'standard-input', description: { text: 'Standard input.' } };
  const below = relative('', resolve(path)).split(/[\\/]/);
  if (below[0] === '..' || resolve(path) !== resolve('', ...below))
    return { uri: URI.file(resolve(path)).toString() };
  return { uri: below.map(encodeURIComponent).join('/'), uriBaseId: folder };
}
