import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { HoverRequest, SetTraceNotification } from 'vscode-languageserver-protocol/node';
import { built } from '../support/built';
import { framed, framesIn } from '../support/frames';
import { withScratch } from '../support/scratch';
import { withOwnServer } from '../support/server';

const uri = 'file:///cfg/base.craft';

/** Loaded into the server's process before it: what talkative libraries do, at once and while it works. */
const noise = `
const talk = () => {
  console.log('a log line'); console.info('an info line'); console.debug('a debug line');
  console.warn('a warning'); console.error('an error'); console.trace('a trace');
  console.dir({ a: 1 }); console.table([{ a: 1 }]); console.count(); console.group('a group');
  console.time('t'); console.timeEnd('t'); console.timeLog('t');
  process.emitWarning('an old way', 'DeprecationWarning');
  new Buffer(1);
};
process.nextTick(() => setImmediate(talk));
process.stdin.on('data', talk);
`;

describe('what comes out of standard output', () => {
  it('is frames of the protocol and nothing else, however much is logged (I04)', () =>
    withScratch({ 'noise.cjs': noise }, (scratch) =>
      withOwnServer(
        {
          params: { trace: 'verbose' },
          nodeArguments: ['--require', scratch.file('noise.cjs'), '--trace-warnings'],
        },
        async (server) => {
          await server.connection.sendNotification(SetTraceNotification.type, { value: 'verbose' });
          await server.open(uri, 'craft.name = "\u{1f6e0}é\u{1f6e0}"\n');
          await server.pushedFor(uri, 1);
          const position = { line: 0, character: 3 };
          const hover = await server.connection.sendRequest(HoverRequest.type, {
            textDocument: { uri },
            position,
          });
          assert.match(JSON.stringify(hover), /\u{1f6e0}é\u{1f6e0}/u, 'the answer holds the astral text');
          await server.shutDown();
          const messages = framesIn(Buffer.concat(server.output));
          assert.ok(messages.length >= 4);
          for (const message of messages) {
            assert.equal((JSON.parse(message) as { jsonrpc: string }).jsonrpc, '2.0');
          }
          const logged = Buffer.concat(server.errors).toString('utf8');
          for (const said of ['a log line', 'a debug line', 'an old way', '{ a: 1 }', '│', 'a group'])
            assert.ok(logged.includes(said), said);
        },
      ),
    ));
});

describe('what comes in together with the end of the input', () => {
  /** The ids of what a server answers that gets all its input at once, and its exit code. */
  function answered(...messages: readonly object[]): {
    readonly ids: readonly unknown[];
    readonly code: unknown;
  } {
    const input = messages.map(framed).join('');
    const { stdout, status } = spawnSync(process.execPath, [built('server.js'), '--stdio'], { input });
    const answers = framesIn(stdout).map((text) => JSON.parse(text) as { id?: unknown; result?: unknown });
    return { ids: answers.filter((answer) => 'result' in answer).map(({ id }) => id), code: status };
  }
  const initialize = {
    id: 1,
    method: 'initialize',
    params: { processId: null, rootUri: null, capabilities: {} },
  };
  const started = { method: 'initialized', params: {} };
  const textDocument = { uri, languageId: 'craft', version: 1, text: 'craft.mass = 200 g\n' };
  const opened = { method: 'textDocument/didOpen', params: { textDocument } };
  const hover = (id: number) => ({
    id,
    method: 'textDocument/hover',
    params: { textDocument: { uri }, position: { line: 0, character: 8 } },
  });

  it('is answered before the server ends', () => {
    const { ids, code } = answered(initialize, started, opened, hover(2), hover(3));
    assert.deepEqual(ids, [1, 2, 3]);
    assert.equal(code, 1);
  });

  it('is answered up to a shutdown', () => {
    const { ids, code } = answered(initialize, started, opened, hover(2), { id: 3, method: 'shutdown' });
    assert.deepEqual(ids, [1, 2, 3]);
    assert.equal(code, 0);
  });
});
