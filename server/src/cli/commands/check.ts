import type { Level } from '../../catalog/model/check';
import { levels } from '../../checks/report/order';
import { command, jsonOption, nameOption } from '../command';
import { type Ended, watchAndCheck } from '../files/watch';
import { exitCodes, UsageError } from '../outcome';
import { annotations } from '../report/annotations';
import { type CheckedFile, mostReported, type ReportedFinding } from '../report/checked-file';
import { jsonReport } from '../report/json';
import { textReport } from '../report/text';
import type { Terminal } from '../terminal';
import { type CheckRequest, checkOnce } from './run-check';

type ReportForm = 'text' | 'json' | 'sarif' | 'annotations';

/** `propsoff check` */
export const checkCommand = command({
  name: 'check',
  summary: 'finds what is wrong in scripts, line by line and taken together',
  usage: ['[paths | patterns | -] [options]'],
  about: [
    'Checks scripts: files, folders (every .craft and .boardtext below them), patterns such as "race/**/*.craft", or - for standard input; without any, the current folder. What they include is read along.',
    `At most ${mostReported} findings per script are shown, worst first; all are counted.`,
    'A file propsoff.json in the current folder may say which files are checked, which notes are switched off or ranked higher, and from which level on a check fails; a must-fix is never switched off.',
    'Levels: must-fix will not work, will be refused, or endangers someone when armed; risk works and can hurt; note is worth knowing; tidy is style. What is accepted in the script with a reason is shown as a note and never fails.',
  ],
  options: {
    'fail-on': {
      type: 'string',
      value: 'level',
      words: [...levels, 'never'],
      about: `the lowest level that ends with exit code 1: ${levels.join(', ')} or never; without it what propsoff.json says, else must-fix`,
    },
    strict: { type: 'boolean', about: 'the same as --fail-on risk' },
    pack: { type: 'string', value: 'name', about: 'only findings that hold with this pack' },
    board: {
      type: 'string',
      value: 'name',
      about: "the paths are texts in this board's own form; files that end in .boardtext are anyway",
    },
    name: nameOption,
    watch: {
      type: 'boolean',
      about:
        'checks again whenever a script, what it includes or what the folder adds changes; Ctrl+C ends it',
    },
    fix: {
      type: 'boolean',
      about:
        'mends what has exactly one fix, in the files, and reports what is left; a fix that would bring another must-fix is not kept',
    },
    unsafe: { type: 'boolean', about: 'with --fix: of a finding with several fixes the first as well' },
    quiet: { type: 'boolean', about: 'only what makes it fail; without that, nothing' },
    json: jsonOption('check', 'one JSON object instead of text'),
    sarif: { type: 'boolean', about: 'one SARIF 2.1.0 log instead of text' },
    annotations: {
      type: 'boolean',
      about:
        'a line "::error file=…,line=…::…" for each finding, which jobs of code hosts show beside the line',
    },
  },
  examples: [
    ['propsoff check', 'everything below this folder'],
    ['propsoff check my.craft --pack sprint', 'one script, as it is with one pack'],
    ['propsoff check "**/*.craft" --fail-on risk', 'for a hook: a risk fails as well'],
    ['propsoff check - --name my.craft < draft.txt', 'a text that is not saved yet'],
    ['propsoff check --fix my.craft', 'mends what has one fix'],
    ['propsoff check --sarif > propsoff.sarif', 'a log for tools that read SARIF'],
  ],
  exit: { fine: 'nothing at or above --fail-on', findings: 'something at or above --fail-on' },
  run: async ({ values, positionals }, terminal) => {
    const failing = failingLevels(values['fail-on'], values.strict === true);
    const form = formOf(values);
    const { name, pack, board, fix = false, unsafe = false, quiet = false } = values;
    if (unsafe && !fix) throw new UsageError('--unsafe says which fixes --fix makes: add --fix');
    if (fix && positionals.includes('-'))
      throw new UsageError('--fix mends files, and standard input is none');
    if (fix && pack !== undefined)
      throw new UsageError('--fix mends scripts for all packs: leave --pack out');
    if (quiet && form !== 'text') throw new UsageError(`--quiet is for people: leave it out with --${form}`);
    const mending = fix ? { takesFirst: unsafe } : null;
    const request = {
      paths: positionals,
      name,
      pack,
      board,
      mending,
      hasFixes: form === 'json' || form === 'sarif',
    };
    const check = () => checkFor(request, { form, failing, isQuiet: quiet }, terminal);
    if (values.watch !== true) {
      const { exitCode, report } = await check();
      await report();
      return exitCode;
    }
    if (fix) throw new UsageError('--watch only looks: leave --fix out');
    if (form !== 'text') throw new UsageError(`--watch tells people: leave --${form} out`);
    if (positionals.includes('-')) throw new UsageError('--watch watches files, and standard input is none');
    return watchAndCheck(positionals, check, terminal);
  },
});

