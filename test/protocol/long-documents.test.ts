import assert from 'node:assert/strict';
import {
  type Diagnostic,
  DocumentDiagnosticRequest,
  DocumentSymbolRequest,
  HoverRequest,
} from 'vscode-languageserver-protocol/node';
import { summaryRequest } from '../../server/src/lsp/protocol';
import { askingClient, type TestServer, withOwnServer, withServer } from '../support/server';
import { shown } from '../support/shown';

const uri = 'file:///cfg/base.craft';
const about = { textDocument: { uri } };
/** In every line the same slip. */
const line = 'gyro.rate = 3 ms\n';
/** A text of so many million characters. */
const long = (millions: number) => line.repeat(Math.ceil((millions * 1_000_000) / line.length));
const start = { line: 0, character: 0 };

function isRefused(diagnostics: readonly Diagnostic[]): boolean {
  const [one, ...others] = diagnostics;
  return others.length === 0 && /so nothing in it is checked/.test(String(one?.message));
}

async function refused(server: TestServer, version: number, about = uri): Promise<Diagnostic | undefined> {
  const { diagnostics } = await server.pushed(about, (one) => one.version === version);
  assert.ok(isRefused(diagnostics), JSON.stringify(diagnostics).slice(0, 300));
  return diagnostics[0];
}

describe('a document that is too long', () => {
  it('is refused with one message at its top, and every question about it has an empty answer', () =>
    withServer({}, async (server) => {
      await server.open(uri, long(64));
      const told = await refused(server, 1);
      assert.deepEqual(told?.range, { start, end: { line: 0, character: 1 } });
      assert.equal(told?.severity, 1);
      assert.equal(
        told?.message,
        'This document has 64,000,002 characters. Propsoff reads at most 1,000,000, so nothing in it is checked.\nSplit it into parts that it includes, then close it and open it again.',
      );
      const here = { ...about, position: start };
      assert.equal(await server.connection.sendRequest(HoverRequest.type, here), null);
      assert.equal(await server.connection.sendRequest(DocumentSymbolRequest.type, about), null);
      assert.equal(await server.connection.sendRequest(summaryRequest, about), null);
      await server.close(uri);
      await server.pushed(uri, ({ diagnostics }) => diagnostics.length === 0);
    }));

  it('takes no memory: many of them fit where one kept would not', () =>
    withOwnServer({ nodeArguments: ['--max-old-space-size=320'] }, async (server) => {
      const text = long(64);
      for (let count = 1; count <= 8; count += 1) {
        const one = `file:///cfg/long-${count}.craft`;
        await server.open(one, text);
        await refused(server, 1, one);
        server.output.length = 0;
      }
      await server.open(uri, line);
      assert.deepEqual(shown((await server.pushedFor(uri, 1)).diagnostics), ['0:12-16 line/wrong-dimension']);
    }));

  it('stays so through edits, and is read once it is sent whole and short', () =>
    withServer({}, async (server) => {
      await server.open(uri, long(1.1));
      await refused(server, 1);
      await server.change(uri, 2, { range: { start, end: { line: 900_000, character: 0 } }, text: '' });
      await refused(server, 2);
      const insert = { range: { start, end: start }, text: 'badkey = 2\n' };
      await server.change(uri, 3, { text: long(1.2) }, insert);
      await refused(server, 3);
      await server.change(uri, 4, insert, { text: line }, insert);
      assert.deepEqual(shown((await server.pushedFor(uri, 4)).diagnostics), [
        '0:0-6 line/unknown-name',
        '1:12-16 line/wrong-dimension',
      ]);
    }));

  it('may have become so by edits', () =>
    withServer({}, async (server) => {
      await server.open(uri, line);
      await server.pushedFor(uri, 1);
      const insert = { range: { start, end: start }, text: `# ${'x'.repeat(4_000_000)}\n` };
      const take = { range: { start, end: { line: 1, character: 0 } }, text: '' };
      // What an edit takes away counts: however often this is done, the text is short.
      for (let version = 2; version < 8; version += 1) await server.change(uri, version, insert, take);
      assert.deepEqual(shown((await server.pushedFor(uri, 7)).diagnostics), ['0:12-16 line/wrong-dimension']);
      await server.change(uri, 8, insert, insert, insert);
      await refused(server, 8);
      await server.close(uri);
      await server.open(uri, line, 9);
      assert.deepEqual(shown((await server.pushedFor(uri, 9)).diagnostics), ['0:12-16 line/wrong-dimension']);
    }));

  it('is told to a client that asks, and a board’s text like a script', () =>
    withServer({ capabilities: askingClient }, async (server) => {
      await server.open(uri, long(1.1), 1, 'board-text');
      const ask = (previousResultId?: string) =>
        server.connection.sendRequest(DocumentDiagnosticRequest.type, {
          ...about,
          ...(previousResultId === undefined ? {} : { previousResultId }),
        });
      const report = await ask();
      assert.ok(report.kind === 'full' && isRefused(report.items));
      assert.equal((await ask(report.resultId)).kind, 'unchanged');
      await server.close(uri);
      await server.open(uri, line, 2);
      const short = await ask(report.resultId);
      assert.ok(short.kind === 'full');
      assert.deepEqual(shown(short.items), ['0:12-16 line/wrong-dimension']);
    }));
});
