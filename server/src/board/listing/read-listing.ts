import { boardForms, type Forms } from '../../catalog/model/board-forms';
import type { Listing } from './listing';

/** Reads a board's text by its forms; `null`: by forms that are found from the text itself. */
export function readListing(text: string, forms: Forms | null): Listing {
  return {
    text,
    forms: forms ?? boardForms.parse({ container: 'lines' }),
    settings: [],
    headings: [],
    comments: [],
    openings: [],
    closings: [],
    left: [],
    echoes: [],
    understood: 0,
    refused: null,
  };
}
