import { strict as assert } from 'node:assert';
import { setTimeout as pause } from 'node:timers/promises';
import { isDeepStrictEqual } from 'node:util';
import fc from 'fast-check';
import {
  CancellationTokenSource,
  CompletionRequest,
  type Diagnostic,
  DocumentDiagnosticRequest,
  DocumentSymbolRequest,
  FileChangeType,
  HoverRequest,
  SemanticTokensRequest,
} from 'vscode-languageserver-protocol/node';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { craftScript, type LooseEdit, looseEdit } from '../support/craft-scripts';
import { placed } from '../support/placed';
import { type Scratch, withScratch } from '../support/scratch';
import { askingClient, type TestServer, withOwnServer } from '../support/server';

const seeds = Number(process.env.PROPSOFF_SEEDS ?? 2);
const length = Number(process.env.PROPSOFF_STEPS ?? 400);
/** Steps between two pauses, at which findings are compared. */
const stretch = Math.max(100, Math.ceil(length / 20));

const names = ['main.craft', 'one.craft', 'two.craft', 'parts/club.craft'] as const;
type Name = (typeof names)[number];

/** One thing that an editor does; several may be on their way at once. */
type Step =
  | { readonly what: 'edit'; readonly name: Name; readonly edits: readonly LooseEdit[] }
  | { readonly what: 'replace' | 'save elsewhere'; readonly name: Name; readonly text: string }
  | { readonly what: 'open or close' | 'delete elsewhere' | 'reopen'; readonly name: Name }
  | {
      readonly what: 'ask' | 'ask and cancel';
      readonly name: Name;
      readonly request: number;
      readonly line: number;
    };

const name = fc.constantFrom(...names);
const step: fc.Arbitrary<Step> = fc.oneof(
  {
    weight: 12,
    arbitrary: fc.record({
      what: fc.constant('edit' as const),
      name,
      edits: fc.array(looseEdit, { minLength: 1, maxLength: 4 }),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      what: fc.constantFrom('replace' as const, 'save elsewhere' as const),
      name,
      text: craftScript,
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      what: fc.constantFrom('open or close' as const, 'delete elsewhere' as const, 'reopen' as const),
      name,
    }),
  },
  {
    weight: 4,
    arbitrary: fc.record({
      what: fc.constantFrom('ask' as const, 'ask and cancel' as const),
      name,
      request: fc.nat(4),
      line: fc.nat(40),
    }),
  },
);

/** The editor's side of a session: the texts that are open, kept by the protocol's own library. */
class Session {
  readonly open = new Map<Name, TextDocument>();
  readonly asked: Promise<unknown>[] = [];
  private version = 0;

  constructor(
    readonly server: TestServer,
    readonly scratch: Scratch,
  ) {}

  async do(one: Step): Promise<void> {
    const document = this.open.get(one.name);
    switch (one.what) {
      case 'edit':
        return document === undefined ? undefined : this.edit(document, one.edits);
      case 'replace':
        return document === undefined ? undefined : this.replace(document, one.text);
      case 'save elsewhere':
        this.scratch.write(one.name, one.text);
        return this.told(one.name, FileChangeType.Changed);
      case 'delete elsewhere':
        if (one.name === 'main.craft') return;
        this.scratch.write(one.name, '');
        this.scratch.remove(one.name);
        return this.told(one.name, FileChangeType.Deleted);
      case 'open or close':
        return document === undefined ? this.openScript(one.name) : this.close(one.name);
      case 'reopen':
        // A reload: closed and opened in one go, its versions from the start again.
        if (document === undefined) return;
        await this.close(one.name);
        this.version = 0;
        return this.openScript(one.name);
      case 'ask':
      case 'ask and cancel':
        if (document !== undefined) this.ask(document, one.request, one.line, one.what === 'ask and cancel');
    }
  }

  async openScript(which: Name): Promise<void> {
    this.version += 1;
    const uri = this.scratch.uriOf(which);
    const text = `include "club.craft"\n[craft]\nname = "${which}"\n`;
    this.open.set(which, TextDocument.create(uri, 'craft-script', this.version, text));
    await this.server.open(uri, text, this.version);
  }

  private async close(which: Name): Promise<void> {
    this.open.delete(which);
    await this.server.close(this.scratch.uriOf(which));
  }

