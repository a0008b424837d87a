import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import {
  type ClientCapabilities,
  CompletionRequest,
  ErrorCodes,
  FoldingRangeRequest,
  HoverRequest,
  ResponseError,
} from 'vscode-languageserver-protocol/node';
import { sheetRequest, summaryRequest } from '../../server/src/lsp/protocol';
import { built } from '../support/built';
import { framed, framedText, framesIn } from '../support/frames';
import { ableClient, ownClient, type TestServer, withOwnServer, withProcess } from '../support/server';

const uri = 'file:///cfg/base.craft';
const faulty = 'gyro.filter.1.cutoff = 3 ms\n';
const start = { processId: null, rootUri: null, capabilities: {} };

function withCode(code: number) {
  return (error: unknown) => error instanceof ResponseError && error.code === code;
}

async function goesOn(server: TestServer): Promise<void> {
  await server.open(uri, faulty);
  assert.equal((await server.pushedFor(uri, 1)).diagnostics.length, 1);
  assert.equal(await server.shutDown(), 0);
}

describe('what comes before initialize and after shutdown', () => {
  it('is refused, and the server starts none the worse', () =>
    withProcess(async (server) => {
      const { connection } = server;
      const about = { textDocument: { uri }, position: { line: 0, character: 0 } };
      await assert.rejects(
        connection.sendRequest(HoverRequest.type, about),
        withCode(ErrorCodes.ServerNotInitialized),
      );
      await assert.rejects(connection.sendRequest('shutdown'), withCode(ErrorCodes.ServerNotInitialized));
      // What is opened now is never open.
      await server.open('file:///cfg/too-early.craft', faulty);
      await server.initialize({});
      const early = { textDocument: { uri: 'file:///cfg/too-early.craft' } };
      assert.equal(await connection.sendRequest(summaryRequest, early), null);
      await goesOn(server);
    }));

  it('waits, where it comes together with initialize', () =>
    withProcess(async (server) => {
      const textDocument = { uri, languageId: 'craft-script', version: 1, text: faulty };
      server.process.stdin.write(
        [
          { id: 1, method: 'initialize', params: start },
          { method: 'initialized', params: {} },
          { method: 'textDocument/didOpen', params: { textDocument } },
          { id: 2, method: summaryRequest.method, params: { textDocument: { uri } } },
        ]
          .map(framed)
          .join(''),
      );
      await server.pushedFor(uri, 1);
      const summary = framesIn(Buffer.concat(server.output)).find((text) => text.includes('"id":2'));
      assert.match(summary ?? '', /"must-fix":1/);
    }));

  it('is refused after shutdown, a second shutdown and an initialize among it', () =>
    withOwnServer({}, async ({ connection, process }) => {
      await connection.sendRequest('shutdown');
      for (const [method, params] of [
        ['textDocument/hover', { textDocument: { uri }, position: { line: 0, character: 0 } }],
        ['shutdown', undefined],
        ['initialize', start],
        ['made/up', {}],
      ] as const)
        await assert.rejects(connection.sendRequest(method, params), withCode(ErrorCodes.InvalidRequest));
      const ended = once(process, 'exit');
      await connection.sendNotification('exit');
      assert.deepEqual(await ended, [0, null]);
    }));

  it('is no second initialize: that is refused and changes nothing', () =>
    withOwnServer({}, async (server) => {
      await assert.rejects(
        server.connection.sendRequest('initialize', start),
        withCode(ErrorCodes.InvalidRequest),
      );
      await goesOn(server);
    }));

  it('is no initialize without capabilities: a right one may follow', () =>
    withProcess(async (server) => {
      for (const params of [null, {}, { capabilities: null }, { capabilities: 3 }])
        await assert.rejects(
          server.connection.sendRequest('initialize', params),
          withCode(ErrorCodes.InvalidParams),
        );
      await server.initialize({});
      await goesOn(server);
    }));
});

