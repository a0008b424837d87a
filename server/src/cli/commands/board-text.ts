import { handOverOf } from '../../board/write';
import type { HandOver } from '../../catalog/model/hand-over';
import { blockedText, prepareBoardText } from '../../features/board/hand-over';
import { boardOption, command, nameOption, packOption } from '../command';
import { HandOverRecord } from '../files/hand-over-record';
import { oneScript } from '../files/one-script';
import { exitCodes, UsageError } from '../outcome';
import type { Terminal } from '../terminal';
import { chosenProfile } from './board-choice';

/** `propsoff board-text`: the text to standard output, everything else to standard error. */
export const boardTextCommand = command({
  name: 'board-text',
  summary: "a craft's settings in the board's own text",
  usage: ['<script | -> [options]'],
  about: [
    "The settings in the board's own text, to standard output; what was rounded or left out, to standard error. Must-fix findings hold it back.",
  ],
  options: {
    board: boardOption,
    pack: {
      ...packOption,
      about: 'the pack whose settings are written; without it the first one of the script',
    },
    name: nameOption,
    changed: { type: 'boolean', about: 'only what changed since the record beside the script' },
    record: { type: 'boolean', about: 'writes that record: <script>.handed.json' },
    despite: {
      type: 'string',
      value: 'reason',
      about: 'goes on in spite of must-fix findings; the reason is written into the text',
    },
  },
  examples: [
    ['propsoff board-text my.craft > my.boardtext', 'the whole craft'],
    ['propsoff board-text my.craft --changed --record', 'what is new since the last time, and remember it'],
  ],
  exit: { fine: 'the text was written', findings: 'must-fix findings held it back' },
  run: async ({ values, positionals }, terminal) => {
    const [path] = positionals;
    if (path === undefined || positionals.length > 1) throw new UsageError('board-text takes one script');
    const reason = values.despite?.trim() ?? null;
    if (reason === '') throw new UsageError('--despite takes the reason in words');
    const wanted = { command: 'board-text', path, name: values.name };
    const { view, findings, file, around } = await oneScript(wanted, values.pack, terminal);
    if (values.record === true && file.path === '-')
      throw new UsageError('--record needs a script with a name');
    const profile = await chosenProfile(around, values.board, view.craft.boardName());
    const isRemembered = values.record === true;
    const isChange = values.changed === true;
    const record = isChange || isRemembered ? await HandOverRecord.beside(file.path) : null;
    if (isRemembered && record?.isSomethingElse === true)
      throw new UsageError(`${record.path} is no record of a hand-over: move it away, or leave --record out`);
    const since = isChange && record !== null ? lastOf(record, profile.board.name, terminal) : null;
    const { written, blocking, report } = prepareBoardText({ profile, view, findings, since, reason });
    if (blocking.length > 0 && reason === null) {
      for (const line of blockedText(blocking)) terminal.tell(line);
      terminal.tell('Mend them, or say --despite "<reason>": the reason is written into the text.');
      return exitCodes.findings;
    }
    await terminal.out(written.text);
    for (const line of report) terminal.tell(line);
    const others = view.craft.packs().filter((name) => name !== view.pack);
    if (values.pack === undefined && others.length > 0)
      terminal.tell(`The script has other packs: ${others.join(', ')}; --pack takes one of them.`);
    if (isRemembered && record !== null) {
      await record.remember(handOverOf(profile, view, written, blocking.length > 0 ? reason : null));
      terminal.tell(`Recorded in ${record.path}.`);
    }
    return exitCodes.fine;
  },
});

/** The hand-over since which only changes are written; null, and told, where there is none. */
function lastOf({ path, last, isThere }: HandOverRecord, board: string, terminal: Terminal): HandOver | null {
  if (last?.board === board) return last;
  const none = isThere ? `${path} is no record of a hand-over to this board` : `There is no ${path}`;
  terminal.tell(`${none}: all of it is written.`);
  return null;
}
