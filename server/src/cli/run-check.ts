import type { Catalog } from '../catalog/catalog';
import { chosenProfile } from './board-choice';
import { type Lane, threadLane, threadsFor } from './check-threads';
import { boardTextEnding } from './checked-board-text';
import type { CheckedFile } from './checked-file';
import { faultyAdditions, here } from './here';
import { UsageError } from './outcome';
import { Progress } from './progress';
import { type CheckedScript, type CheckOptions, ScriptChecker } from './script-checker';
import { gatherScripts, type ScriptFile } from './scripts';
import type { Terminal } from './terminal';

/** What is to be checked, as it was typed. */
export interface CheckRequest extends CheckOptions {
  readonly paths: readonly string[];
  readonly name: string | undefined;
}

/** What a check found. */
export interface Checked {
  readonly files: readonly CheckedFile[];
  readonly unreadable: readonly string[];
  /** The URIs of the scripts that were checked and of all that they include, also of what is missing. */
  readonly read: readonly string[];
  /** What the findings are known by. */
  readonly catalog: Catalog;
}

/** Reads and checks all that was asked for, from the disk as it is now. */
export async function checkOnce(request: CheckRequest, terminal: Terminal): Promise<Checked> {
  const { paths, name, pack, board, hasFixes } = request;
  const endings = ['.craft', boardTextEnding];
  const { scripts, unreadable } = await gatherScripts({ paths, name, endings }, terminal);
  const around = await here();
  const { catalog } = around.additions;
  if (board !== undefined) chosenProfile(catalog, board, null);
  const options = { pack, board, hasFixes };
  const count = threadsFor(scripts.length);
  const lanes =
    count < 2
      ? [ownLane(new ScriptChecker(around, options))]
      : Array.from({ length: count }, () => threadLane(options));
  const checked = await checkIn(lanes, scripts, terminal);
  for (const fault of checked.flatMap(({ faults }) => faults)) terminal.err(`propsoff: ${fault}\n`);
  if (pack !== undefined) refuseUnknownPack([...new Set(checked.flatMap(({ packs }) => packs))], pack);
  const read = [...new Set(checked.flatMap((one) => one.read))];
  return {
    files: [...faultyAdditions(around), ...checked.map(({ file }) => file)],
    unreadable,
    read,
    catalog,
  };
}

function ownLane(checker: ScriptChecker): Lane {
  return { check: (script) => checker.check(script), end: async () => {} };
}

async function checkIn(
  lanes: readonly Lane[],
  scripts: readonly ScriptFile[],
  terminal: Terminal,
): Promise<readonly CheckedScript[]> {
  try {
    const checks = lanes.map((lane) => (script: ScriptFile) => lane.check(script));
    return await new Progress(terminal).over(scripts, checks);
  } finally {
    await Promise.all(lanes.map((lane) => lane.end()));
  }
}

function refuseUnknownPack(packs: readonly string[], pack: string): void {
  if (packs.includes(pack)) return;
  const known = packs.length === 0 ? 'they name none' : `they name ${packs.join(', ')}`;
  throw new UsageError(`none of the scripts has a pack "${pack}": ${known}`);
}
