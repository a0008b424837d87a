import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import {
  HoverRequest,
  type InitializeParams,
  ResponseError,
  ShutdownRequest,
} from 'vscode-languageserver-protocol/node';
import { summaryRequest } from '../../server/src/lsp/protocol';
import { built } from '../support/built';
import { ableClient, askingClient, withOwnServer, withProcess } from '../support/server';

const uri = 'file:///cfg/base.craft';
const faulty = 'gyro.filter.1.cutoff = 3 ms\n';

describe('the life of the server', () => {
  for (const [title, params] of [
    ['without a folder', { rootUri: null, workspaceFolders: null }],
    ['with no folder in the list', { rootUri: null, workspaceFolders: [] }],
    ['with a root and no list', { rootUri: 'file:///cfg', workspaceFolders: null }],
  ] satisfies [string, Partial<InitializeParams>][]) {
    it(`checks a single script ${title} (E07)`, () =>
      withOwnServer({ params }, async (server) => {
        await server.open(uri, faulty);
        const { diagnostics } = await server.pushedFor(uri, 1);
        assert.deepEqual(
          diagnostics.map(({ code }) => code),
          ['line/wrong-dimension'],
        );
      }));
  }

  it('starts when the client says nothing about folders, and next to nothing about itself', () =>
    withProcess(async (server) => {
      const result = await server.connection.sendRequest('initialize', { processId: null, capabilities: {} });
      assert.equal((result as { serverInfo: { name: string } }).serverInfo.name, 'propsoff');
      await server.connection.sendNotification('initialized', {});
      await server.open(uri, faulty);
      assert.equal((await server.pushedFor(uri, 1)).diagnostics.length, 1);
    }));

  it('answers a request that it does not know with "method not found", and goes on', () =>
    withOwnServer({}, async (server) => {
      await assert.rejects(
        server.connection.sendRequest('propsoff/nonsense', {}),
        (error) => error instanceof ResponseError && error.code === -32601,
      );
      await server.connection.sendNotification('propsoff/nonsense', {});
      await server.open(uri, faulty);
      assert.equal((await server.pushedFor(uri, 1)).diagnostics.length, 1);
    }));

  it('answers a request that makes no sense with an error, and goes on', () =>
    withOwnServer({}, async (server) => {
      await server.open(uri, faulty);
      await assert.rejects(server.connection.sendRequest('textDocument/hover', { textDocument: { uri } }));
      assert.notEqual(
        await server.connection.sendRequest(HoverRequest.type, {
          textDocument: { uri },
          position: { line: 0, character: 3 },
        }),
        null,
      );
    }));

  it('ends with code 0 after shutdown and exit', () =>
    withOwnServer({}, async (server) => {
      await server.open(uri, faulty);
      assert.equal(await server.shutDown(), 0);
    }));

  it('ends with code 1 when told to exit without shutdown', () =>
    withOwnServer({}, async (server) => {
      await server.connection.sendNotification('exit');
      assert.equal(await server.exitCode(), 1);
    }));

  it('ends when its input ends', () =>
    withOwnServer({}, async (server) => {
      server.process.stdin.end();
      assert.equal(await server.exitCode(), 1);
    }));

  it('ends when its input ends after shutdown', () =>
    withOwnServer({}, async (server) => {
      await server.connection.sendRequest(ShutdownRequest.type);
      server.process.stdin.end();
      assert.equal(await server.exitCode(), 0);
    }));

  it('ends when the process that it was started for is gone, though its input stays open (I01)', async () => {
    const parent = spawn(process.execPath, ['-e', 'process.stdin.resume()']);
    await once(parent, 'spawn');
    const processId = parent.pid ?? null;
    await withOwnServer({ params: { processId } }, async (server) => {
      await server.connection.sendRequest(summaryRequest, { textDocument: { uri } });
      const parentEnds = once(parent, 'exit');
      parent.kill('SIGKILL');
      await parentEnds;
      assert.equal(await server.exitCode(), 1);
    });
  });

  it('ends with a parent that dies without a word (I01)', async () => {
    // The server writes its errors where its parent does: that stream ends when both of them have ended.
    const script = `
      const { spawn } = require('node:child_process');
      const server = spawn(process.execPath, [process.argv[1], '--stdio'], { stdio: ['pipe', 'pipe', 'inherit'] });
      server.once('spawn', () => console.log(server.pid));
      setInterval(() => {}, 1000);`;
    const parent = spawn(process.execPath, ['-e', script, built('server.js')], {
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    await once(parent.stdout, 'data');
    const bothEnd = once(parent.stderr.resume(), 'end');
    parent.kill('SIGKILL');
    await bothEnd;
  });

  it('offers to be asked for findings, and about renames, only to clients that do ask', async () => {
    await withOwnServer({ capabilities: ableClient }, async ({ initialized: { capabilities } }) => {
      assert.equal(capabilities.diagnosticProvider, undefined);
      assert.deepEqual(capabilities.renameProvider, { prepareProvider: true, workDoneProgress: true });
    });
    await withOwnServer({ capabilities: askingClient }, async ({ initialized: { capabilities } }) => {
      assert.equal(capabilities.diagnosticProvider?.interFileDependencies, true);
      assert.equal(capabilities.diagnosticProvider?.workspaceDiagnostics, true);
    });
    await withOwnServer({ capabilities: {} }, async ({ initialized: { capabilities } }) => {
      assert.equal(capabilities.renameProvider, true);
      assert.equal(capabilities.positionEncoding, 'utf-16');
    });
  });
});
