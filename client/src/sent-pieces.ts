import type { DrawnSheet } from '../../server/src/sheet/drawn-sheet';
import type { SentSheet, SheetPiece } from '../sheet/messages';

/** Which pieces of a sheet the page has, so that it is sent only what has changed. */
export class SentPieces {
  private sent: ReadonlyMap<string, string> = new Map();

  /** What to send the page of a sheet, which has what it was sent before. */
  of({ parts, plots, ...head }: DrawnSheet): SentSheet {
    const last = this.sent;
    const pieces = parts.map((part) => {
      const piece: SheetPiece = { part, plots: plots.filter((plot) => plot.part === part.id) };
      return { id: part.id, json: JSON.stringify(piece) };
    });
    this.sent = new Map([...last, ...pieces.map(({ id, json }) => [id, json] as const)]);
    return {
      ...head,
      pieces: pieces.map(({ id, json }) => ({ id, json: last.get(id) === json ? null : json })),
    };
  }

  /** The page is another one, which has nothing yet. */
  forget(): void {
    this.sent = new Map();
  }
}
