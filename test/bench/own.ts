import type { Bench } from './group';
import { against, interleaved, type Measure } from './measure';
import type { EditedText } from './peers/documents';
import { edits, inScratch, type Running } from './peers/running';
import { echo, ours } from './peers/servers';

/** The same goals as for settings that the catalogue knows; a header may take what a hundred lines take to be renewed. */
const goals = { edit: 2, header: 4, answer: 1.5 };
const groups = 50;
const inEach = 100;

/** Settings that only the board knows, edited in place: in a value, and in the header of a hundred of them. */
export async function ownMeasures({ root, runs }: Bench): Promise<readonly Measure[]> {
  const work = listed();
  return inScratch(root, async (folder, start) => {
    const own = await start(ours(folder), work, 0);
    const hover = (await hovered(own, 0)).answer;
    const canned = { diagnostics: own.found, hover, completion: null };
    await own.server.edit(own.place, 1, '');
    const other = await start(await echo(folder, canned), work, 0);
    const inHeader = (one: Running): Running => ({
      ...one,
      place: { line: headerOf(groups / 2), character: 12 },
    });
    const count = runs(200, 10);
    const edited = await interleaved(count, [edits(own), edits(other)]);
    const headed = await interleaved(
      count,
      [own, other].map((one) => edits(inHeader(one))),
    );
    const told = await interleaved(
      count,
      [own, other].map((one) => async (run: number) => (await hovered(one, run)).ms),
    );
    const name = `${(groups * inEach).toLocaleString('en')} settings of the board's own`;
    return [
      measure(`edit to published findings over stdio, ${name}`, edited, goals.edit),
      measure(`the same in a header of ${inEach} of them`, headed, goals.header),
      measure(`hover right after an edit over stdio, ${name}`, told, goals.answer),
    ];
  });
}

type Taken = Awaited<ReturnType<typeof interleaved>>;

function measure(name: string, [mine, theirs]: Taken, goal: number): Measure {
  if (mine === undefined || theirs === undefined) throw new Error('nothing was measured');
  return against(name, mine, 'echo server with as many findings', theirs, goal);
}

function hovered({ server, place }: Running, run: number) {
  const isPutIn = run % 2 === 0;
  return server.hoverAfterEdit(place, isPutIn ? 0 : 1, isPutIn ? '9' : '', {
    line: place.line,
    character: 1,
  });
}

function headerOf(group: number): number {
  return group * (inEach + 1);
}

/** As a large board lists them; the place is in front of a value in the middle. */
function listed(): EditedText {
  const lines = Array.from({ length: groups }, (_, group) => [
    `[own."group ${group}"]`,
    ...Array.from({ length: inEach }, (__, at) => `"setting ${at}" = ${values[at % values.length]} ${at}`),
  ]).flat();
  const line = headerOf(groups / 2) + inEach / 2;
  return { text: `${lines.join('\n')}\n`, place: { line, character: (lines[line] ?? '').indexOf('=') + 2 } };
}

const values = ['0x1F', '1,5', 'on', '-40', 'größe', '8000 4000'];
