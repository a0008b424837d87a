import type { FileEdits } from '../../server/src/features/text-edits';
import { withEdits } from '../../server/src/features/text-edits';
import { Document } from '../../server/src/language/document';

/** Texts after edits, by the last part of their URI; only those that change. */
export function applied(
  files: readonly FileEdits[],
  texts: Readonly<Record<string, string>>,
): Readonly<Record<string, string>> {
  return Object.fromEntries(
    files.map(({ uri, edits }) => {
      const name = uri.slice('test:///work/'.length);
      return [name, withEdits(Document.of(texts[name] ?? ''), edits)];
    }),
  );
}
