import assert from 'node:assert/strict';
import fc from 'fast-check';
import {
  type Diagnostic,
  DocumentSymbolRequest,
  FoldingRangeRequest,
  SemanticTokensRequest,
  type TextDocumentContentChangeEvent,
} from 'vscode-languageserver-protocol/node';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { scriptText } from '../support/script-text';
import { oneServerFor, type TestServer } from '../support/server';
import { shown } from '../support/shown';

const uri = 'file:///cfg/base.craft';

describe('edits', () => {
  const running = oneServerFor(uri);

  it('of one notification are made in their order, each on the text that the one before left', async () => {
    const server = running();
    await server.open(uri, 'pack.a.cells = 1\npack.a.mass = 2\n');
    await server.change(
      uri,
      2,
      { range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }, text: '\n\n' },
      { range: { start: { line: 3, character: 14 }, end: { line: 3, character: 15 } }, text: '9' },
    );
    const symbols = await server.connection.sendRequest(DocumentSymbolRequest.type, {
      textDocument: { uri },
    });
    const told = (symbols ?? []).map((one) => ('detail' in one ? [one.range.start.line, one.detail] : []));
    assert.deepEqual(told, [
      [2, '1'],
      [3, '9'],
    ]);
  });

  it('leave the server with the text that the client has, however many they are', async () => {
    const server = running();
    await whenIncludersAreKnown(server);
    let count = 0;
    await fc.assert(
      fc.asyncProperty(
        scriptText,
        fc.array(fc.array(anyEdit, { minLength: 1, maxLength: 4 }), editCounts),
        async (start, notifications) => {
          count += 1;
          const edited = `file:///cfg/edited-${count}.craft`;
          const copy = TextDocument.create(edited, 'craft-script', 1, start);
          await server.open(edited, start, 1);
          for (const edits of notifications) {
            const version = copy.version + 1;
            const changes = edits.map((edit) => {
              const change = changeFrom(copy, edit);
              TextDocument.update(copy, [change], version);
              return change;
            });
            await server.change(edited, version, ...changes);
          }
          const fresh = `file:///cfg/fresh-${count}.craft`;
          await server.open(fresh, copy.getText());
          assert.deepEqual(
            await everything(server, edited, copy.version),
            await everything(server, fresh, 1),
          );
          await server.close(edited);
          await server.close(fresh);
        },
      ),
      { numRuns: 60 },
    );
  }).timeout(60_000);

  it('of a script that is not open are ignored', async () => {
    const server = running();
    await server.change(uri, 2, { text: 'badkey = 1' });
    await server.open(uri, 'other = 1', 3);
    assert.deepEqual(shown((await server.pushedFor(uri, 3)).diagnostics), ['0:0-5 line/unknown-name']);
  });

  it('that replace everything are taken', async () => {
    const server = running();
    await server.open(uri, 'badkey = 1\nother = 2\r\n');
    await server.change(uri, 2, { text: '[gyro.filter.1]\ncutof = 3 Hz' });
    assert.deepEqual(shown((await server.pushedFor(uri, 2)).diagnostics), ['1:0-5 line/unknown-name']);
  });
});

describe('findings', () => {
  const running = oneServerFor(uri);

  it('come with the version that they are for, the last for the last', async () => {
    const server = running();
    await server.open(uri, 'badkey = 1\n');
    for (let version = 2; version <= 21; version += 1) {
      const text = version === 21 ? '# clean\n' : `badkey = ${version}\n`;
      await server.change(uri, version, { text });
    }
    assert.deepEqual((await server.pushedFor(uri, 21)).diagnostics, []);
    const own = server.published.filter((params) => params.uri === uri);
    const versions = own.map(({ version }) => version ?? 0);
    assert.deepEqual(
      versions,
      [...versions].sort((one, other) => one - other),
    );
    for (const { version, diagnostics } of own) assert.equal(diagnostics.length, version === 21 ? 0 : 1);
  });

  it('of edits that came together are computed once', async () => {
    const server = running();
    await server.open(uri, 'badkey = 1\n');
    await server.pushedFor(uri, 1);
    const edits = Array.from({ length: 20 }, (_, index) =>
      server.change(uri, index + 2, { text: `badkey = ${index}\n` }),
    );
    await Promise.all(edits);
    await server.pushedFor(uri, 21);
    assert.ok(server.published.length < 12, `${server.published.length} for 20 edits`);
  });
});

/** An edit by shares of the text, made into places when the text is known. */
interface AnyEdit {
  readonly from: number;
  readonly length: number;
  readonly text: string;
  readonly isWhole: boolean;
}

const editCounts = { minLength: 1, maxLength: 6 };

const anyEdit: fc.Arbitrary<AnyEdit> = fc.record({
  from: fc.double({ min: 0, max: 1, noNaN: true }),
  length: fc.oneof(fc.constant(0), fc.nat(12), fc.nat(200)),
  text: fc.oneof(
    fc.constantFrom('', '\n', '\r', '\r\n', '[', ']', '"', '#', '\u{1f6e0}', '[gyro.filter.1]\n', ' = '),
    scriptText,
  ),
  isWhole: fc.integer({ min: 0, max: 30 }).map((number) => number === 0),
});

function changeFrom(
  copy: TextDocument,
  { from, length, text, isWhole }: AnyEdit,
): TextDocumentContentChangeEvent {
  if (isWhole) return { text };
  const all = copy.getText();
  const start = edge(all, Math.floor(from * (all.length + 1)));
  const end = edge(all, Math.min(all.length, start + length));
  return { range: { start: copy.positionAt(start), end: copy.positionAt(end) }, text };
}

/** Editors put no edit inside a character or inside a line end of two characters. */
function edge(text: string, offset: number): number {
  const isInside =
    /[\ud800-\udbff]$/.test(text.slice(0, offset)) ||
    (/\r$/.test(text.slice(0, offset)) && text[offset] === '\n');
  return isInside ? offset - 1 : offset;
}

/** Until the folder has been searched for scripts that include others, a script with parts of a craft is no whole one. */
async function whenIncludersAreKnown(server: TestServer): Promise<void> {
  const first = 'file:///cfg/first.craft';
  await server.open(first, 'pack.a.cells = 4\n', 1);
  await server.pushed(first, ({ diagnostics }) =>
    diagnostics.some(({ code }) => code === 'wire/board-missing'),
  );
  await server.close(first);
}

/** All that the server says of a script without being asked about a place. */
async function everything(server: TestServer, script: string, version: number) {
  const { diagnostics } = await server.pushedFor(script, version);
  const textDocument = { uri: script };
  return {
    diagnostics: diagnostics.map((one) => withoutUri(one, script)),
    symbols: await server.connection.sendRequest(DocumentSymbolRequest.type, { textDocument }),
    folding: await server.connection.sendRequest(FoldingRangeRequest.type, { textDocument }),
    tokens: await server.connection.sendRequest(SemanticTokensRequest.type, { textDocument }),
  };
}

function withoutUri(diagnostic: Diagnostic, script: string): unknown {
  return JSON.parse(JSON.stringify(diagnostic).replaceAll(script, 'file:///this'));
}
