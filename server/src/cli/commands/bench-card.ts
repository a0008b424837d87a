import { boardRenderer } from '../../features/board/finding-words';
import { benchCard } from '../../sheet/bench-card/bench-card';
import { benchCardMarkdown } from '../../sheet/bench-card/markdown';
import { benchCardPage } from '../../sheet/bench-card/page';
import { command, jsonOption, nameOption, packOption } from '../command';
import { oneScript } from '../files/one-script';
import { exitCodes, UsageError } from '../outcome';
import { jsonText, visible } from '../report/visible';

/** `propsoff bench-card`: what is done on the bench to prove a craft, as Markdown, as a page or as data. */
export const benchCardCommand = command({
  name: 'bench-card',
  summary: 'the steps that prove one craft on the bench',
  usage: ['<script | -> [options]'],
  about: [
    'What is done on the bench to prove the craft, only the steps that it needs, as Markdown to standard output. What must be mended first stands at the top. Propellers off for every step with a pack connected, up to the last part.',
  ],
  options: {
    pack: {
      ...packOption,
      about: 'a card for this pack alone; without it all packs of the script stand on one',
    },
    name: nameOption,
    html: { type: 'boolean', about: 'a page to print on A4 or A5' },
    json: jsonOption('bench-card', 'one JSON object'),
  },
  examples: [
    ['propsoff bench-card my.craft', 'read it in the terminal'],
    ['propsoff bench-card my.craft --pack sprint --html > card.html', 'a card to print, for one pack'],
  ],
  exit: { fine: 'the card is whole', findings: 'something must be mended first; the card says what' },
  run: async ({ values, positionals }, terminal) => {
    const [path] = positionals;
    if (path === undefined || positionals.length > 1) throw new UsageError('bench-card takes one script');
    if (values.html === true && values.json === true)
      throw new UsageError('bench-card writes one form: --html or --json');
    const wanted = { command: 'bench-card', path, name: values.name };
    const { file, craft, findings, workspace } = await oneScript(wanted, values.pack, terminal);
    if (craft.readAs() === 'empty')
      throw new UsageError(
        `nothing is written in ${file.path} yet, so there is nothing to prove on the bench`,
      );
    const card = benchCard(
      craft,
      findings,
      values.pack === undefined ? craft.packs() : [values.pack],
      boardRenderer(workspace),
    );
    if (values.json === true) await terminal.out(jsonText({ version: 1, ...card }));
    else if (values.html === true) await terminal.out(benchCardPage(card));
    else await terminal.out(benchCardMarkdown(card).split('\n').map(visible).join('\n'));
    return card.first.length === 0 ? exitCodes.fine : exitCodes.findings;
  },
});