function formOf(given: Readonly<Partial<Record<ReportForm, boolean>>>): ReportForm {
  const asked = (['json', 'sarif', 'annotations'] as const).filter((form) => given[form] === true);
  if (asked.length > 1)
    throw new UsageError(`check writes one form: ${asked.map((form) => `--${form}`).join(' or ')}`);
  return asked[0] ?? 'text';
}

/** The levels that somebody wants it to fail for; null where nobody said. */
function failingLevels(lowest: string | undefined, isStrict: boolean): readonly Level[] | null {
  if (isStrict && lowest !== undefined) throw new UsageError('--strict is --fail-on risk: say one of them');
  const named = isStrict ? 'risk' : lowest;
  if (named === undefined) return null;
  if (named === 'never') return [];
  const level = levels.find((one) => one === named);
  if (level === undefined)
    throw new UsageError(`--fail-on takes ${levels.join(', ')} or never, not "${named}"`);
  return upTo(level);
}

/** A level and all that are worse. */
function upTo(level: Level): readonly Level[] {
  return levels.slice(0, levels.indexOf(level) + 1);
}

/** How a check is reported, and what it fails for. */
interface Reporting {
  readonly form: ReportForm;
  /** Null: as the current folder chooses. */
  readonly failing: readonly Level[] | null;
  readonly isQuiet: boolean;
}

async function checkFor(request: CheckRequest, reporting: Reporting, terminal: Terminal): Promise<Ended> {
  const { files, unreadable, read, catalog, mended, choices } = await checkOnce(request, terminal);
  const { form, isQuiet } = reporting;
  const failing = reporting.failing ?? upTo(choices.failOn ?? 'must-fix');
  const report = async () => {
    for (const line of mended) terminal.message(line);
    if (form === 'json') await terminal.out(jsonReport(files, catalog));
    else if (form === 'sarif') {
      // Explains every check that it names: loaded only where that is asked for.
      const { sarifReport } = await import('../report/sarif');
      await terminal.out(sarifReport(files, unreadable, catalog));
    } else if (form === 'annotations') await terminal.out(annotations(files, catalog));
    // Where nothing could be read, counts would look as if nothing were wrong.
    else if (files.length > 0) {
      const shown = isQuiet ? onlyFailing(files, failing) : files;
      await terminal.out(await textReport(shown, catalog, terminal, { hasCounts: !isQuiet }));
    }
    for (const line of unreadable) terminal.message(`propsoff: ${line}`);
  };
  return { exitCode: unreadable.length > 0 ? exitCodes.couldNotRun : outcome(files, failing), read, report };
}

function onlyFailing(files: readonly CheckedFile[], failing: readonly Level[]): readonly CheckedFile[] {
  return files.map((file) => ({
    ...file,
    findings: file.findings.filter((finding) => fails(finding, failing)),
  }));
}

/** What a pilot accepted with a reason never fails. */
function fails({ level, accepted }: ReportedFinding, failing: readonly Level[]): boolean {
  return accepted === null && failing.includes(level);
}

function outcome(files: readonly CheckedFile[], failing: readonly Level[]): number {
  const isFailing = ({ findings, omitted, counts }: CheckedFile) =>
    findings.some((finding) => fails(finding, failing)) ||
    (omitted > 0 && failing.some((level) => counts[level] > 0));
  return files.some(isFailing) ? exitCodes.findings : exitCodes.fine;
}
