import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import {
  type Diagnostic,
  DiagnosticRefreshRequest,
  DiagnosticSeverity,
  DiagnosticTag,
  type DocumentDiagnosticReport,
  DocumentDiagnosticRequest,
  DocumentFormattingRequest,
  FileChangeType,
  HoverRequest,
} from 'vscode-languageserver-protocol/node';
import { explainCheckRequest, summaryRequest } from '../../server/src/lsp/protocol';
import { framed } from '../support/frames';
import { withScratch } from '../support/scratch';
import {
  ableClient,
  askingClient,
  oneServerFor,
  ownClient,
  type TestServer,
  withOwnServer,
  withServer,
} from '../support/server';
import { shown } from '../support/shown';

const uri = 'file:///cfg/base.craft';
const textDocument = { uri };
const faulty = 'gyro.filter.1.cutoff = 3 ms\n';

describe('findings that are sent', () => {
  const running = oneServerFor(uri);

  it('carry what a client needs: place, severity, id, source, what is wrong and what to do', async () => {
    const server = running();
    await server.open(uri, faulty, 7);
    assert.deepEqual(await server.pushedFor(uri, 7), {
      uri,
      version: 7,
      diagnostics: [
        {
          range: { start: { line: 0, character: 23 }, end: { line: 0, character: 27 } },
          severity: DiagnosticSeverity.Error,
          code: 'line/wrong-dimension',
          source: 'propsoff',
          message:
            'This is a time (ms), where a frequency was expected.\nWrite it in one of: Hz, kHz, MHz, GHz.',
        },
      ],
    });
  });

  it('name related places only to clients that show them', async () => {
    const twice = 'pack.a.cells = 4\npack.a.cells = 6\n';
    const related = async (server: TestServer) => {
      await server.open(uri, twice);
      return (await server.pushedFor(uri, 1)).diagnostics.map(({ relatedInformation }) => relatedInformation);
    };
    const [told] = await withServer({}, related);
    assert.deepEqual(
      told?.map(({ location }) => location),
      [{ uri, range: { start: { line: 1, character: 0 }, end: { line: 1, character: 12 } } }],
    );
    const capabilities = { ...ableClient, textDocument: { publishDiagnostics: {} } };
    assert.deepEqual(await withServer({ capabilities }, related), [undefined, undefined]);
  });

  it('lead to the story of their check, where the client can open it', async () => {
    const publishDiagnostics = { codeDescriptionSupport: true };
    const linking = { ...ableClient, textDocument: { ...ableClient.textDocument, publishDiagnostics } };
    const link = async (server: TestServer) => {
      await server.open(uri, faulty);
      return (await server.pushedFor(uri, 1)).diagnostics[0]?.codeDescription?.href;
    };
    assert.equal(await withServer({}, link), undefined);
    const page = new URL((await withServer({ capabilities: linking }, link)) ?? '');
    assert.equal(page.hash, '#line/wrong-dimension');
    const text = readFileSync(page, 'utf8');
    assert.ok(text.includes('<a id="line/wrong-dimension"></a>\n\n## line/wrong-dimension\n'));

    const own = { ...linking, experimental: ownClient.experimental };
    await withServer({ capabilities: own }, async (server) => {
      const [command, given = ''] = (await link(server))?.split('?') ?? [];
      assert.equal(command, 'command:propsoff.explainCheck');
      const [check] = JSON.parse(decodeURIComponent(given)) as readonly [string];
      const story = await server.connection.sendRequest(explainCheckRequest, { check });
      assert.match(story ?? '', /`line\/wrong-dimension` · must-fix\n\n\*\*Says:\*\* /);
      assert.equal(await server.connection.sendRequest(explainCheckRequest, { check: 'line/none' }), null);
    });
  });

  it('are tagged where what they mark does nothing, for a client that greys it', async () => {
    const lines = [
      'let quiet = 90 Hz',
      '[gyro.filter.1]',
      'kind = notch',
      'center = 200 Hz',
      'cutoff = 90 Hz',
    ];
    const tagSupport = { valueSet: [DiagnosticTag.Unnecessary] };
    const textDocument = { ...ableClient.textDocument, publishDiagnostics: { tagSupport } };
    const tags = async (server: TestServer) => {
      await server.open(uri, `${lines.join('\n')}\n`);
      // Whether another script uses the constant is looked up first.
      const unused = ({ code }: Diagnostic) => code === 'line/constant-unused';
      const { diagnostics } = await server.pushed(uri, (sent) => sent.diagnostics.some(unused));
      return diagnostics
        .filter((one) => unused(one) || one.code === 'tune/filter-setting-unused')
        .map(({ code, tags: own }) => [code, own]);
    };
    const greyed = [DiagnosticTag.Unnecessary];
    assert.deepEqual(await withServer({ capabilities: { ...ableClient, textDocument } }, tags), [
      ['line/constant-unused', greyed],
      ['tune/filter-setting-unused', greyed],
    ]);
    assert.deepEqual(await withServer({}, tags), [
      ['line/constant-unused', undefined],
      ['tune/filter-setting-unused', undefined],
    ]);
  });

  it('are taken back when the script is closed, and no request about it fails (D04)', async () => {
    const server = running();
    await server.open(uri, faulty);
    await server.pushedFor(uri, 1);
    await server.close(uri);
    assert.deepEqual(await server.pushed(uri, ({ diagnostics }) => diagnostics.length === 0), {
      uri,
      diagnostics: [],
    });
    const position = { line: 0, character: 3 };
    assert.equal(await server.connection.sendRequest(HoverRequest.type, { textDocument, position }), null);
    const options = { tabSize: 2, insertSpaces: true };
    assert.equal(
      await server.connection.sendRequest(DocumentFormattingRequest.type, { textDocument, options }),
      null,
    );
  });

  it('are not sent for edits of a script that has been closed', async () => {
    const server = running();
    await server.open(uri, faulty);
    await server.close(uri);
    await server.change(uri, 2, { text: 'badkey = 1' });
    await server.open(uri, '# clean\n', 3);
    await server.pushedFor(uri, 3);
    assert.deepEqual(
      server.published.filter(({ version }) => version === 2).map(({ diagnostics }) => diagnostics),
      [],
    );
  });

  it('of 5,000 faulty lines are capped, the worst first, with one note that counts the rest (D09)', async () => {
    const server = running();
    const unusual = 'gyro.filter.1.cutoff = 7 Hz';
    await server.open(uri, `${unusual}\n${'badkey = 1\n'.repeat(5000)}`);
    const { diagnostics } = await server.pushedFor(uri, 1);
    const [note, ...rest] = diagnostics;
    assert.match(String(note?.message), /^4501 more findings are not shown here\./);
    assert.equal(note?.severity, DiagnosticSeverity.Information);
    assert.equal(rest.length, 500);
    assert.ok(rest.every(({ severity, code }) => severity === 1 && code === 'line/unknown-name'));
    const summary = await server.connection.sendRequest(summaryRequest, { textDocument });
    assert.deepEqual(summary?.counts, { 'must-fix': 5000, risk: 1, note: 0, tidy: 0 });
  });

  it('of an edit come after the answers to what was asked together with it', async () => {
    const server = running();
    await server.open(uri, faulty);
    await server.pushedFor(uri, 1);
    const before = Buffer.concat(server.output).length;
    const position = { line: 0, character: 8 };
    const contentChanges = [{ text: `${faulty}badkey = 1\n` }];
    const messages = [
      { method: 'textDocument/didChange', params: { textDocument: { uri, version: 2 }, contentChanges } },
      ...['first', 'second', 'third'].map((id) => ({
        id,
        method: HoverRequest.method,
        params: { textDocument, position },
      })),
    ];
    // In one piece, so that all is there when the edit is taken in.
    server.process.stdin.write(messages.map(framed).join(''));
    assert.equal((await server.pushedFor(uri, 2)).diagnostics.length, 2);
    const sent = Buffer.concat(server.output).subarray(before).toString();
    const places = ['"first"', '"second"', '"third"', 'publishDiagnostics'].map((text) => sent.indexOf(text));
    assert.ok(places.every((place) => place >= 0));
    assert.deepEqual(
      places,
      places.toSorted((one, other) => one - other),
    );
  });
});

