import { boardRenderer } from '../../features/board/finding-words';
import { allFigures, buildSheet } from '../../sheet/build-sheet';
import { narrowings } from '../../sheet/narrowing/narrowing';
import { withheldOf } from '../../sheet/not-known';
import { command, jsonOption, nameOption, packOption } from '../command';
import { HandOverRecord } from '../files/hand-over-record';
import { type OneScript, oneScript } from '../files/one-script';
import type { SheetRecorded } from '../files/sheet-recorded';
import { asksVariant, comparedVariant, variantOptions } from '../files/variant';
import { exitCodes, UsageError } from '../outcome';
import { comparisonText } from '../report/compare-text';
import { narrowingText, sheetText } from '../report/sheet-text';
import { jsonText } from '../report/visible';
import type { Terminal } from '../terminal';

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
    surer: {
      type: 'boolean',
      about: 'also what to measure so that the span of a figure falls most, each tried on this craft',
    },
    recorded: {
      type: 'boolean',
      about: 'also what the last flight that names a recording measured, beside the figures',
    },
    ...variantOptions,
    name: nameOption,
  },
  examples: [
    ['propsoff sheet my.craft', 'read it in the terminal'],
    ['propsoff sheet my.craft --pack sprint --json', 'every figure with its low and high end, for a program'],
    ['propsoff sheet my.craft --surer', 'and what to measure so that figures get surer'],
    ['propsoff sheet my.craft --recorded', 'and what a recorded flight says beside it'],
    ['propsoff sheet my.craft --if "craft.payload = 90 g" --cold', 'and what a camera costs in winter'],
  ],
  exit: { fine: 'the sheet was made, whatever was found', findings: null },
  run: async ({ values, positionals }, terminal) => {
    const [path] = positionals;
    if (path === undefined || positionals.length > 1) throw new UsageError('sheet takes one script');
    const wanted = { command: 'sheet', path, name: values.name };
    const one = await oneScript(wanted, values.pack, terminal);
    const { craft, findings, view, workspace } = one;
    const handed = path === '-' ? null : (await HandOverRecord.beside(path)).last;
    const sheet = buildSheet(craft, findings, view.pack, handed, boardRenderer(workspace));
    const otherwise = asksVariant(values) ? comparedVariant(one, path, values) : null;
    const narrowing = values.surer === true ? narrowings(craft, view.pack) : null;
    const recorded = values.recorded === true ? await recordedIn(one, terminal) : null;
    await terminal.out(
      values.json === true
        ? jsonText({
            version: 1,
            ...sheet,
            figures: allFigures(craft),
            withheld: withheldOf(craft),
            ...(narrowing === null ? {} : { narrowing }),
            ...(otherwise === null ? {} : { otherwise }),
            ...(recorded === null ? {} : { recorded }),
          })
        : [
            sheetText(sheet, terminal, recorded),
            narrowing === null ? '' : narrowingText(narrowing, terminal),
            otherwise === null ? '' : `\n${comparisonText(otherwise, terminal, { isWhole: true })}`,
          ].join(''),
    );
    return exitCodes.fine;
  },
});

/** Reading a recording is a part by itself. */
async function recordedIn(one: OneScript, terminal: Terminal): Promise<SheetRecorded> {
  const { sheetRecorded } = await import('../files/sheet-recorded');
  return sheetRecorded(one, terminal);
}
