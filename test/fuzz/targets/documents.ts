import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { Document } from '../../../server/src/language/document';
import { craftScript, type LooseEdit, looseEdit } from '../../support/craft-scripts';
import { placed } from '../../support/placed';
import { anyText, slipped } from '../inputs/texts';
import { target } from '../target';

interface Edited {
  readonly text: string;
  readonly edits: readonly LooseEdit[];
}

/** What a document says, line by line. */
const said = (document: Document) =>
  [...document.lines()].map(({ text, end, section, statement }) => [text, end, section, statement]);

/** Edits of a text: lines are replaced where they change, and kept elsewhere. */
export const documents = target<Edited>(
  { name: 'documents', share: 200, holds: 'after edits a document says what a fresh one of its text says' },
  fc.record({
    text: fc.oneof(slipped(craftScript), anyText),
    edits: fc.array(looseEdit, { minLength: 1, maxLength: 5 }),
  }),
  ({ text, edits }) => {
    const truth = TextDocument.create('test:///a.craft', 'craft-script', 0, text);
    let document = Document.of(text);
    for (const loose of edits) {
      const edit = placed(truth, loose);
      TextDocument.update(truth, [{ range: { start: edit.start, end: edit.end }, text: edit.text }], 1);
      document = document.edit(edit).document;
    }
    assert.equal(document.text(), truth.getText());
    assert.equal(document.lineCount, truth.lineCount);
    assert.deepEqual(said(document), said(Document.of(truth.getText())));
    for (const line of document.lines())
      assert.ok(document.lineNumberOf(line) >= 0, 'a line knows its place');
  },
);
