import assert from 'node:assert/strict';
import {
  type CodeAction,
  CodeActionKind,
  CodeActionRequest,
  CodeActionResolveRequest,
  CodeActionTriggerKind,
  LSPErrorCodes,
  type Position,
} from 'vscode-languageserver-protocol/node';
import { resolvingClient, type TestServer, withServer } from '../support/server';

const uri = 'file:///cfg/wren.craft';
const textDocument = { uri };
const script = '[pack.sprint]\ncells = 6\n[gyro.filter.1]\ncutoff = 120 Hz\n\n[pack.cruise]\ncells = 4\n';
const number = { line: 3, character: 10 };

async function actionsAt(
  server: TestServer,
  position: Position,
  context: { readonly only?: string[]; readonly triggerKind?: CodeActionTriggerKind } = {},
): Promise<readonly CodeAction[]> {
  const range = { start: position, end: position };
  const asked = { textDocument, range, context: { diagnostics: [], ...context } };
  const answer = await server.connection.sendRequest(CodeActionRequest.type, asked);
  return (answer ?? []) as CodeAction[];
}

const changesOf = ({ edit }: CodeAction) =>
  edit?.documentChanges?.flatMap((change) => ('edits' in change ? change.edits : []));

describe('what can be written otherwise', () => {
  it('is offered under its kinds, with its edits to a client that does not ask for them later', () =>
    withServer({}, async (server) => {
      const { codeActionProvider } = server.initialized.capabilities;
      assert.ok(typeof codeActionProvider === 'object' && codeActionProvider.resolveProvider === false);
      for (const kind of ['refactor.extract', 'refactor.rewrite', 'refactor.move'])
        assert.ok(codeActionProvider.codeActionKinds?.includes(kind), kind);
      await server.open(uri, script);
      const actions = await actionsAt(server, number, { only: [CodeActionKind.Refactor] });
      assert.deepEqual(
        actions.map(({ title, kind }) => [kind, title]),
        [
          ['refactor.extract', 'Extract a constant: gyro-cutoff = 120 Hz'],
          ['refactor.rewrite', 'Write it as 0.12 kHz'],
          ['refactor.move', 'Move it to [gyro.filter.1 @ sprint]: for pack sprint alone'],
          ['refactor.move', 'Move it to [gyro.filter.1 @ cruise]: for pack cruise alone'],
        ],
      );
      const [, rewrite] = actions;
      assert.ok(rewrite);
      const range = { start: { line: 3, character: 9 }, end: { line: 3, character: 15 } };
      assert.deepEqual(changesOf(rewrite), [{ range, newText: '0.12 kHz' }]);
      assert.deepEqual(
        (await actionsAt(server, number, { only: ['refactor.move'] })).map(({ kind }) => kind),
        ['refactor.move', 'refactor.move'],
      );
    }));

  it('is offered to a person who asks, and lights no lamp at every number', () =>
    withServer({}, async (server) => {
      await server.open(uri, script);
      const kinds = async (triggerKind: CodeActionTriggerKind) =>
        (await actionsAt(server, number, { triggerKind })).map(({ kind }) => kind);
      assert.ok((await kinds(CodeActionTriggerKind.Invoked)).includes('refactor.extract'));
      assert.deepEqual(
        (await kinds(CodeActionTriggerKind.Automatic)).filter((kind) => kind?.startsWith('refactor')),
        [],
      );
    }));

  it('gets its edits once it is picked, where the client asks for them then', () =>
    withServer({ capabilities: resolvingClient }, async (server) => {
      const { codeActionProvider } = server.initialized.capabilities;
      assert.ok(typeof codeActionProvider === 'object' && codeActionProvider.resolveProvider === true);
      await server.open(uri, script);
      const actions = await actionsAt(server, number, { only: [CodeActionKind.Refactor] });
      assert.deepEqual(
        actions.map(({ edit }) => edit),
        [undefined, undefined, undefined, undefined],
      );
      const [extract] = actions;
      assert.ok(extract);
      const picked = await server.connection.sendRequest(CodeActionResolveRequest.type, extract);
      assert.equal(picked.title, extract.title);
      const at = { line: 0, character: 0 };
      assert.deepEqual(changesOf(picked), [
        { range: { start: at, end: at }, newText: 'let gyro-cutoff = 120 Hz\n\n' },
        {
          range: { start: { line: 3, character: 9 }, end: { line: 3, character: 15 } },
          newText: 'gyro-cutoff',
        },
      ]);
    }));

  it('is refused for a text that has changed since', () =>
    withServer({ capabilities: resolvingClient }, async (server) => {
      await server.open(uri, script);
      const [extract] = await actionsAt(server, number, { only: [CodeActionKind.Refactor] });
      assert.ok(extract);
      await server.change(uri, 2, { text: `\n${script}` });
      await assert.rejects(
        server.connection.sendRequest(CodeActionResolveRequest.type, extract),
        ({ code }: { readonly code: number }) => code === LSPErrorCodes.ContentModified,
      );
    }));
});