describe('parameters of a wrong form', () => {
  const wrong: readonly (readonly [method: string, params: unknown, place: string])[] = [
    ['textDocument/hover', { textDocument: { uri } }, 'params.position must be an object'],
    ['textDocument/hover', { textDocument: { uri: 5 } }, 'params.textDocument.uri must be a text'],
    [
      'textDocument/completion',
      { textDocument: { uri }, position: { line: -1, character: 0 } },
      'params.position.line must be a whole number from 0 up',
    ],
    ['textDocument/selectionRange', { textDocument: { uri }, positions: [3] }, 'params.positions[0]'],
    ['workspace/symbol', {}, 'params.query must be a text'],
    ['propsoff/compare', { before: {} }, 'params.before.uri must be a text'],
    ['propsoff/sheet', [], 'params must be an object'],
  ];
  for (const [method, params, place] of wrong) {
    it(`are told by their place: ${method} with ${JSON.stringify(params)}`, () =>
      withOwnServer({}, async (server) => {
        await server.open(uri, faulty);
        await assert.rejects(server.connection.sendRequest(method, params), (error) => {
          assert.ok(withCode(ErrorCodes.InvalidParams)(error));
          return String(error).includes(`${method}: ${place}`);
        });
        assert.deepEqual(server.log, [], 'nothing of ours failed');
        await server.close(uri);
        await goesOn(server);
      }));
  }

  it('leave a notification aside with one line in the log, and what is open as it was', () =>
    withOwnServer({}, async (server) => {
      await server.open(uri, faulty);
      const range = { start: { line: 'first', character: 0 }, end: { line: 0, character: 3 } };
      const contentChanges = [{ range, text: 'x' }];
      const params = { textDocument: { uri, version: 2 }, contentChanges };
      await server.connection.sendNotification('textDocument/didChange', params);
      await server.connection.sendNotification('textDocument/didOpen', { textDocument: { uri, text: null } });
      const summary = await server.connection.sendRequest(summaryRequest, { textDocument: { uri } });
      assert.equal(summary?.counts['must-fix'], 1);
      assert.deepEqual(server.log, [
        'textDocument/didChange was left aside: params.contentChanges[0].range.start.line must be a whole number from 0 up',
        'textDocument/didOpen was left aside: params.textDocument.text must be a text',
      ]);
    }));
});

/** The one line that is left on standard error of a server that was sent bytes, and how it ended. */
async function ended(bytes: string | Buffer): Promise<{ code: unknown; lines: readonly string[] }> {
  return withProcess(async (server) => {
    server.process.stdin.on('error', () => undefined);
    server.process.stdin.write(bytes);
    const code = await server.exitCode();
    const lines = Buffer.concat(server.errors).toString('utf8').trimEnd().split('\n');
    return { code, lines };
  });
}

describe('a broken header', () => {
  const initialize = framed({ id: 1, method: 'initialize', params: start });
  const broken: readonly (readonly [title: string, bytes: string | Buffer, why: RegExp])[] = [
    ['that is a line of text', 'hello\n', /begins with "hello\\n", which is no field/],
    ['that never ends', 'x'.repeat(100_000), /more than 4096 bytes/],
    ['of very many fields', 'A: b\r\n'.repeat(2000), /more than 4096 bytes/],
    ['without a length', 'Content-Type: text/plain\r\n\r\n{}', /no Content-Length/],
    ['without anything', '\r\n\r\n', /no Content-Length/],
    ['whose length is a word', 'Content-Length: long\r\n\r\n{}', /Content-Length of "long"/],
    ['whose length is below zero', 'Content-Length: -5\r\n\r\n{}', /Content-Length of "-5"/],
    ['that announces more than fits', 'Content-Length: 99999999999\r\n\r\n{}', /announces 99999999999 bytes/],
    ['with two lengths', `Content-Length: 5\r\n${initialize}`, /"5 and \d+"/],
    ['in another charset', `Content-Type: a; charset=latin1\r\n${initialize}`, /charset "latin1"/],
    ['behind a message', `${initialize}GET / HTTP/1.1\r\n\r\n`, /"GET \/ HTTP\/1\.1"/],
    ['in sixteen bits', Buffer.from(initialize, 'utf16le'), /which is no field/],
    ['with lone line feeds', 'Content-Length: 2\n\n{}', /which is no field/],
  ];
  for (const [title, bytes, why] of broken) {
    it(`${title} ends the connection with one line and code 1`, async () => {
      const { code, lines } = await ended(bytes);
      assert.equal(code, 1);
      assert.equal(lines.length, 1, lines.join('\n'));
      assert.match(lines[0] ?? '', /^propsoff: the connection is broken and ends: /);
      assert.match(lines[0] ?? '', why);
    });
  }
});

