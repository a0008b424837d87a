import { once } from 'node:events';
import { availableParallelism } from 'node:os';
import { parentPort, Worker, workerData } from 'node:worker_threads';
import { here } from './here';
import { type CheckedScript, type CheckOptions, ScriptChecker } from './script-checker';
import type { ScriptFile } from './scripts';

/** One that checks scripts beside others. */
export interface Lane {
  check(script: ScriptFile): Promise<CheckedScript>;
  end(): Promise<unknown>;
}

/** To start a thread takes about as long as to check so many scripts. */
const worthAThread = 32;

/** How many threads are worth their start for so many scripts; below two, none is. */
export function threadsFor(scripts: number): number {
  return Math.min(availableParallelism(), Math.floor(scripts / worthAThread));
}

/** A thread that checks scripts: this program once more, which then calls `serveLane`. */
export function threadLane(options: CheckOptions): Lane {
  const worker = new Worker(__filename, { workerData: options });
  return {
    check: async (script) => {
      worker.postMessage(script);
      const [checked] = (await once(worker, 'message')) as [CheckedScript];
      return checked;
    },
    end: () => worker.terminate(),
  };
}

/** The other end of `threadLane`: checks what it is sent until it is ended. */
export async function serveLane(): Promise<void> {
  const checker = new ScriptChecker(await here(), workerData as CheckOptions);
  parentPort?.on('message', async (script: ScriptFile) => {
    parentPort?.postMessage(await checker.check(script));
  });
}