/** A whole report; fails on an unchanged one. */
async function asked(server: TestServer, about: string, previousResultId?: string) {
  const report: DocumentDiagnosticReport = await server.connection.sendRequest(
    DocumentDiagnosticRequest.type,
    { textDocument: { uri: about }, ...(previousResultId === undefined ? {} : { previousResultId }) },
  );
  assert.ok(report.kind === 'full');
  return { id: report.resultId ?? '', findings: shown(report.items) };
}

describe('findings that are asked for', () => {
  const inServer = (run: (server: TestServer) => Promise<void>) =>
    withServer({ capabilities: askingClient }, run);
  /** Of a client that has asked for nothing yet. */
  const inNewServer = (run: (server: TestServer) => Promise<void>) =>
    withOwnServer({ capabilities: askingClient }, run);

  it('are the same as those that are sent, and are not sent to a client that asks', () =>
    inServer(async (server) => {
      await server.open(uri, faulty);
      assert.deepEqual((await asked(server, uri)).findings, ['0:23-27 line/wrong-dimension']);
      const sent = server.published.filter(({ diagnostics }) => diagnostics.length > 0).length;
      for (let version = 2; version <= 5; version += 1) {
        await server.change(uri, version, { text: `${faulty}badkey = ${version}\n` });
        assert.equal((await asked(server, uri)).findings.length, 2);
      }
      const all = server.published.filter(({ diagnostics }) => diagnostics.length > 0);
      assert.equal(all.length, sent);
    }));

  it('are sent as long as the client only listens, though it says that it can ask', () =>
    inNewServer(async (server) => {
      await server.open(uri, faulty);
      assert.deepEqual(shown((await server.pushedFor(uri, 1)).diagnostics), ['0:23-27 line/wrong-dimension']);
      await server.change(uri, 2, { text: 'badkey = 1\n' });
      assert.deepEqual(shown((await server.pushedFor(uri, 2)).diagnostics), ['0:0-6 line/unknown-name']);
    }));

  it('are not shown twice: what was sent before is taken back with the first question', () =>
    inNewServer(async (server) => {
      const other = 'file:///cfg/other.craft';
      for (const one of [uri, other]) {
        await server.open(one, faulty);
        await server.pushedFor(one, 1);
      }
      assert.equal((await asked(server, uri)).findings.length, 1);
      for (const one of [uri, other])
        assert.deepEqual((await server.pushed(one)).diagnostics, [], `${one} is still listed`);
      assert.equal((await asked(server, other)).findings.length, 1);
    }));

  it('are told to be unchanged until something changes', () =>
    inServer(async (server) => {
      await server.open(uri, faulty);
      const first = await asked(server, uri);
      assert.deepEqual(
        await server.connection.sendRequest(DocumentDiagnosticRequest.type, {
          textDocument,
          previousResultId: first.id,
        }),
        { kind: 'unchanged', resultId: first.id },
      );
      await server.change(uri, 2, { text: 'badkey = 1\n' });
      const second = await asked(server, uri, first.id);
      assert.notEqual(second.id, first.id);
      assert.deepEqual(second.findings, ['0:0-6 line/unknown-name']);
    }));

  it('of a script that is not open are none', () =>
    inServer(async (server) => {
      assert.deepEqual(
        await server.connection.sendRequest(DocumentDiagnosticRequest.type, { textDocument }),
        {
          kind: 'full',
          items: [],
        },
      );
    }));

  it('are asked for again when an included script changes', () =>
    withScratch({ 'base.craft': '# clean\n' }, (scratch) =>
      withServer({ capabilities: askingClient, folders: [scratch.uri] }, async (server) => {
        const main = scratch.uriOf('main.craft');
        const refreshes = new Refreshes(server);
        await server.open(main, 'include "base.craft"\n');
        await asked(server, main);
        await refreshes.next();
        const clean = await asked(server, main);
        assert.deepEqual(clean.findings, []);
        scratch.write('base.craft', 'badkey = 1\n');
        await server.filesChanged({ uri: scratch.uriOf('base.craft'), type: FileChangeType.Changed });
        await refreshes.until(
          async () => (await asked(server, main, clean.id)).findings[0] === '0:8-20 line/include-faulty',
        );
        // An edit of the included script in the editor counts like one on the disk.
        await server.open(scratch.uriOf('base.craft'), '# clean again\n');
        await refreshes.until(async () => (await asked(server, main)).findings.length === 0);
      }),
    ));

  it('are asked for again when another text changes at once after the answer to an edit', () =>
    withScratch({ 'base.craft': '# clean\n' }, (scratch) =>
      withServer({ capabilities: askingClient, folders: [scratch.uri] }, async (server) => {
        const [main, base] = [scratch.uriOf('main.craft'), scratch.uriOf('base.craft')];
        const refreshes = new Refreshes(server);
        await server.open(main, 'include "base.craft"\n');
        await asked(server, main);
        await refreshes.next();
        const text = '# edited\ninclude "base.craft"\n';
        // All of it lies with the server before it has dealt with the first.
        const [, answer] = await Promise.all([
          server.change(main, 2, { text }),
          asked(server, main),
          server.open(base, 'badkey = 1\n'),
        ]);
        assert.deepEqual(answer.findings, []);
        await refreshes.until(
          async () => (await asked(server, main)).findings[0] === '1:8-20 line/include-faulty',
        );
      }),
    ));
});

/** The server's wishes to be asked again, as they come in. */
class Refreshes {
  private count = 0;
  private taken = 0;
  private wake: (() => void) | null = null;

  constructor(server: TestServer) {
    server.connection.onRequest(DiagnosticRefreshRequest.type, () => {
      this.count += 1;
      this.wake?.();
    });
  }

  async next(): Promise<void> {
    while (this.count === this.taken) {
      await new Promise<void>((resolve) => {
        this.wake = resolve;
      });
    }
    this.taken = this.count;
  }

  /** Asks at each refresh until the answer is as it should be. */
  async until(isThere: () => Promise<boolean>): Promise<void> {
    do await this.next();
    while (!(await isThere()));
  }
}
