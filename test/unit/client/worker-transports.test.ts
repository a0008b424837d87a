import { strict as assert } from 'node:assert';
// What the messages are read with is told here which machine it runs on.
import 'vscode-jsonrpc/node';
import type { Message } from 'vscode-jsonrpc';
import { type ServerWorker, workerTransports } from '../../../client/src/worker-transports';

const answer = (id: number) => ({ jsonrpc: '2.0', id, result: null });

/** A worker that keeps what it is sent, and says what the test has it say. */
class PretendWorker implements ServerWorker {
  onmessage: ServerWorker['onmessage'] = null;
  onerror: ServerWorker['onerror'] = null;
  readonly received: unknown[] = [];
  isTerminated = false;

  postMessage(message: unknown): void {
    this.received.push(message);
  }

  terminate(): void {
    this.isTerminated = true;
  }

  says(data: unknown): void {
    this.onmessage?.({ data });
  }
}

/** Transports over such a worker, with a clock that the test turns. */
function talking() {
  const worker = new PretendWorker();
  const timers = new Set<{ readonly run: () => void }>();
  const reasons: string[] = [];
  const taken: Message[] = [];
  let closed = 0;
  const { reader, writer } = workerTransports(worker, { appendLine: (text) => reasons.push(text) }, (run) => {
    const timer = { run };
    timers.add(timer);
    return () => timers.delete(timer);
  });
  reader.listen((message) => taken.push(message));
  reader.onClose(() => {
    closed += 1;
  });
  const ask = (id: number) => writer.write({ jsonrpc: '2.0', id, method: 'a/question' } as Message);
  const askForNews = (id: number) =>
    writer.write({ jsonrpc: '2.0', id, method: 'workspace/diagnostic' } as Message);
  const tell = () => writer.write({ jsonrpc: '2.0', method: 'a/notice' } as Message);
  const reply = (id: number) => writer.write(answer(id) as Message);
  const timePasses = () => {
    for (const { run } of [...timers]) run();
  };
  return { worker, timers, reasons, taken, ask, askForNews, tell, reply, timePasses, closed: () => closed };
}

describe('the way to a server in a worker', () => {
  it('lets a question for news wait as long as there are none', async () => {
    const { timers, askForNews, ask, timePasses, closed } = talking();
    await askForNews(1);
    assert.equal(timers.size, 0);
    timePasses();
    assert.equal(closed(), 0);
    await ask(2);
    timePasses();
    assert.equal(closed(), 1);
  });

  it('carries messages both ways', async () => {
    const { worker, taken, ask } = talking();
    await ask(1);
    worker.says(answer(1));
    assert.equal(worker.received.length, 1);
    assert.deepEqual(taken, [answer(1)]);
  });

  it('is closed, once, when the worker fails, and says why', async () => {
    const { worker, reasons, timers, ask, closed } = talking();
    await ask(1);
    worker.onerror?.({ message: 'it broke' });
    worker.onerror?.({ message: 'and again' });
    assert.equal(closed(), 1);
    assert.deepEqual(reasons, ['the server failed: it broke']);
    assert.ok(worker.isTerminated);
    assert.equal(timers.size, 0);
    await ask(2);
    assert.equal(worker.received.length, 1, 'nothing more is sent');
  });

  it('is closed when no word comes back to a question', async () => {
    const { worker, reasons, ask, timePasses, closed } = talking();
    await ask(1);
    timePasses();
    assert.equal(closed(), 1);
    assert.ok(worker.isTerminated);
    assert.deepEqual(reasons, ['the server gave no word for 30 seconds']);
  });

  it('stays open while words come back, though answers take long', async () => {
    const { worker, timers, ask, closed } = talking();
    await ask(1);
    const [before] = timers;
    worker.says({ jsonrpc: '2.0', method: 'a/word' });
    const [after] = timers;
    assert.equal(timers.size, 1);
    assert.notEqual(before, after, 'the time is counted anew');
    worker.says(answer(1));
    assert.equal(timers.size, 0, 'nothing is waited for');
    assert.equal(closed(), 0);
  });

  it('does not take a worker for silent that waits for an answer itself', async () => {
    const { worker, timers, ask, reply } = talking();
    await ask(1);
    worker.says({ jsonrpc: '2.0', id: 7, method: 'a/file' });
    assert.equal(timers.size, 0);
    await ask(2);
    assert.equal(timers.size, 0);
    await reply(7);
    assert.equal(timers.size, 1);
  });

  it('waits for nothing after a notice', async () => {
    const { timers, tell } = talking();
    await tell();
    assert.equal(timers.size, 0);
  });
});
