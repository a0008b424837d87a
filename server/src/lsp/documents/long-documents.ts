import type { Diagnostic } from 'vscode-languageserver';
import { canonicalUri } from '../../workspace/canonical-uri';
import { longestScript } from '../../workspace/file-system';
import { DiagnosticSeverity } from '../library';

/** A document that is open, and of which nothing is kept but its one diagnostic. */
export interface LongDocument {
  readonly uri: string;
  readonly languageId: string;
  readonly version: number;
  readonly length: number;
}

/** Whether a text of so many characters is. */
export function isTooLong(length: number): boolean {
  return length > longestScript;
}

/**
 * Open documents that are too long to be read. Their texts are let go at once, so that memory stays bounded; without
 * it edits can't be followed, so a document comes back only when the client sends it whole.
 */
export class LongDocuments {
  private readonly documents = new Map<string, LongDocument>();

  get(uri: string): LongDocument | undefined {
    return this.documents.size === 0 ? undefined : this.documents.get(canonicalUri(uri));
  }

  put(document: LongDocument): void {
    this.documents.set(canonicalUri(document.uri), document);
  }

  delete(uri: string): void {
    if (this.documents.size > 0) this.documents.delete(canonicalUri(uri));
  }
}

/** The diagnostic of such a document, at its top. */
export function longDiagnostic({ length }: LongDocument): Diagnostic {
  const digits = new Intl.NumberFormat('en');
  return {
    range: { start: { line: 0, character: 0 }, end: { line: 0, character: 1 } },
    severity: DiagnosticSeverity.Error,
    source: 'propsoff',
    message: `This document has ${digits.format(length)} characters. Propsoff reads at most ${digits.format(longestScript)}, so nothing in it is checked.\nSplit it into parts that it includes, then close it and open it again.`,
  };
}
