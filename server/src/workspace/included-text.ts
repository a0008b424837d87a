import { keepListing, keptListing } from '../board/layer/layer';
import type { Listing } from '../board/listing/listing';
import { readListing } from '../board/listing/read-listing';
import type { Craft } from '../craft/craft';
import type { Workspace } from './workspace';

/** The board's own text that a craft includes, as a listing; null where it includes none. */
export function includedText(workspace: Workspace, craft: Craft): Listing | null {
  const script = craft.boardText();
  const layer = script === undefined ? undefined : workspace.layer(script.uri);
  if (layer === undefined) return null;
  const listing = keptListing(layer) ?? readListing(layer.text, layer.forms);
  // A preview follows every edit of a script, and the text that it includes stays the same.
  keepListing(layer, listing);
  return listing;
}
