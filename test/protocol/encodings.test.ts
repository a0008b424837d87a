import assert from 'node:assert/strict';
import {
  CodeActionRequest,
  DefinitionRequest,
  DocumentFormattingRequest,
  DocumentHighlightRequest,
  DocumentLinkRequest,
  DocumentRangeFormattingRequest,
  DocumentSymbolRequest,
  HoverRequest,
  InlayHintRequest,
  type LocationLink,
  PrepareRenameRequest,
  type Range,
  ReferencesRequest,
  RenameRequest,
  SelectionRangeRequest,
  SemanticTokensRequest,
  type TextDocumentEdit,
  WorkspaceSymbolRequest,
} from 'vscode-languageserver-protocol/node';
import { Columns, type Encoding } from '../support/columns';
import { offered } from '../support/completion';
import { countingIn, oneServerFor, type TestServer } from '../support/server';

const uri = 'file:///cfg/base.craft';

/** Everything interesting stands behind characters that each encoding counts in its own way. */
const lines = [
  'let quiet = 90 Hz',
  'nonsense.value = ["é\u{1f6e0}\u{1f6e0}", quiet]',
  'overlay.name.text = "\u{1f6e0}" Hz',
  'craft.name = “é\u{1f6e0}”',
  'board.label = "é\u{1f6e0}"     # note',
  'include "é\u{1f6e0}/base.craft"',
  'gyro.filter.1.cutoff = "é\u{1f6e0}\u{1f6e0}"+qui     # note',
];
const text = lines.join('\n');

interface Here {
  readonly server: TestServer;
  readonly columns: Columns;
}

