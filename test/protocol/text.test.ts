import assert from 'node:assert/strict';
import {
  CodeActionRequest,
  DocumentFormattingRequest,
  DocumentRangeFormattingRequest,
  DocumentSymbolRequest,
  HoverRequest,
  type TextDocumentEdit,
  type TextEdit,
} from 'vscode-languageserver-protocol/node';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { offered } from '../support/completion';
import { withScratch } from '../support/scratch';
import { oneServerFor, type TestServer, withOwnServer, withServer } from '../support/server';
import { shown } from '../support/shown';

const uri = 'file:///cfg/base.craft';
const textDocument = { uri };
const options = { tabSize: 2, insertSpaces: true };

/** What a client shows for a text. */
async function findingsFor(server: TestServer, text: string): Promise<readonly string[]> {
  await server.open(uri, text);
  return shown((await server.pushedFor(uri, 1)).diagnostics);
}

describe('line ends', () => {
  const running = oneServerFor(uri);

  it('of two characters are no part of a line', async () => {
    const server = running();
    const findings = await findingsFor(server, '[gyro.filter.1]\r\ncutoff = 90 Hz\r\nshape = bad line\r\n');
    assert.deepEqual(findings.slice(-1), ['2:12-16 line/not-understood']);
    const symbols = await server.connection.sendRequest(DocumentSymbolRequest.type, { textDocument });
    assert.doesNotMatch(JSON.stringify(symbols), /\\r/);
    const position = { line: 1, character: 2 };
    const hover = await server.connection.sendRequest(HoverRequest.type, { textDocument, position });
    assert.match(JSON.stringify(hover), /90 Hz/);
    assert.doesNotMatch(JSON.stringify(hover), /\\r/);
  });

  const mixed = 'pack.a.cells = 4\rpack.a.capacity = 550 mAh\nbadkey = 3\r\n';

  it('may be of all three kinds in one open script', () =>
    // In a server of its own: one that has looked for scripts that include this one misses a board in it.
    withOwnServer({}, async (server) => {
      assert.deepEqual(await findingsFor(server, mixed), ['2:0-6 line/unknown-name']);
      const symbols = await server.connection.sendRequest(DocumentSymbolRequest.type, { textDocument });
      assert.deepEqual(
        symbols?.map(({ name }) => name),
        ['pack.a.cells', 'pack.a.capacity', 'badkey'],
      );
    }));

  it('count alike in a script on the disk', () =>
    withScratch({ 'base.craft': mixed }, (scratch) =>
      withServer({ folders: [scratch.uri] }, async (server) => {
        const main = scratch.uriOf('main.craft');
        await server.open(main, 'include "base.craft"\n');
        const { diagnostics } = await server.pushed(main, (params) => params.diagnostics.length > 0);
        assert.deepEqual(shown(diagnostics), ['0:8-20 line/include-faulty']);
        assert.deepEqual(diagnostics[0]?.relatedInformation?.[0]?.location, {
          uri: scratch.uriOf('base.craft'),
          range: { start: { line: 2, character: 0 }, end: { line: 2, character: 6 } },
        });
      }),
    ));

  it('are kept in every edit of a script that has them', async () => {
    const server = running();
    const text =
      '[craft]\r\nname="a"\r\n[esc]\r\nsignal=dshot300\r\n[gyro.filter.2]\r\nkind=follow-motors\r\n';
    await server.open(uri, text);
    await server.pushedFor(uri, 1);
    const formatted = await server.connection.sendRequest(DocumentFormattingRequest.type, {
      textDocument,
      options,
    });
    assert.ok((formatted ?? []).length > 0);
    assert.doesNotMatch(applied(text, formatted ?? []), /[^\r]\n|\r[^\n]/);
    const actions = await server.connection.sendRequest(CodeActionRequest.type, {
      textDocument,
      range: { start: { line: 0, character: 0 }, end: { line: 6, character: 0 } },
      context: { diagnostics: [] },
    });
    const longer = (actions ?? [])
      .flatMap((action) => ('edit' in action ? (action.edit?.documentChanges ?? []) : []))
      .flatMap((change) => (change as TextDocumentEdit).edits as TextEdit[])
      .filter(({ newText }) => newText.includes('\n'));
    assert.ok(longer.length > 0, 'some fix adds a line');
    for (const edit of longer) assert.doesNotMatch(applied(text, [edit]), /[^\r]\n|\r[^\n]/);
    const items = await offered(server, uri, { line: 6, character: 0 });
    assert.ok(items.length > 0);
    for (const { textEdit } of items) assert.doesNotMatch(textEdit?.newText ?? '', /[^\r]\n/);
  });
});

