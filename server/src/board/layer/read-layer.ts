import { type KeptBeside, nothingBeside } from '../kept/accepted';
import type { BoardLayer } from './layer';
import { LayerReader } from './layer-reader';
import { profileOfText, type TextOrigin } from './profile-of-text';

/** Reads a board's text once, by the profile that is its. */
export function readLayer(text: string, origin: TextOrigin, kept: KeptBeside = nothingBeside): BoardLayer {
  return new LayerReader(origin.catalog, profileOfText(text, origin), kept).read(text);
}
