import type { Position } from 'vscode-languageserver-protocol';
import type { Bench } from './group';
import { against, interleaved, type Measure } from './measure';
import { equalWork } from './peers/documents';
import type { LanguageServer } from './peers/language-server';
import { inScratch, type Running } from './peers/running';
import { echo, ours } from './peers/servers';

const goal = 1.5;
const settings = 10_000;

/** Hover and completion asked for in the same breath as an edit, against answers of the same size at once. */
export async function answerMeasures({ root, runs }: Bench): Promise<readonly Measure[]> {
  const work = equalWork(settings, root).craft;
  return inScratch(root, async (folder, start) => {
    const own = await start(ours(folder), work, 1);
    const hover = (await hovered(own, 0)).answer;
    const completion = (await completed(own)).answer;
    await own.server.edit(named(own.place), 1, '');
    if (hover === null || completion === null) throw new Error('the server has nothing to answer');
    const other = await start(await echo(folder, { diagnostics: own.found, hover, completion }), work, 1);

    const count = runs(60, 10);
    const [ourHover, echoHover] = await interleaved(
      count,
      [own, other].map((one) => async (run: number) => (await hovered(one, run + 1)).ms),
    );
    const [ourItems, echoItems] = await interleaved(
      count,
      [own, other].map((one) => async () => {
        const { ms } = await completed(one);
        await one.server.edit(named(one.place), 1, '');
        return ms;
      }),
    );
    if (!ourHover || !echoHover || !ourItems || !echoItems) throw new Error('nothing was measured');
    const name = 'right after an edit over stdio, 10,000 settings';
    const peer = 'echo server with an answer of the same size';
    return [
      against(`hover ${name}`, ourHover, peer, echoHover, goal),
      against(`completion ${name}`, ourItems, peer, echoItems, goal),
    ];
  });
}

/** A number changes, and what it is of is looked at. */
function hovered({ server, place }: Running, run: number): ReturnType<LanguageServer['hoverAfterEdit']> {
  const isPutIn = run % 2 === 0;
  return server.hoverAfterEdit(place, isPutIn ? 0 : 1, isPutIn ? '9' : '', {
    line: place.line,
    character: 1,
  });
}

/** The first letter of a name is typed on an empty line, where names are offered. */
function completed({ server, place }: Running): ReturnType<LanguageServer['completeAfterEdit']> {
  const at = named(place);
  return server.completeAfterEdit(at, 0, 'm', { line: at.line, character: at.character + 1 });
}

/** The empty line above the section's header, which still belongs to the section before it. */
function named({ line }: Position): Position {
  return { line: line - 2, character: 0 };
}
