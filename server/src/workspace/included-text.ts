import type { Listing } from '../board/listing/listing';
import { readListing } from '../board/listing/read-listing';
import type { Craft } from '../craft/craft';
import type { Workspace } from './workspace';

/** The board's own text that a craft includes, as a listing; null where it includes none. */
export function includedText(workspace: Workspace, craft: Craft): Listing | null {
  for (const { script } of craft.layers().layers) {
    const layer = workspace.layer(script.uri);
    if (layer !== undefined) return readListing(layer.text, layer.forms);
  }
  return null;
}
