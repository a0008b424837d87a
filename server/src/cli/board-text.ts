import { readFile, writeFile } from 'node:fs/promises';
import { handOverOf } from '../board/write';
import { type HandOver, readHandOver } from '../catalog/model/hand-over';
import { blockedText, prepareBoardText } from '../features/hand-over';
import { chosenProfile } from './board-choice';
import { oneScript } from './one-script';
import { readOptions } from './options';
import { exitCodes, UsageError } from './outcome';
import { type Terminal, visible } from './terminal';

/** `propsoff board-text`: the text to standard output, everything else to standard error. */
export async function runBoardText(args: readonly string[], terminal: Terminal): Promise<number> {
  const { values, positionals } = readOptions(args, {
    board: { type: 'string' },
    pack: { type: 'string' },
    changed: { type: 'boolean' },
    record: { type: 'boolean' },
    despite: { type: 'string' },
  });
  const [path] = positionals;
  if (path === undefined || positionals.length > 1) throw new UsageError('board-text takes one script');
  const reason = values.despite?.trim() ?? null;
  if (reason === '') throw new UsageError('--despite takes the reason in words');
  const script = await oneScript('board-text', path, values.pack, terminal);
  const { view, findings, file } = script;
  const profile = chosenProfile(script.around.additions.catalog, values.board, view.board?.name ?? null);
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
    if (file.path === '-') throw new UsageError('--record needs a script with a name');
    const given = handOverOf(profile, view, written, blocking.length > 0 ? reason : null);
    await writeFile(record, `${JSON.stringify(given, null, 2)}\n`);
    say(terminal, `Recorded in ${record}.`);
  }
  return exitCodes.fine;
}

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
