import { readFile, writeFile } from 'node:fs/promises';
import { handOverOf } from '../board/write';
import { type HandOver, readHandOver } from '../catalog/model/hand-over';
import { blockedText, prepareBoardText } from '../features/hand-over';
import { chosenProfile } from './board-choice';
import { boardOption, command, nameOption, packOption } from './command';
import { oneScript } from './one-script';
import { exitCodes, UsageError } from './outcome';
import { type Terminal, visible } from './terminal';

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
    const profile = chosenProfile(around.additions.catalog, values.board, view.board?.name ?? null);
    const record = recordPath(file.path);
    const since = values.changed === true ? await lastRecord(record, profile.board.name, terminal) : null;
    const { written, blocking, report } = prepareBoardText({ profile, view, findings, since, reason });
    if (blocking.length > 0 && reason === null) {
      for (const line of blockedText(blocking)) say(terminal, line);
      say(terminal, 'Mend them, or say --despite "<reason>": the reason is written into the text.');
      return exitCodes.findings;
    }
    terminal.out(written.text);
    for (const line of report) say(terminal, line);
    if (values.record === true) {
      const given = handOverOf(profile, view, written, blocking.length > 0 ? reason : null);
      await writeFile(record, `${JSON.stringify(given, null, 2)}\n`);
      say(terminal, `Recorded in ${record}.`);
    }
    return exitCodes.fine;
  },
});

/** Where a hand-over is remembered, beside its script. */
function recordPath(script: string): string {
  return `${script}.handed.json`;
}

async function lastRecord(path: string, board: string, terminal: Terminal): Promise<HandOver | null> {
  let text: string;
  try {
    text = await readFile(path, 'utf8');
  } catch {
    say(terminal, `There is no ${path}: all of it is written.`);
    return null;
  }
  const record = readHandOver(text);
  if (record?.board === board) return record;
  say(terminal, `${path} is no record of a hand-over to this board: all of it is written.`);
  return null;
}

function say(terminal: Terminal, line: string): void {
  terminal.err(`${visible(line)}\n`);
}
