import assert from 'node:assert/strict';
import {
  type CodeAction,
  CodeActionRequest,
  CodeActionResolveRequest,
  type Diagnostic,
} from 'vscode-languageserver-protocol/node';
import { resolvingClient, type TestServer, withServer } from '../support/server';

const uri = 'file:///cfg/wren.craft';
const textDocument = { uri };
const script = '[gyro]\nrate = 6,4 kHz\n[gyro.filter.1]\ncutoff = 7,5 Hz\n';

async function fixesFor(server: TestServer, diagnostics: Diagnostic[]): Promise<readonly CodeAction[]> {
  const range = { start: { line: 0, character: 0 }, end: { line: 4, character: 0 } };
  const asked = { textDocument, range, context: { diagnostics, only: ['quickfix'] } };
  return ((await server.connection.sendRequest(CodeActionRequest.type, asked)) ?? []) as CodeAction[];
}

/** What a fix comes to: the texts that it writes, by the client's lines. */
const written = ({ edit }: CodeAction) =>
  edit?.documentChanges?.flatMap((change) =>
    'edits' in change
      ? change.edits.map((one) => [one.range.start.line, 'newText' in one ? one.newText : ''])
      : [],
  );

describe('a fix', () => {
  it('is the same whether its edits come at once or when it is picked', async () => {
    const whole = await withServer({}, async (server) => {
      await server.open(uri, script);
      return (await fixesFor(server, (await server.pushedFor(uri, 1)).diagnostics)).map((one) => [
        one.title,
        written(one),
      ]);
    });
    assert.ok(whole.length >= 2 && whole.every(([, edits]) => edits !== undefined));
    await withServer({ capabilities: resolvingClient }, async (server) => {
      await server.open(uri, script);
      const offered = await fixesFor(server, (await server.pushedFor(uri, 1)).diagnostics);
      assert.ok(offered.every(({ edit }) => edit === undefined));
      const picked: [string, unknown][] = [];
      for (const one of offered) {
        const { title, edit, ...rest } = await server.connection.sendRequest(
          CodeActionResolveRequest.type,
          one,
        );
        picked.push([title, written({ title, ...(edit === undefined ? {} : { edit }) })]);
        assert.deepEqual(rest.diagnostics, one.diagnostics);
      }
      assert.deepEqual(picked, whole);
    });
  });

  it('of one of two alike problems is its own', () =>
    withServer({ capabilities: resolvingClient }, async (server) => {
      await server.open(uri, script);
      const { diagnostics } = await server.pushedFor(uri, 1);
      const commas = diagnostics.filter(({ code }) => code === 'line/decimal-comma');
      assert.equal(commas.length, 2);
      const [, second] = commas;
      assert.ok(second);
      const [fix, ...others] = await fixesFor(server, [second]);
      assert.ok(fix && others.length === 0);
      const picked = await server.connection.sendRequest(CodeActionResolveRequest.type, fix);
      assert.deepEqual(written(picked), [[3, '7.5']]);
    }));

  it('that says only that all is fine comes last', () =>
    withServer({}, async (server) => {
      await server.open(uri, '[arming]\ntilt-limit = 89 deg\ntilt-limt = 6,4 deg\nlet quiet = 90 Hz\n');
      const sent = await server.pushed(uri, (one) =>
        one.diagnostics.some(({ code }) => code === 'line/constant-unused'),
      );
      const titles = (await fixesFor(server, sent.diagnostics)).map(({ title }) => title);
      const first = titles.findIndex((title) => title.startsWith('Accept this'));
      assert.ok(first > 0 && titles.includes('Take the constant out'), titles.join('; '));
      assert.ok(titles.slice(first).every((title) => title.startsWith('Accept this')));
    }));

  it('that is whole already is left as it is', () =>
    withServer({ capabilities: resolvingClient }, async (server) => {
      const action: CodeAction = { title: 'Of somebody else', data: { version: 'x' } };
      assert.deepEqual(await server.connection.sendRequest(CodeActionResolveRequest.type, action), action);
    }));
});
