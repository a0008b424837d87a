import type { Stats } from 'node:fs';
import { link, lstat, open, realpath, rename, rm, stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { readBytes } from './read-file';
import { codeOf, reasonOf } from './reasons';

/**
 * Writes a file whole or leaves it as it is: the content is written beside it, flushed to the disk, and then takes
 * its name. Mode and owner stay; of a link, what it leads to is written. `was` is the content that was read, null
 * where there was no file: what holds something else by now is left alone. `take` is the last step; a test lets
 * something happen around it.
 * @throws {Error} whose message says why nothing was written, as the end of a sentence
 */
export async function replaceFile(
  path: string,
  was: string | null,
  content: string,
  take: typeof rename = rename,
): Promise<void> {
  try {
    await (was === null ? create(path, content) : replace(await realpath(path), was, content, take));
  } catch (error) {
    throw new Error(reasonOf(error, 'written'), { cause: error });
  }
}

const changed = 'something else changed it meanwhile; try again';

async function create(path: string, content: string): Promise<void> {
  const beside = nameBeside(path);
  try {
    await writeFlushed(beside, content, null);
    await giveNewName(beside, path);
  } finally {
    await rm(beside, { force: true });
  }
}

/** Unlike renaming, linking never takes the place of a file that came meanwhile; not every disk can. */
async function giveNewName(beside: string, path: string): Promise<void> {
  try {
    await link(beside, path);
  } catch (error) {
    if (codeOf(error) === 'EEXIST' || (await isThere(path))) throw new Error(changed, { cause: error });
    await rename(beside, path);
  }
}

async function replace(path: string, was: string, content: string, take: typeof rename): Promise<void> {
  const stats = await stat(path);
  if (stats.nlink > 1)
    throw new Error(`it is one file with ${stats.nlink} names (hard links), and the others would not change`);
  // Who may write into its folder could take its name from a file that is protected.
  await (await open(path, 'r+')).close();
  const beside = nameBeside(path);
  try {
    await writeFlushed(beside, content, stats);
    if (await holds(path, content)) return;
    if (!(await holds(path, was))) throw new Error(changed);
    await swap(path, beside, was, content, take);
  } finally {
    await rm(beside, { force: true });
  }
}

/** What is added between the last look and the renaming is in the old file, which therefore keeps a name till then. */
async function swap(path: string, beside: string, was: string, content: string, take: typeof rename) {
  const old = await otherName(path);
  try {
    await take(beside, path);
  } catch (error) {
    if (old !== null) await rm(old);
    throw error;
  }
  if (old === null) return;
  if (await holds(old, was)) return rm(old);
  if (!(await holds(path, content))) throw new Error(`${changed} with what it held, which is in ${old}`);
  await rename(old, path);
  throw new Error(changed);
}

/** Null on a disk that has no links. */
async function otherName(path: string): Promise<string | null> {
  const name = nameBeside(path);
  return link(path, name).then(
    () => name,
    () => null,
  );
}

async function holds(path: string, content: string): Promise<boolean> {
  return (await readBytes(path)).equals(Buffer.from(content));
}

async function isThere(path: string): Promise<boolean> {
  return lstat(path).then(
    () => true,
    () => false,
  );
}

let names = 0;

/** A hidden name in the same folder that no other process takes. */
function nameBeside(path: string): string {
  names += 1;
  return join(dirname(path), `.propsoff-${process.pid}-${Date.now().toString(36)}-${names}`);
}

/** A new file with the mode and the owner of another one. */
async function writeFlushed(path: string, content: string, like: Stats | null): Promise<void> {
  const handle = await open(path, 'wx', like === null ? 0o666 : 0o600).catch((error: unknown) => {
    if (codeOf(error) !== 'EACCES') throw error;
    throw new Error('nothing may be written into its folder', { cause: error });
  });
  try {
    await handle.writeFile(content);
    if (like !== null) {
      const own = await handle.stat();
      if (own.uid !== like.uid || own.gid !== like.gid)
        await handle.chown(like.uid, like.gid).catch((error: unknown) => {
          throw new Error('it belongs to somebody else, and would not any more', { cause: error });
        });
      await handle.chmod(like.mode & 0o7777);
    }
    await handle.sync();
  } finally {
    await handle.close();
  }
}