for (const encoding of ['utf-8', 'utf-16', 'utf-32'] satisfies Encoding[]) {
  const textDocument = { uri };

  describe(`places counted in ${encoding}`, () => {
    const running = oneServerFor(uri, { capabilities: countingIn(encoding) });
    const inServer = (run: (here: Here) => Promise<void>) => async () => {
      const server = running();
      assert.equal(server.initialized.capabilities.positionEncoding, encoding);
      await server.open(uri, text);
      await run({ server, columns: new Columns(text, encoding) });
    };

    it(
      'are right in findings',
      inServer(async ({ server, columns }) => {
        const { diagnostics } = await server.pushedFor(uri, 1);
        const stray = diagnostics.find(
          ({ code, range }) => code === 'line/not-understood' && range.start.line === 2,
        );
        assert.deepEqual(stray?.range, columns.range(2, 'Hz'));
      }),
    );

    it(
      'are right in hovers, asked and answered',
      inServer(async ({ server, columns }) => {
        const position = columns.start(1, 'quiet');
        const hover = await server.connection.sendRequest(HoverRequest.type, { textDocument, position });
        assert.deepEqual(hover?.range, columns.range(1, 'quiet'));
      }),
    );

    it(
      'are right in completion',
      inServer(async ({ server, columns }) => {
        const range = columns.range(6, 'qui');
        const items = await offered(server, uri, range.end);
        const item = items.find(({ label }) => label === 'quiet');
        assert.deepEqual(item?.textEdit, { range, newText: 'quiet' });
      }),
    );

    it(
      'are right in fixes',
      inServer(async ({ server, columns }) => {
        const actions = await server.connection.sendRequest(CodeActionRequest.type, {
          textDocument,
          range: { start: columns.start(3, '”'), end: columns.end(3) },
          context: { diagnostics: [] },
        });
        const [edit] = (actions ?? []).flatMap((action) =>
          'edit' in action ? ((action.edit?.documentChanges ?? []) as TextDocumentEdit[]) : [],
        );
        assert.deepEqual(edit, {
          textDocument: { uri, version: 1 },
          edits: [
            { range: columns.range(3, '“'), newText: '"' },
            { range: columns.range(3, '”'), newText: '"' },
          ],
        });
      }),
    );

    it(
      'are right in formatting, of all and of a range',
      inServer(async ({ server, columns }) => {
        const options = { tabSize: 2, insertSpaces: true };
        const all = await server.connection.sendRequest(DocumentFormattingRequest.type, {
          textDocument,
          options,
        });
        const range = { start: columns.start(4, '#'), end: columns.end(4) };
        const some = await server.connection.sendRequest(DocumentRangeFormattingRequest.type, {
          textDocument,
          range,
          options,
        });
        const edits = (all ?? []).filter((edit) => edit.range.start.line === 4);
        assert.ok(edits.length > 0);
        for (const edit of edits) assert.match(columns.textIn(edit.range), /^ *$/);
        assert.deepEqual(
          some?.filter((edit) => edit.range.start.line === 4),
          edits,
        );
      }),
    );

    it(
      'are right in what a name leads to, where it stands, and in renaming it',
      inServer(async ({ server, columns }) => {
        const about = { textDocument, position: columns.start(1, 'quiet') };
        const ranges = [columns.range(0, 'quiet'), columns.range(1, 'quiet')];
        const links = await server.connection.sendRequest(DefinitionRequest.type, about);
        const [link] = (links ?? []) as LocationLink[];
        assert.deepEqual(link?.originSelectionRange, ranges[1]);
        assert.deepEqual(link?.targetSelectionRange, ranges[0]);
        const references = await server.connection.sendRequest(ReferencesRequest.type, {
          ...about,
          context: { includeDeclaration: true },
        });
        assert.deepEqual(rangesOf(references), ranges);
        assert.deepEqual(
          rangesOf(await server.connection.sendRequest(DocumentHighlightRequest.type, about)),
          ranges,
        );
        const prepared = await server.connection.sendRequest(PrepareRenameRequest.type, about);
        assert.deepEqual(prepared, { range: ranges[1], placeholder: 'quiet' });
        const renamed = await server.connection.sendRequest(RenameRequest.type, { ...about, newName: 'low' });
        const [file] = (renamed?.documentChanges ?? []) as TextDocumentEdit[];
        assert.deepEqual(
          file?.edits,
          ranges.map((range) => ({ range, newText: 'low' })),
        );
      }),
    );

    it(
      'are right in the outline and in the search for names',
      inServer(async ({ server, columns }) => {
        const symbols = await server.connection.sendRequest(DocumentSymbolRequest.type, { textDocument });
        const ends = (symbols ?? []).flatMap((one) => ('range' in one ? [one.range.end] : []));
        assert.deepEqual(ends[1], columns.end(1));
        const found = await server.connection.sendRequest(WorkspaceSymbolRequest.type, { query: 'quiet' });
        assert.deepEqual(
          found?.map(({ location }) => 'range' in location && location.range),
          [columns.range(0, 'quiet')],
        );
      }),
    );

    it(
      'are right in links, selections and hints',
      inServer(async ({ server, columns }) => {
        const links = await server.connection.sendRequest(DocumentLinkRequest.type, { textDocument });
        assert.deepEqual(rangesOf(links), [columns.range(5, 'é\u{1f6e0}/base.craft')]);
        const [selection] =
          (await server.connection.sendRequest(SelectionRangeRequest.type, {
            textDocument,
            positions: [columns.start(1, 'quiet')],
          })) ?? [];
        assert.deepEqual(selection?.range, columns.range(1, 'quiet'));
        await server.change(uri, 2, {
          range: { start: columns.end(6), end: columns.end(6) },
          text: '\nboard.label = "second"',
        });
        const range = { start: { line: 4, character: 0 }, end: columns.end(4) };
        const hints = await server.connection.sendRequest(InlayHintRequest.type, { textDocument, range });
        assert.deepEqual(
          hints?.map(({ position, label }) => ({ position, label })),
          [{ position: columns.range(4, '"é\u{1f6e0}"').end, label: 'overridden' }],
        );
      }),
    );

    it(
      'are right in colours',
      inServer(async ({ server, columns }) => {
        const tokens = await server.connection.sendRequest(SemanticTokensRequest.type, { textDocument });
        const words = decoded(tokens?.data ?? []).map((range) => columns.textIn(range));
        assert.deepEqual(words.slice(3, 7), ['Hz', 'nonsense.value', '"é\u{1f6e0}\u{1f6e0}"', 'quiet']);
      }),
    );

    it(
      'are right in edits, and an edit inside a character is moved to its edge',
      inServer(async ({ server, columns }) => {
        const at = columns.range(1, '\u{1f6e0}').end;
        await server.change(uri, 2, { range: { start: at, end: at }, text: 'X' });
        // One back is inside the character for all but UTF-32, where it is its start.
        const inside = { line: 1, character: at.character - 1 };
        await server.change(uri, 3, { range: { start: inside, end: inside }, text: 'Y' });
        const symbols = await server.connection.sendRequest(DocumentSymbolRequest.type, { textDocument });
        const details = (symbols ?? []).map((one) => ('detail' in one ? one.detail : ''));
        assert.equal(details[1], '["éY\u{1f6e0}X\u{1f6e0}", quiet]');
      }),
    );
  });
}

function rangesOf(found: readonly { readonly range: Range }[] | null): readonly Range[] {
  return (found ?? []).map(({ range }) => range);
}

/** Semantic tokens as ranges. */
function decoded(data: readonly number[]): readonly Range[] {
  const ranges: Range[] = [];
  let line = 0;
  let start = 0;
  for (let at = 0; at < data.length; at += 5) {
    const [down = 0, along = 0, length = 0] = data.slice(at, at + 3);
    line += down;
    start = down === 0 ? start + along : along;
    ranges.push({ start: { line, character: start }, end: { line, character: start + length } });
  }
  return ranges;
}
