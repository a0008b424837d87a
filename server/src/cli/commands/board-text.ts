import type { Profile } from '../../board/profile/profile';
import { handOverOf, piecesOf } from '../../board/writing/write-text';
import type { HandOver } from '../../catalog/model/hand-over';
import { blockedText, prepareBoardText } from '../../features/board/hand-over';
import { parseQuantity } from '../../units/quantity';
import { boardOption, command, nameOption, packOption } from '../command';
import { HandOverRecord } from '../files/hand-over-record';
import { needsIncludes, oneScript } from '../files/one-script';
import { exitCodes, UsageError } from '../outcome';
import type { Terminal } from '../terminal';
import { chosenProfile } from './board-choice';
import { templateText } from './template-text';

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
    over: {
      type: 'string',
      value: 'capture',
      about:
        'the text that was captured from the board: only its values change; without it the text that the script includes',
    },
    piece: {
      type: 'string',
      value: 'number',
      about: 'only that piece of those that the board takes at once',
    },
    paced: { type: 'boolean', about: 'piece by piece, with the pause that the board needs between them' },
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
    const script = await oneScript(wanted, values.pack, terminal);
    const { view, findings, file, around, workspace } = script;
    if (values.record === true && file.path === '-')
      throw new UsageError('--record needs a script with a name');
    const named = values.board ?? view.craft.boardName();
    const known = named === null ? null : await chosenProfile(around, named, null);
    const forms = known?.text.forms ?? null;
    const captured = await templateText(values.over, workspace, view.craft, forms, terminal);
    if (known === null && captured === null) needsIncludes(script);
    // A captured text says by itself how its board writes.
    const profile = known ?? (captured === null ? await chosenProfile(around, undefined, null) : null);
    const isRemembered = values.record === true;
    const isChange = values.changed === true;
    const record = isChange || isRemembered ? await HandOverRecord.beside(file.path) : null;
    if (isRemembered && record?.isSomethingElse === true)
      throw new UsageError(`${record.path} is no record of a hand-over: move it away, or leave --record out`);
    const since = isChange && record !== null ? lastOf(record, profile?.name ?? '', terminal) : null;
    const preparation = { profile, captured, view, findings, since, reason };
    const { written, entries, blocking, report } = prepareBoardText(preparation);
    if (blocking.length > 0 && reason === null) {
      for (const line of blockedText(blocking, workspace)) terminal.message(line);
      terminal.message('Mend them, or say --despite "<reason>": the reason is written into the text.');
      return exitCodes.findings;
    }
    await handOut(piecesOf(profile, written), values, profile, terminal);
    for (const line of report) terminal.message(line);
    const others = view.craft.packs().filter((name) => name !== view.pack);
    if (values.pack === undefined && others.length > 0)
      terminal.message(`The script has other packs: ${others.join(', ')}; --pack takes one of them.`);
    if (isRemembered && record !== null) {
      const why = blocking.length > 0 ? reason : null;
      await record.remember(handOverOf(profile?.name ?? '', view.pack, entries, why));
      terminal.message(`Recorded in ${record.path}.`);
    }
    return exitCodes.fine;
  },
});

/** So many seconds. */
function passed(seconds: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 1000 * seconds));
}

interface Handing {
  readonly piece?: string | undefined;
  readonly paced?: boolean | undefined;
}

/** Between pieces, where nobody has said how long the board takes. */
const usualPause = 0.5;

/** To standard output: all of it, one piece, or piece by piece as fast as the board takes them. */
async function handOut(
  pieces: readonly string[],
  { piece, paced }: Handing,
  profile: Profile | null,
  terminal: Terminal,
): Promise<void> {
  if (piece !== undefined) {
    const text = pieces[Number(piece) - 1];
    if (text === undefined) throw new UsageError(`--piece takes a number from 1 to ${pieces.length}`);
    await terminal.out(text);
    terminal.message(`Piece ${piece} of ${pieces.length}.`);
    return;
  }
  const pause = parseQuantity(profile?.text.pace?.pause ?? '')?.value ?? usualPause;
  for (const [index, text] of pieces.entries()) {
    if (paced === true && index > 0) await passed(pause);
    await terminal.out(text);
  }
}

/** The hand-over since which only changes are written; null, and told, where there is none. */
function lastOf({ path, last, isThere }: HandOverRecord, board: string, terminal: Terminal): HandOver | null {
  if (last?.board === board) return last;
  const none = isThere ? `${path} is no record of a hand-over to this board` : `There is no ${path}`;
  terminal.message(`${none}: all of it is written.`);
  return null;
}
