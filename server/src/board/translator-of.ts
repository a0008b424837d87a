import type { Catalog } from '../catalog/catalog';
import { profileOf } from './profile/profile';
import { recognisedBoard } from './recognise';
import { Translator } from './translation';

/** Reads a board's text by the profile that is named or that the text shows; null where none knows it. */
export function translatorOf(catalog: Catalog, text: string, named: string | null): Translator | null {
  const board = catalog.board(named ?? recognisedBoard(catalog, text) ?? '');
  const profile = board === undefined ? null : profileOf(board);
  return profile === null ? null : new Translator(profile, catalog);
}
