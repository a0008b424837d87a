import { URI } from 'vscode-uri';
import { reasonOf } from '../../file-system/reasons';
import { exitCodes, UsageError } from '../outcome';
import type { Terminal } from '../terminal';
import { nameOf, WatchedPlaces } from './watched-places';

/** What one check came to. */
export interface Ended {
  readonly exitCode: number;
  /** The URIs of all scripts that were read or looked for. */
  readonly read: readonly string[];
  /** Tells people what was found. */
  readonly report: () => Promise<void>;
}

/** Editors save in several steps; what comes within so many ms is one change. */
const calm = 60;

/**
 * Checks, and checks again whenever something changes that a check reads, until it is told to end. Ends with the
 * exit code of the last check.
 */
export async function watchAndCheck(
  paths: readonly string[],
  check: () => Promise<Ended>,
  terminal: Terminal,
): Promise<number> {
  const end = endSignal();
  const changes = new ChangedPaths();
  const watchers = new Watchers(changes, terminal);
  await watchers.places.addArguments(paths);
  await watchers.watchNewPlaces();
  try {
    let last = await settledCheck(check, watchers);
    for (;;) {
      await last.report();
      terminal.message('Watching for changes; Ctrl+C ends it.');
      const changed = await Promise.race([changes.next(), end]);
      if (changed === null) return last.exitCode;
      terminal.message('');
      terminal.message(`Changed: ${changed.map(nameOf).join(', ')}`);
      last = await settledCheck(() => checkedAgain(check, terminal), watchers);
    }
  } finally {
    await watchers.close();
  }
}

/** A check after which everything that it read is watched: what changes from its beginning on is not missed. */
async function settledCheck(check: () => Promise<Ended>, watchers: Watchers): Promise<Ended> {
  for (;;) {
    const ended = await check();
    for (const uri of ended.read) watchers.places.addFile(URI.parse(uri).fsPath);
    if (!(await watchers.watchNewPlaces())) return ended;
  }
}

/** What can't be checked now may be mended with the next change: it is reported, and does not end the watch. */
async function checkedAgain(check: () => Promise<Ended>, terminal: Terminal): Promise<Ended> {
  try {
    return await check();
  } catch (error) {
    if (!(error instanceof UsageError)) throw error;
    const report = async () => terminal.message(`propsoff: ${error.message}`);
    return { exitCode: exitCodes.couldNotRun, read: [], report };
  }
}

/** Watchers of the disk; each is told of changes from the moment on at which it is there. */
class Watchers {
  readonly places = new WatchedPlaces();
  private readonly watchers: { close(): Promise<void> }[] = [];

  constructor(
    private readonly changes: ChangedPaths,
    private readonly terminal: Terminal,
  ) {}

  /** Watches the places that are not watched yet; false where there are none. */
  async watchNewPlaces(): Promise<boolean> {
    const folders = await this.places.takeNew();
    if (folders.length === 0) return false;
    // Loaded only here: the other commands start without it.
    const { watch } = await import('chokidar');
    const watcher = watch([...folders], {
      ignoreInitial: true,
      ignored: (path, stats) => this.places.isOutside(path, stats?.isDirectory()),
    });
    this.watchers.push(watcher);
    // Folders too: what is written while a new one begins to be watched is told by the folder alone.
    for (const event of ['add', 'change', 'unlink', 'addDir', 'unlinkDir'] as const)
      watcher.on(event, (path: string) => this.changes.note(path));
    // A link that leads in a circle, say: the rest is watched all the same.
    watcher.on('error', (error) => this.terminal.message(`propsoff: not all is watched: ${reasonOf(error)}`));
    await new Promise<void>((resolve) => watcher.once('ready', () => resolve()));
    return true;
  }

  async close(): Promise<void> {
    await Promise.all(this.watchers.map((watcher) => watcher.close()));
  }
}

/** Resolves to null when somebody ends the program. */
function endSignal(): Promise<null> {
  return new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => resolve(null));
  });
}

/** Paths that changed since they were last asked for. */
class ChangedPaths {
  private readonly paths = new Set<string>();
  private wake: (() => void) | null = null;

  note(path: string): void {
    this.paths.add(path);
    this.wake?.();
  }

  /** Resolves once something has changed and it is calm again. */
  async next(): Promise<readonly string[]> {
    while (this.paths.size === 0) await new Promise<void>((resolve) => (this.wake = resolve));
    for (let before = -1; before !== this.paths.size; ) {
      before = this.paths.size;
      await new Promise((resolve) => setTimeout(resolve, calm));
    }
    const changed = [...this.paths].sort();
    this.paths.clear();
    return changed;
  }
}
