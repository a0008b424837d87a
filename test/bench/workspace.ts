import { readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import {
  type PreviousResultId,
  RenameRequest,
  type WorkspaceDiagnosticReport,
  WorkspaceDiagnosticRequest,
} from 'vscode-languageserver-protocol/node';
import { type Scratch, withScratch } from '../support/scratch';
import { askingClient, type TestServer, withOwnServer } from '../support/server';
import { ended } from './command-line';
import type { Bench } from './group';
import { against, elapsed, interleaved, type Measure } from './measure';

/** More crafts than any club has. */
const crafts = 300;
const shared = 'club-habits.craft';
const constant = 'let club-tones = 90 Hz\n';
const atConstant = { line: 0, character: 6 };

/** A rename and a look for a word may differ by what reading lines costs; the rest is what the command line does too. */
const goals = { first: 30, again: 3, findings: 1.5, edit: 1.5 };

/** What reaches the scripts that nobody has opened, against a look for a word and against the command line. */
export async function workspaceMeasures({ root, runs }: Bench): Promise<readonly Measure[]> {
  return withScratch(files(root), async (scratch) => {
    const renames: number[] = [];
    const edits: number[] = [];
    const renamed = () => withHabits(scratch, (server) => renamedTwice(server, scratch, renames));
    const found = () => withHabits(scratch, (server) => foundTwice(server, scratch, edits));
    const looked = () => elapsed(() => lookedFor('club-tones', scratch));
    const checked = () => ended([built, 'check', scratch.path]);
    const [count, few] = [runs(8, 2), runs(3, 1)];
    const [first, look] = await interleaved(count, [renamed, looked]);
    const [all, check] = await interleaved(few, [found, checked]);
    const [again] = await interleaved(renames.length, [(run) => renames[run] ?? Number.NaN]);
    const [edit] = await interleaved(edits.length - 1, [(run) => edits[run] ?? Number.NaN]);
    if (!first || !look || !all || !check || !again || !edit) throw new Error('nothing was measured');
    const of = `${crafts} crafts that nobody has opened`;
    return [
      against(
        `rename of a constant in ${of}, first`,
        first,
        'a look for the word in all files',
        look,
        goals.first,
      ),
      against('the same again', again, 'a look for the word in all files', look, goals.again),
      against(`findings of ${of}`, all, 'propsoff check of the folder', check, goals.findings),
      against(
        'edit of what they all include to their findings',
        edit,
        'propsoff check of the folder',
        check,
        goals.edit,
      ),
    ];
  });
}

const built = join(__dirname, '../../dist/propsoff.js');

function files(root: string): Readonly<Record<string, string>> {
  const demo = (name: string) => readFileSync(join(root, 'test/demo', name), 'utf8');
  const craft = demo('wagtail.craft');
  const numbered = Array.from({ length: crafts }, (_, at) => [
    `craft-${at}.craft`,
    `${craft}\n[gyro.filter.8]\nkind = butterworth\ncutoff = ${at} Hz + club-tones\n`,
  ]);
  return { [shared]: constant + demo(shared), ...Object.fromEntries(numbered) };
}

function withHabits(scratch: Scratch, run: (server: TestServer) => Promise<number>): Promise<number> {
  return withOwnServer({ folders: [scratch.uri], capabilities: askingClient }, async (server) => {
    await server.open(scratch.uriOf(shared), scratch.read(shared));
    return run(server);
  });
}

async function renamedTwice(server: TestServer, scratch: Scratch, again: number[]): Promise<number> {
  const rename = async () => {
    const textDocument = { uri: scratch.uriOf(shared) };
    const edit = await server.connection.sendRequest(RenameRequest.type, {
      textDocument,
      position: atConstant,
      newName: 'quiet-tones',
    });
    if (edit?.documentChanges?.length !== crafts + 1) throw new Error('not every script was renamed in');
  };
  const first = await elapsed(rename);
  again.push(await elapsed(rename));
  return first;
}

async function foundTwice(server: TestServer, scratch: Scratch, edits: number[]): Promise<number> {
  let previousResultIds: PreviousResultId[] = [];
  const ask = async () => {
    const { items }: WorkspaceDiagnosticReport = await server.connection.sendRequest(
      WorkspaceDiagnosticRequest.type,
      { previousResultIds },
    );
    if (items.length <= crafts) throw new Error(`${items.length} scripts were told of`);
    previousResultIds = items.flatMap(({ uri, resultId }) =>
      resultId === undefined ? [] : [{ uri, value: resultId }],
    );
  };
  const first = await elapsed(ask);
  const start = { line: 0, character: constant.indexOf('90') };
  const edit = async () => {
    const range = { start, end: { line: 0, character: start.character + 5 } };
    await server.change(scratch.uriOf(shared), 2, { range, text: '90 V ' });
    await ask();
  };
  edits.push(await elapsed(edit));
  return first;
}

/** What every editor does when a person looks for a word in files. */
async function lookedFor(word: string, scratch: Scratch): Promise<void> {
  let found = 0;
  for (let at = 0; at < crafts; at += 1) {
    const text = await readFile(scratch.file(`craft-${at}.craft`), 'utf8');
    if (text.split('\n').some((line) => line.includes(word))) found += 1;
  }
  if (found !== crafts) throw new Error('the word was not found');
}
