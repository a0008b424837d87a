import assert from 'node:assert/strict';
import {
  CancellationTokenSource,
  CompletionRequest,
  type Diagnostic,
  DiagnosticRefreshRequest,
  DidChangeConfigurationNotification,
  DidChangeWorkspaceFoldersNotification,
  type DocumentDiagnosticReport,
  DocumentDiagnosticRequest,
  DocumentSymbolRequest,
  FileChangeType,
  HoverRequest,
} from 'vscode-languageserver-protocol/node';
import { proveRequest } from '../../server/src/lsp/board-protocol';
import { summaryRequest } from '../../server/src/lsp/protocol';
import { framed } from '../support/frames';
import { type Scratch, withScratch } from '../support/scratch';
import { askingClient, countingIn, type TestServer, withOwnServer, withServer } from '../support/server';
import { shown } from '../support/shown';

const uri = 'file:///nowhere/main.craft';
const faulty = 'gyro.filter.1.cutoff = 3 ms\n';
const marked = '0:23-27 line/wrong-dimension';

async function goesOn(server: TestServer): Promise<void> {
  const next = 'file:///nowhere/next.craft';
  await server.open(next, faulty);
  assert.deepEqual(shown((await server.pushedFor(next, 1)).diagnostics), [marked]);
  assert.deepEqual(server.log, []);
}

describe('a storm', () => {
  it('of requests that are cancelled at once leaves every one answered and the server well (D02)', () =>
    withServer({}, async (server) => {
      await server.open(uri, faulty);
      const about = { textDocument: { uri }, position: { line: 0, character: 4 } };
      const codes = new Map<unknown, number>();
      const asked = Array.from({ length: 600 }, async (_, index) => {
        const source = new CancellationTokenSource();
        const type = [HoverRequest.type, CompletionRequest.type, DocumentSymbolRequest.type][index % 3];
        const answer = server.connection.sendRequest(type?.method ?? '', about, source.token);
        if (index % 5 !== 0) source.cancel();
        const code: unknown = await answer.then(
          () => 'answered',
          (error: unknown) => (error as { code?: unknown }).code,
        );
        codes.set(code, (codes.get(code) ?? 0) + 1);
      });
      await Promise.all(asked);
      assert.ok((codes.get('answered') ?? 0) >= 120, JSON.stringify([...codes]));
      assert.deepEqual(
        [...codes.keys()].filter((code) => code !== 'answered' && code !== -32800),
        [],
      );
      await goesOn(server);
    }));

  it('of changes on the disk ends with what is there', () =>
    withScratch({ 'base.craft': 'let quiet = 90 Hz\n' }, (scratch) =>
      withServer({ folders: [scratch.uri] }, async (server) => {
        const main = scratch.uriOf('main.craft');
        await server.open(main, 'include "base.craft"\n[gyro.filter.1]\ncutoff = quiet\n');
        for (let round = 0; round < 400; round += 1) {
          scratch.write('base.craft', round % 2 === 0 ? 'let quiet = 90 ms\n' : 'let quiet = 90 Hz\n');
          await server.filesChanged(
            { uri: scratch.uriOf('base.craft'), type: FileChangeType.Changed },
            { uri: scratch.uriOf(`other-${round}.craft`), type: FileChangeType.Created },
          );
        }
        scratch.remove('base.craft');
        await server.filesChanged({ uri: scratch.uriOf('base.craft'), type: FileChangeType.Deleted });
        await server.pushed(main, ({ diagnostics }) =>
          shown(diagnostics).includes('0:8-20 line/include-missing'),
        );
        await goesOn(server);
      }),
    ));

  const scripts = Array.from({ length: 21 }, (_, index) => `script-${index}.craft`);
  const base = (value: string) => ({ 'base.craft': `let quiet = ${value}\n` });

  /** All scripts open, each with its include read; then 200 notes in one piece about that, which says something else. */
  async function noteOften(server: TestServer, scratch: Scratch): Promise<void> {
    for (const name of scripts)
      await server.open(scratch.uriOf(name), 'include "base.craft"\n[gyro.filter.1]\ncutoff = quiet\n');
    const answers = scripts.map((name) =>
      server.connection.sendRequest(proveRequest, {
        omitsDefaults: false,
        textDocument: { uri: scratch.uriOf(name) },
        capture: '',
        board: null,
      }),
    );
    await Promise.all(answers);
    scratch.write('base.craft', 'let quiet = 90 ms\n');
    const changes = [{ uri: scratch.uriOf('base.craft'), type: FileChangeType.Changed }];
    const note = framed({ method: 'workspace/didChangeWatchedFiles', params: { changes } });
    server.process.stdin.write(note.repeat(200));
  }

  it('of notes about one included file is one piece of work for all scripts that are open', () =>
    withScratch(base('90 Hz'), (scratch) =>
      withServer({ folders: [scratch.uri] }, async (server) => {
        await noteOften(server, scratch);
        const isNew = ({ diagnostics }: { diagnostics: readonly Diagnostic[] }) =>
          shown([...diagnostics]).includes('2:9-14 line/wrong-dimension');
        for (const name of scripts) await server.pushed(scratch.uriOf(name), isNew);
        await goesOn(server);
        const checks = server.published.filter(isNew).length;
        // The pipe may bring the notes in two pieces.
        assert.ok(checks <= 2 * scripts.length, `${checks} checks`);
      }),
    ));

  it('of notes about one included file has a client that asks told once', () =>
    withScratch(base('90 Hz'), (scratch) =>
      withServer({ capabilities: askingClient, folders: [scratch.uri] }, async (server) => {
        let refreshes = 0;
        server.connection.onRequest(DiagnosticRefreshRequest.type, () => {
          refreshes += 1;
        });
        const asked = async (name: string) => {
          const report: DocumentDiagnosticReport = await server.connection.sendRequest(
            DocumentDiagnosticRequest.type,
            { textDocument: { uri: scratch.uriOf(name) } },
          );
          return report.kind === 'full' ? shown(report.items) : [];
        };
        await asked(scripts[0] ?? '');
        await noteOften(server, scratch);
        const before = refreshes;
        for (;;) {
          const found = await asked(scripts[20] ?? '');
          if (found.includes('2:9-14 line/wrong-dimension')) break;
        }
        assert.ok(refreshes - before <= 4, `${refreshes - before} refreshes`);
      }),
    ));

  it('of settings that change while it runs makes no difference: checks have none (D07)', () =>
    withServer({}, async (server) => {
      await server.open(uri, faulty);
      const before = await server.pushedFor(uri, 1);
      for (let round = 0; round < 50; round += 1) {
        const settings = [null, {}, { propsoff: { codeLens: round % 2 === 0 } }, 'x', [1]][round % 5];
        await server.connection.sendNotification(DidChangeConfigurationNotification.type, { settings });
      }
      assert.equal(
        (await server.connection.sendRequest(summaryRequest, { textDocument: { uri } }))?.counts['must-fix'],
        1,
      );
      assert.equal(server.process.exitCode, null);
      await server.change(uri, 2, { text: faulty });
      assert.deepEqual((await server.pushedFor(uri, 2)).diagnostics, before.diagnostics);
      await goesOn(server);
    }));

  it('of openings and closings between which nobody waits leaves nothing listed (D04)', () =>
    withServer({}, async (server) => {
      for (let round = 0; round < 200; round += 1) {
        // Versions start anew each time, as after a reload.
        await server.open(uri, `${faulty}# ${round}\n`, 1);
        await server.change(uri, 2, { text: `${faulty}${faulty}` });
        await server.close(uri);
      }
      await goesOn(server);
      const last = server.published.findLast((params) => params.uri === uri);
      assert.deepEqual(last?.diagnostics ?? [], []);
    }));
});

