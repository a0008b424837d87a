import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { codeRules } from '../../server/src/checks/rules';
import { testCatalog } from './catalog';

const folder = join(__dirname, '../faults');

interface Expected {
  readonly id: string;
  readonly level: string;
  readonly range: {
    readonly start: { readonly line: number; readonly character: number };
    readonly end: { readonly line: number; readonly character: number };
  };
}

/** A faulty script with what must be found in it. */
export interface Fault {
  readonly name: string;
  readonly path: string;
  readonly text: string;
  /** Whether notes and tidiness are listed in full, too. */
  readonly only: boolean;
  readonly expected: readonly string[];
}

/** One finding as a line, so that a difference reads well. */
export function lineOf({ id, level, range: { start, end } }: Expected): string {
  return `${start.line}:${start.character}-${end.line}:${end.character} ${level} ${id}`;
}

/** Checks of what a whole craft lacks, and of whether a script is one. */
export const aboutWholes: ReadonlySet<string> = new Set([
  'safe/read-as-part',
  ...codeRules.flatMap(({ ids, whole }) => (whole === true ? ids : [])),
  ...[...testCatalog.checks.values()].flatMap((one) =>
    one.by === 'data' && one.whole === true ? [one.id] : [],
  ),
]);

/**
 * Of what was found, what the expectation speaks of: must-fix and risk always, the rest where it is listed.
 * Where all that is expected are faults of single lines, rules about the craft as a whole are another matter; and
 * where nothing that a craft lacks is expected, the script is but the few lines of one that the fault needs.
 */
export function spokenOf({ only, expected }: Fault, found: readonly string[]): readonly string[] {
  const isLineFault = expected.every((line) => line.includes(' line/'));
  const isAboutWhole = (line: string) => aboutWholes.has(line.split(' ').at(-1) ?? '');
  const isSpokenOf = (line: string) =>
    (!isLineFault || line.includes(' line/')) &&
    (!isAboutWhole(line) || expected.some(isAboutWhole)) &&
    (only || / (must-fix|risk) /.test(line) || expected.includes(line));
  return found.filter(isSpokenOf).sort();
}

export const faults: readonly Fault[] = readdirSync(folder)
  .filter((file) => file.endsWith('.craft'))
  .map((file) => {
    const path = join(folder, file);
    const told = JSON.parse(readFileSync(path.replace(/craft$/, 'json'), 'utf8')) as {
      only?: boolean;
      findings: Expected[];
    };
    const expected = told.findings.map(lineOf).sort();
    return { name: file, path, text: readFileSync(path, 'utf8'), only: told.only === true, expected };
  });
