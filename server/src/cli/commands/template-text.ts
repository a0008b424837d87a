import type { Listing } from '../../board/listing/listing';
import { readListing } from '../../board/listing/read-listing';
import type { Forms } from '../../catalog/model/board-forms';
import type { Craft } from '../../craft/craft';
import { includedText } from '../../workspace/included-text';
import type { Workspace } from '../../workspace/workspace';
import { readCapture } from '../files/scripts';
import { UsageError } from '../outcome';
import type { Terminal } from '../terminal';

/** The captured text that a command names, or else the one that the craft includes; null where there is neither. */
export async function templateText(
  path: string | undefined,
  workspace: Workspace,
  craft: Craft,
  forms: Forms | null,
  terminal: Terminal,
): Promise<Listing | null> {
  if (path === undefined) return includedText(workspace, craft);
  const listing = readListing(await readCapture(path, terminal), forms);
  if (listing.refused !== null) throw new UsageError(`${path}: ${listing.refused}`);
  return listing;
}
