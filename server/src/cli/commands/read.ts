import { resolve } from 'node:path';
import { URI } from 'vscode-uri';
import { nothingBeside } from '../../board/kept/accepted';
import { makeScript } from '../../board/layer/make-script';
import { profileOfText } from '../../board/layer/profile-of-text';
import { readSummary } from '../../features/board/read-summary';
import { boardOption, command } from '../command';
import { currentFolder, withBoards, workspaceOf } from '../files/here';
import { readCapture } from '../files/scripts';
import { exitCodes, UsageError } from '../outcome';
import { chosenProfile } from './board-choice';

/** `propsoff read`: the script to standard output, the summary to standard error. */
export const readCommand = command({
  name: 'read',
  summary: 'a craft script from what a board holds',
  usage: ['<capture | -> [options]'],
  about: [
    'A craft script from text captured from a board, to standard output; the summary to standard error. Lines that nobody knows are kept and listed.',
  ],
  options: { board: boardOption },
  examples: [['propsoff read captured.txt > my.craft', 'begin a script with what the board holds']],
  exit: { fine: 'the script was written', findings: null },
  run: async ({ values, positionals }, terminal) => {
    const [path] = positionals;
    if (path === undefined || positionals.length > 1) throw new UsageError('read takes one capture');
    const around = await currentFolder();
    const capture = await readCapture(path, terminal);
    const uri = URI.file(resolve(path)).toString();
    if (path !== '-') await around.additions.boardsBeside([uri]);
    const origin = { fileName: path.replace(/^.*[\\/]/, ''), picked: values.board ?? null };
    const recognised = await withBoards(around, (catalog) => profileOfText(capture, { catalog, ...origin }));
    const named = values.board ?? recognised?.name ?? null;
    const profile = named === null ? null : await chosenProfile(around, named, null);
    const kept = path === '-' ? nothingBeside : await workspaceOf(around).keptBeside(uri);
    const made = makeScript(profile, around.additions.catalog, capture, kept);
    if (made.refused !== null) throw new UsageError(`${path}: ${made.refused}`);
    await terminal.out(made.text);
    for (const line of readSummary(made)) terminal.message(line);
    return exitCodes.fine;
  },
});