describe('a document that is no file', () => {
  for (const odd of [
    'untitled:Untitled-1',
    'vscode-notebook-cell:/x.ipynb#W0',
    'made-up://host/a.craft',
    'a b',
  ]) {
    it(`is checked like any other: ${odd} (E01)`, () =>
      withServer({}, async (server) => {
        await server.open(odd, `include "base.craft"\n${faulty}`);
        // An include beside it leads nowhere: that is told at its place, once the client has been asked for it.
        const isOfInclude = (line: string) => line.startsWith('0:8-20 line/include');
        const { diagnostics } = await server.pushed(odd, (one) => shown(one.diagnostics).some(isOfInclude));
        const found = shown(diagnostics);
        assert.ok(found.includes('1:23-27 line/wrong-dimension'), found.join());
        assert.equal(found.filter(isOfInclude).length, 1, found.join());
        await goesOn(server);
      }));
  }
});

describe('a client that counts in a way of its own', () => {
  for (const encodings of [['utf-7'], ['', 'utf-99'], []]) {
    it(`gets the usual one: ${JSON.stringify(encodings)}`, () =>
      withServer({ capabilities: countingIn(...encodings) }, async (server) => {
        assert.equal(server.initialized.capabilities.positionEncoding, 'utf-16');
        await goesOn(server);
      }));
  }
});

describe('several roots', () => {
  it('may come and go; what a script may include goes by those that are there (E08)', () =>
    withScratch({ 'one/base.craft': 'let a = 1 Hz\n', 'two/base.craft': 'let b = 2 Hz\n' }, (scratch) =>
      withOwnServer({ folders: [scratch.uriOf('one'), scratch.uriOf('two')] }, async (server) => {
        const main = scratch.uriOf('one/main.craft');
        const lies = '0:8-27 line/include-refused';
        await server.open(main, 'include "../two/base.craft"\n');
        const until = (wanted: readonly string[]) =>
          server.pushed(
            main,
            ({ diagnostics }) => JSON.stringify(shown(diagnostics)) === JSON.stringify(wanted),
          );
        const folders = async (added: readonly string[], removed: readonly string[]) => {
          const named = (names: readonly string[]) =>
            names.map((name) => ({ uri: scratch.uriOf(name), name }));
          const event = { added: named(added), removed: named(removed) };
          await server.connection.sendNotification(DidChangeWorkspaceFoldersNotification.type, { event });
        };
        await until([lies]);
        await folders(['.'], []);
        await until([]);
        await folders([], ['.']);
        await until([lies]);
        await goesOn(server);
      }),
    ));
});