  private async edit(document: TextDocument, loose: readonly LooseEdit[]): Promise<void> {
    this.version += 1;
    const changes = loose.map((one) => {
      const { start, end, text } = placed(document, one);
      const change = { range: { start, end }, text };
      TextDocument.update(document, [change], this.version);
      return change;
    });
    await this.server.change(document.uri, this.version, ...changes);
  }

  private async replace(document: TextDocument, text: string): Promise<void> {
    this.version += 1;
    TextDocument.update(document, [{ text }], this.version);
    await this.server.change(document.uri, this.version, { text });
  }

  private async told(which: Name, type: FileChangeType): Promise<void> {
    await this.server.filesChanged({ uri: this.scratch.uriOf(which), type });
  }

  /** Answers may come, or a refusal because the request was cancelled; nothing else. */
  private ask({ uri }: TextDocument, request: number, line: number, isCancelled: boolean): void {
    const source = new CancellationTokenSource();
    const about = { textDocument: { uri }, position: { line, character: 3 } };
    const { connection } = this.server;
    const answers = [
      () => connection.sendRequest(HoverRequest.type, about, source.token),
      () => connection.sendRequest(CompletionRequest.type, about, source.token),
      () => connection.sendRequest(SemanticTokensRequest.type, about, source.token),
      () => connection.sendRequest(DocumentSymbolRequest.type, about, source.token),
      () => connection.sendRequest(DocumentDiagnosticRequest.type, about, source.token),
    ];
    const answer = answers[request]?.() ?? Promise.reject(new Error(`no request ${request}`));
    this.asked.push(isCancelled ? answer.catch(cancelledOnly) : answer);
    if (isCancelled) source.cancel();
  }
}

function cancelledOnly(error: unknown): void {
  const code = typeof error === 'object' && error !== null && 'code' in error ? error.code : undefined;
  if (code !== -32800 && code !== -32801) throw error;
}

async function findings(server: TestServer, uri: string): Promise<readonly Diagnostic[]> {
  const report = await server.connection.sendRequest(DocumentDiagnosticRequest.type, {
    textDocument: { uri },
  });
  return report.kind === 'full' ? report.items : [];
}

/** Of every open script, by its name. */
async function told(server: TestServer, documents: readonly TextDocument[]) {
  return Object.fromEntries(
    await Promise.all(documents.map(async ({ uri }) => [uri, await findings(server, uri)] as const)),
  );
}

/**
 * At rest the session's server says what a server says that has just started with the same texts. Both may still be
 * reading what changed on the disk or what is included, so they are asked until they have agreed three times in a row.
 */
async function compare({ server, scratch, open, asked }: Session, played: number): Promise<void> {
  await Promise.all(asked.splice(0));
  const documents = [...open.values()];
  await withOwnServer({ capabilities: askingClient, folders: [scratch.uri] }, async (fresh) => {
    for (const document of documents) await fresh.open(document.uri, document.getText());
    let agreed = 0;
    for (let tries = 0; tries < 400; tries += 1) {
      const [ours, wanted] = await Promise.all([told(server, documents), told(fresh, documents)]);
      agreed = isDeepStrictEqual(ours, wanted) ? agreed + 1 : 0;
      if (agreed === 3) return;
      await pause(25);
    }
    assert.deepEqual(await told(server, documents), await told(fresh, documents), `after ${played} steps`);
    assert.fail(`the findings went on changing after ${played} steps`);
  });
}

describe('a session of any editor', () => {
  for (let seed = 1; seed <= seeds; seed += 1) {
    it(`leaves the findings that a fresh server gives (seed ${seed}, ${length} steps; D02, D04, D05)`, async function () {
      this.timeout(60_000 + length * 100);
      const steps = fc.sample(step, { numRuns: length, seed });
      await withScratch({ 'club.craft': 'let quiet = 90 Hz\n', 'parts/club.craft': '' }, (scratch) =>
        withOwnServer({ capabilities: askingClient, folders: [scratch.uri] }, async (server) => {
          const session = new Session(server, scratch);
          await session.openScript('main.craft');
          for (const [index, one] of steps.entries()) {
            await session.do(one);
            if ((index + 1) % stretch === 0) await compare(session, index + 1);
          }
          await compare(session, steps.length);
          // This client refuses to be asked to ask again; that is told once, and nothing else goes wrong.
          const others = server.log.filter((line) => !line.startsWith('asking the client to ask again'));
          assert.deepEqual(others, []);
        }),
      );
    });
  }
});
