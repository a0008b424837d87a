import type { Level } from '../../catalog/model/check';
import { levels } from '../../checks/report/order';
import { command, jsonOption, nameOption } from '../command';
import { type Ended, watchAndCheck } from '../files/watch';
import { exitCodes, UsageError } from '../outcome';
import { type CheckedFile, mostReported } from '../report/checked-file';
import { jsonReport } from '../report/json';
import { sarifReport } from '../report/sarif';
import { textReport } from '../report/text';
import type { Terminal } from '../terminal';
import { type CheckRequest, checkOnce } from './run-check';

type ReportForm = 'text' | 'json' | 'sarif';

/** `propsoff check` */
export const checkCommand = command({
  name: 'check',
  summary: 'finds what is wrong in scripts, line by line and taken together',
  usage: ['[paths | patterns | -] [options]'],
  about: [
    'Checks scripts: files, folders (every .craft and .boardtext below them), patterns such as "race/**/*.craft", or - for standard input; without any, the current folder. What they include is read along.',
    `At most ${mostReported} findings per script are shown, worst first; all are counted.`,
    'Levels: must-fix will not work, will be refused, or endangers someone when armed; risk works and can hurt; note is worth knowing; tidy is style. What is accepted in the script with a reason is shown as a note and never fails.',
  ],
  options: {
    'fail-on': {
      type: 'string',
      value: 'level',
      about: `the lowest level that ends with exit code 1: ${levels.join(', ')} or never; without it must-fix`,
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
    json: jsonOption('check', 'one JSON object instead of text'),
    sarif: { type: 'boolean', about: 'one SARIF 2.1.0 log instead of text' },
  },
  examples: [
    ['propsoff check', 'everything below this folder'],
    ['propsoff check my.craft --pack sprint', 'one script, as it is with one pack'],
    ['propsoff check "**/*.craft" --fail-on risk', 'for a hook: a risk fails as well'],
    ['propsoff check - --name my.craft < draft.txt', 'a text that is not saved yet'],
    ['propsoff check --sarif > propsoff.sarif', 'a log for tools that read SARIF'],
  ],
  exit: { fine: 'nothing at or above --fail-on', findings: 'something at or above --fail-on' },
  run: async ({ values, positionals }, terminal) => {
    const failing = failingLevels(values['fail-on'], values.strict === true);
    const form = formOf(values);
    const { name, pack, board } = values;
    const request = { paths: positionals, name, pack, board, hasFixes: form !== 'text' };
    const check = () => checkFor(request, form, failing, terminal);
    if (values.watch !== true) {
      const { exitCode, tell } = await check();
      await tell();
      return exitCode;
    }
    if (form !== 'text') throw new UsageError(`--watch tells people: leave --${form} out`);
    if (positionals.includes('-')) throw new UsageError('--watch watches files, and standard input is none');
    return watchAndCheck(positionals, check, terminal);
  },
});

function formOf({ json, sarif }: { readonly json?: boolean; readonly sarif?: boolean }): ReportForm {
  if (json === true && sarif === true) throw new UsageError('check writes one form: --json or --sarif');
  return json === true ? 'json' : sarif === true ? 'sarif' : 'text';
}

/** The levels that make it fail. */
function failingLevels(lowest: string | undefined, isStrict: boolean): readonly Level[] {
  if (isStrict && lowest !== undefined) throw new UsageError('--strict is --fail-on risk: say one of them');
  const named = isStrict ? 'risk' : (lowest ?? 'must-fix');
  if (named === 'never') return [];
  const known: readonly string[] = levels;
  const at = known.indexOf(named);
  if (at < 0) throw new UsageError(`--fail-on takes ${levels.join(', ')} or never, not "${named}"`);
  return levels.slice(0, at + 1);
}

async function checkFor(
  request: CheckRequest,
  form: ReportForm,
  failing: readonly Level[],
  terminal: Terminal,
): Promise<Ended> {
  const { files, unreadable, read, catalog } = await checkOnce(request, terminal);
  const tell = async () => {
    if (form === 'json') await terminal.out(jsonReport(files, catalog));
    else if (form === 'sarif') await terminal.out(sarifReport(files, unreadable, catalog));
    // Where nothing could be read, counts would look as if nothing were wrong.
    else if (files.length > 0) await terminal.out(await textReport(files, catalog, terminal));
    for (const line of unreadable) terminal.tell(`propsoff: ${line}`);
  };
  return { exitCode: unreadable.length > 0 ? exitCodes.couldNotRun : outcome(files, failing), read, tell };
}

/** What a pilot accepted with a reason never fails. */
function outcome(files: readonly CheckedFile[], failing: readonly Level[]): number {
  const fails = ({ findings, omitted, counts }: CheckedFile) =>
    findings.some(({ level, accepted }) => accepted === null && failing.includes(level)) ||
    (omitted > 0 && failing.some((level) => counts[level] > 0));
  return files.some(fails) ? exitCodes.findings : exitCodes.fine;
}
