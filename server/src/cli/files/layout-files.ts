import { mkdir, readdir } from 'node:fs/promises';
import { basename, dirname, join, relative, resolve } from 'node:path';
import { layoutIn } from '../../additions/read-layout';
import type { RecordingLayout } from '../../catalog/model/recording-layout';
import { fileText } from '../../file-system/file-text';
import { readBytes, readBytesIfThere } from '../../file-system/read-file';
import { reasonOf } from '../../file-system/reasons';
import { replaceFile } from '../../file-system/replace-file';
import { layoutText, type NamedLayout } from '../../recording/layout';
import { UsageError } from '../outcome';

const folder = 'recordings';
const ending = '.json';

/**
 * The layouts that are kept around a file: in the folder `recordings` beside the craft, beside the file or its
 * folder, and in the current folder. Faulty ones are told of, for a pilot thinks that they count.
 */
export async function layoutsAround(
  paths: readonly string[],
  message: (line: string) => void,
): Promise<readonly NamedLayout[]> {
  const found: NamedLayout[] = [];
  for (const path of foldersAround(paths)) {
    const names = await readdir(path).catch((): readonly string[] => []);
    for (const name of names.filter((one) => one.endsWith(ending)).sort()) {
      const file = join(path, name);
      const { layout, fault } = await readLayoutFile(file);
      if (layout === null) message(`${file} is no layout of a recording (${fault}), and is not used.`);
      else found.push({ name: asTyped(file), layout });
    }
  }
  return found;
}

/** From the current folder, where it is below. */
function asTyped(path: string): string {
  const below = relative(process.cwd(), path);
  return below.startsWith('..') ? path : below;
}

function foldersAround(paths: readonly string[]): readonly string[] {
  // Recordings mostly lie in a folder of their own, beside that of the layouts.
  const folders = paths.map((path) => dirname(resolve(path))).flatMap((one) => [one, dirname(one)]);
  const around = [...folders, process.cwd()].flatMap((one) => [
    join(one, folder),
    ...(basename(one) === folder ? [one] : []),
  ]);
  return [...new Set(around)];
}

async function readLayoutFile(path: string) {
  try {
    return layoutIn(fileText(await readBytes(path)));
  } catch (error) {
    return { layout: null, fault: reasonOf(error) };
  }
}

/** The layout that somebody names: a file, or one of those that are around by its name alone. */
export async function namedLayout(name: string, around: readonly NamedLayout[]): Promise<NamedLayout> {
  const known = around.find((one) => basename(one.name, ending) === name);
  if (known !== undefined) return known;
  const { layout, fault } = await readLayoutFile(name);
  if (layout !== null) return { name, layout };
  const names = around.map((one) => basename(one.name, ending));
  throw new UsageError(
    `there is no layout ${name} (${fault}); ${names.length === 0 ? 'none is kept here' : `there are ${names.join(', ')}`}`,
  );
}

/** Keeps a layout that was confirmed, in the current folder or, of a file from elsewhere, beside it; gives its path. */
export async function keepLayout(name: string, recording: string, layout: RecordingLayout): Promise<string> {
  if (!/^[\p{L}\p{N}][\p{L}\p{N} _-]{0,60}$/u.test(name))
    throw new UsageError(`--confirm takes a name of letters, digits, blanks and dashes, not "${name}"`);
  const isHere = !relative(process.cwd(), resolve(recording)).startsWith('..');
  const path = join(isHere ? '.' : dirname(recording), folder, `${name}${ending}`);
  try {
    await mkdir(dirname(path), { recursive: true });
    const old = await readBytesIfThere(path);
    await replaceFile(path, old === null ? null : fileText(old), layoutText(layout));
    return path;
  } catch (error) {
    throw new Error(`${path} could not be written: ${reasonOf(error, 'written')}`);
  }
}
