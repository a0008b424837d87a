import { benchCard } from '../sheet/bench-card/bench-card';
import { benchCardMarkdown } from '../sheet/bench-card/markdown';
import { benchCardPage } from '../sheet/bench-card/page';
import { oneScript } from './one-script';
import { readOptions } from './options';
import { exitCodes, UsageError } from './outcome';
import { type Terminal, visible } from './terminal';

/** `propsoff bench-card`: what is done on the bench to prove a craft, as Markdown, as a page or as data. */
export async function runBenchCard(args: readonly string[], terminal: Terminal): Promise<number> {
  const { values, positionals } = readOptions(args, {
    pack: { type: 'string' },
    html: { type: 'boolean' },
    json: { type: 'boolean' },
  });
  const [path] = positionals;
  if (path === undefined || positionals.length > 1) throw new UsageError('bench-card takes one script');
  if (values.html === true && values.json === true)
    throw new UsageError('bench-card writes one form: --html or --json');
  const { craft, findings, view } = await oneScript('bench-card', path, values.pack, terminal);
  if (!craft.isWhole())
    throw new UsageError(
      `${path} is a part that others include: take a script that says something under [craft]`,
    );
  const card = benchCard(craft, findings, view.pack);
  if (values.json === true) terminal.out(`${JSON.stringify({ version: 1, ...card }, null, 2)}\n`);
  else if (values.html === true) terminal.out(benchCardPage(card));
  else terminal.out(benchCardMarkdown(card).split('\n').map(visible).join('\n'));
  return card.first.length === 0 ? exitCodes.fine : exitCodes.findings;
}