describe('a frame that holds no message', () => {
  for (const [text, code] of [
    ['{oops', ErrorCodes.ParseError],
    ['', ErrorCodes.ParseError],
    ['7', ErrorCodes.InvalidRequest],
    ['null', ErrorCodes.InvalidRequest],
    ['[]', ErrorCodes.InvalidRequest],
    ['{}', ErrorCodes.InvalidRequest],
    ['{"id":null,"method":"shutdown"}', ErrorCodes.InvalidRequest],
    ['{"method":"$/cancelRequest"}', ErrorCodes.InvalidRequest],
  ] as const) {
    it(`is answered with ${code}, and the next one is read: ${JSON.stringify(text)}`, () =>
      withOwnServer({}, async (server) => {
        server.process.stdin.write(framedText(text));
        await goesOn(server);
        const errors = framesIn(Buffer.concat(server.output)).filter((sent) => sent.includes('"id":null'));
        assert.equal(errors.length, 1);
        assert.match(errors[0] ?? '', new RegExp(`"code":${code}`));
        const told = Buffer.concat(server.errors).toString('utf8');
        assert.match(told, /^propsoff: left aside: .*\n$/);
      }));
  }
});

describe('a start in a way that there is not', () => {
  for (const args of [[], ['--socket=1'], ['--pipe', '/nowhere']]) {
    it(`is told in one line: ${args.join(' ')}`, async () => {
      const child = spawn(process.execPath, [built('server.js'), ...args]);
      let told = '';
      child.stderr.on('data', (chunk: Buffer) => {
        told += chunk.toString('utf8');
      });
      assert.deepEqual(await once(child, 'close'), [2, null]);
      assert.match(told, /^propsoff: .*propsoff server --stdio.*\n$/);
    });
  }
});

describe('a client that reads nothing any more', () => {
  it('ends the server, without a word of a stack', () =>
    withOwnServer({}, async (server) => {
      const { stdin, stdout } = server.process;
      stdin.on('error', () => undefined);
      stdout.destroy();
      for (let version = 1; version < 30; version += 1) {
        const textDocument = { uri, languageId: 'craft-script', version, text: faulty };
        stdin.write(framed({ method: 'textDocument/didOpen', params: { textDocument } }));
      }
      assert.equal(await server.exitCode(), 1);
      assert.doesNotMatch(Buffer.concat(server.errors).toString('utf8'), /\n\s+at /);
    }));
});

describe('capabilities of wrong kinds', () => {
  it('count as none: everything is answered as for a client that can do nothing', async () => {
    const said: unknown = {
      general: { positionEncodings: 7 },
      workspace: { workspaceFolders: 'yes', workspaceEdit: 3, diagnostics: [], didChangeWatchedFiles: null },
      textDocument: {
        hover: { contentFormat: 5 },
        completion: { completionItem: { documentationFormat: 'markdown', snippetSupport: 1 } },
        foldingRange: { rangeLimit: 'none' },
        publishDiagnostics: null,
      },
      experimental: { propsoff: 'all' },
    };
    const capabilities = said as ClientCapabilities;
    const answers = async (by: ClientCapabilities) =>
      withOwnServer({ capabilities: by }, async (server) => {
        await server.open(uri, faulty);
        const at = { textDocument: { uri }, position: { line: 0, character: 3 } };
        const { connection } = server;
        return [
          await connection.sendRequest(HoverRequest.type, at),
          await connection.sendRequest(CompletionRequest.type, at),
          await connection.sendRequest(FoldingRangeRequest.type, at),
          (await server.pushedFor(uri, 1)).diagnostics,
        ];
      });
    assert.deepEqual(await answers(capabilities), await answers({}));
  });
});

describe('our own messages', () => {
  /** Our own messages that a client was sent for a script whose include the editor would have to read. */
  async function sentTo(capabilities: ClientCapabilities): Promise<readonly string[]> {
    const folders = ['shelf://host/work'];
    return withOwnServer({ capabilities, folders }, async (server) => {
      const main = 'shelf://host/work/main.craft';
      await server.open(main, 'include "base.craft"\n');
      await server.pushed(main, ({ diagnostics }) => diagnostics.length > 0);
      // Whether others include a script with a pack is looked for around it.
      await server.open(`${folders[0]}/pack.craft`, '[pack.one]\ncells = 4\n');
      await server.connection.sendRequest(sheetRequest, {
        textDocument: { uri: `${folders[0]}/pack.craft` },
      });
      // What is sent beside findings comes before what is asked for after them.
      await server.connection.sendRequest(summaryRequest, { textDocument: { uri: main } });
      const sent = framesIn(Buffer.concat(server.output)).join('\n');
      return [
        ...new Set([...sent.matchAll(/"method":"(propsoff\/\w+)"/g)].map(([, method]) => method ?? '')),
      ];
    });
  }

  it('go to no client but one that takes them', async () => {
    assert.deepEqual(await sentTo(ableClient), []);
    assert.deepEqual((await sentTo(ownClient)).toSorted(), [
      'propsoff/checked',
      'propsoff/findScripts',
      'propsoff/listFolder',
      'propsoff/readFile',
    ]);
  });
});
