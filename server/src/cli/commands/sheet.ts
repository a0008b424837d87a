import { allFigures, buildSheet } from '../../sheet/build-sheet';
import { command, jsonOption, nameOption, packOption } from '../command';
import { HandOverRecord } from '../files/hand-over-record';
import { oneScript } from '../files/one-script';
import { exitCodes, UsageError } from '../outcome';
import { sheetText } from '../report/sheet-text';
import { jsonText } from '../report/visible';

/** `propsoff sheet`: the build sheet of one script, for people or as data. */
export const sheetCommand = command({
  name: 'sheet',
  summary: 'the build sheet of one script: figures for every pack, wiring, findings',
  usage: ['<script | -> [options]'],
  about: [
    'The build sheet of one script: what was found, what is wired where, what the hands do, how late and how quiet it is, figures for every pack, who sees it, what was learnt. Figures are estimates, with their span in brackets.',
  ],
  options: {
    json: jsonOption('sheet', 'one JSON object, with the numbers behind every figure'),
    pack: packOption,
    name: nameOption,
  },
  examples: [
    ['propsoff sheet my.craft', 'read it in the terminal'],
    ['propsoff sheet my.craft --pack sprint --json', 'every figure with its low and high end, for a program'],
  ],
  exit: { fine: 'the sheet was made, whatever was found', findings: null },
  run: async ({ values, positionals }, terminal) => {
    const [path] = positionals;
    if (path === undefined || positionals.length > 1) throw new UsageError('sheet takes one script');
    const wanted = { command: 'sheet', path, name: values.name };
    const { craft, findings, view } = await oneScript(wanted, values.pack, terminal);
    const handed = path === '-' ? null : (await HandOverRecord.beside(path)).last;
    const sheet = buildSheet(craft, findings, view.pack, handed);
    await terminal.out(
      values.json === true
        ? jsonText({ version: 1, ...sheet, figures: allFigures(craft) })
        : sheetText(sheet, terminal),
    );
    return exitCodes.fine;
  },
});
