import type { BoardLayer } from '../board/layer/layer';
import type { Listing } from '../board/listing/listing';
import { readListing } from '../board/listing/read-listing';
import type { Craft } from '../craft/craft';
import type { Workspace } from './workspace';

/** A preview follows every edit of a script, and the text that it includes stays the same. */
const known = new WeakMap<BoardLayer, Listing>();

/** The board's own text that a craft includes, as a listing; null where it includes none. */
export function includedText(workspace: Workspace, craft: Craft): Listing | null {
  const script = craft.boardText();
  const layer = script === undefined ? undefined : workspace.layer(script.uri);
  if (layer === undefined) return null;
  const listing = known.get(layer) ?? readListing(layer.text, layer.forms);
  known.set(layer, listing);
  return listing;
}