describe('a byte order mark', () => {
  it('in front of an included script is no part of its first line', () =>
    withScratch({ 'base.craft': '\ufeff[gyro.filter.1]\ncutoff = 3 ms\n' }, (scratch) =>
      withServer({ folders: [scratch.uri] }, async (server) => {
        const main = scratch.uriOf('main.craft');
        await server.open(main, 'include "base.craft"\n');
        const { diagnostics } = await server.pushed(main, (params) => params.diagnostics.length > 0);
        const [related] = diagnostics[0]?.relatedInformation ?? [];
        assert.deepEqual(related?.location.range.start, { line: 1, character: 9 }, 'the section was found');
      }),
    ));

  it('anywhere else is named', () =>
    withServer({}, async (server) => {
      await server.open(uri, '[gyro.filter.1]\ncutoff = \ufeff120 Hz\n');
      const { diagnostics } = await server.pushedFor(uri, 1);
      assert.deepEqual(shown(diagnostics), ['1:9-10 line/odd-space']);
      assert.match(String(diagnostics[0]?.message), /byte order mark \(U\+FEFF\)/);
    }));
});

describe('characters that look like a space', () => {
  const running = oneServerFor(uri);

  for (const [name, character] of [
    ['no-break space', '\u00a0'],
    ['thin space', '\u2009'],
    ['narrow no-break space', '\u202f'],
    ['zero-width space', '\u200b'],
  ] as const) {
    it(`are called by their name and mended: ${name}`, async () => {
      const server = running();
      const text = `[gyro.filter.1]\ncutoff${character}=${character}120${character}Hz\n`;
      await server.open(uri, text);
      const { diagnostics } = await server.pushedFor(uri, 1);
      assert.deepEqual(shown(diagnostics), ['1:6-7 line/odd-space']);
      const code = character.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0');
      assert.match(String(diagnostics[0]?.message), new RegExp(`${name} \\(U\\+${code}\\)`));
      const [action] =
        (await server.connection.sendRequest(CodeActionRequest.type, {
          textDocument,
          range: diagnostics[0]?.range ?? {
            start: { line: 0, character: 0 },
            end: { line: 0, character: 0 },
          },
          context: { diagnostics },
        })) ?? [];
      assert.ok(action !== undefined && 'edit' in action);
      const [change] = (action.edit?.documentChanges ?? []) as TextDocumentEdit[];
      const mended = applied(text, (change?.edits ?? []) as TextEdit[]);
      await server.change(uri, 2, { text: mended });
      assert.deepEqual((await server.pushedFor(uri, 2)).diagnostics, []);
    });
  }
});

describe('the end of a script without a last line end', () => {
  const running = oneServerFor(uri);

  const text = 'gyro.filter.1.cutoff=3 ms\ngyro.filter.1.cutof=2 Hz';

  it('is read and marked like any other line', async () => {
    const server = running();
    assert.deepEqual(await findingsFor(server, text), [
      '0:21-25 line/wrong-dimension',
      '1:0-19 line/unknown-name',
    ]);
  });

  it('comes back once from the formatter, in whole and in a range that ends past it', async () => {
    const server = running();
    await server.open(uri, text);
    const all = await server.connection.sendRequest(DocumentFormattingRequest.type, {
      textDocument,
      options,
    });
    const range = { start: { line: 0, character: 0 }, end: { line: 2, character: 0 } };
    const some = await server.connection.sendRequest(DocumentRangeFormattingRequest.type, {
      textDocument,
      range,
      options,
    });
    for (const edits of [all, some]) {
      const words = applied(text, edits ?? []).match(/cutof\b/g);
      assert.equal(words?.length, 1);
    }
  });

  it('is where positions beyond it are moved to', async () => {
    const server = running();
    await server.open(uri, text);
    for (const position of [
      { line: 1, character: 99 },
      { line: 99, character: 0 },
    ]) {
      const hover = await server.connection.sendRequest(HoverRequest.type, { textDocument, position });
      assert.equal(hover, null, 'nothing is known of a name that nobody knows');
      await offered(server, uri, position);
    }
    await server.change(uri, 2, {
      range: { start: { line: 77, character: 7 }, end: { line: 99, character: 9 } },
      text: '\n# the end',
    });
    assert.equal((await server.pushedFor(uri, 2)).diagnostics.length, 2);
    assert.deepEqual(server.log, []);
  });
});

function applied(text: string, edits: readonly TextEdit[]): string {
  return TextDocument.applyEdits(TextDocument.create(uri, 'craft-script', 1, text), [...edits]);
}
