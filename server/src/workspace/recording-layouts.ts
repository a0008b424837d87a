import { layoutIn } from '../additions/read-layout';
import { fileName } from '../craft/include-path';
import type { NamedLayout } from '../recording/layout';
import { type FileSystem, whyUnreadable } from './file-system';

/** Where confirmed layouts are kept, in a folder of the workspace or beside the recording. */
const folder = 'recordings';

/** What pilots have confirmed about the columns of loggers, for a recording. */
export interface KeptLayouts {
  readonly layouts: readonly NamedLayout[];
  /** Files that are no layouts, as finished sentences. */
  readonly faults: readonly string[];
}

/** Those of the workspace's folders that hold a recording, and those beside it. */
export async function keptLayouts(files: FileSystem, recording: string): Promise<KeptLayouts> {
  const beside = recording.slice(0, recording.lastIndexOf('/'));
  const folders = new Set([...files.foldersOf(recording), beside].map((one) => `${one}/${folder}`));
  const found = await Promise.all([...folders].map((one) => layoutsIn(files, one)));
  return {
    layouts: found.flatMap(({ layouts }) => layouts),
    faults: found.flatMap(({ faults }) => faults),
  };
}

async function layoutsIn(files: FileSystem, place: string): Promise<KeptLayouts> {
  const layouts: NamedLayout[] = [];
  const faults: string[] = [];
  try {
    const names = (await files.list(place)).filter((uri) => uri.endsWith('.json'));
    for (const uri of [...names].sort()) {
      const name = `${folder}/${fileName(uri)}`;
      const { layout, fault } = await layoutOfFile(files, uri);
      if (layout !== null) layouts.push({ name, layout });
      else if (fault !== null)
        faults.push(
          `${name} is no layout of a recording (${fault}), so that it counts for nothing: mend it, or confirm the columns anew.`,
        );
    }
  } catch (error) {
    faults.push(`The folder ${folder} could not be looked into: ${whyUnreadable(error)}.`);
  }
  return { layouts, faults };
}

async function layoutOfFile(files: FileSystem, uri: string) {
  try {
    const text = await files.readText(uri);
    return text === null ? { layout: null, fault: null } : layoutIn(text);
  } catch (error) {
    return { layout: null, fault: whyUnreadable(error) };
  }
}
