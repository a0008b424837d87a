// Loaded into the server's process before it: on a signal it collects garbage and tells, on standard error, what is left.
process.on('SIGUSR2', () => {
  // What is freed by a collection may free more in the next one.
  for (let round = 0; round < 3; round += 1) globalThis.gc();
  const listeners = [process, process.stdin, process.stdout].flatMap((one) =>
    one.eventNames().map((name) => one.listenerCount(name)),
  );
  const left = {
    heap: process.memoryUsage().heapUsed,
    // What runs in the next turn is under way, not left.
    handles: process.getActiveResourcesInfo().filter((kind) => kind !== 'Immediate').length,
    listeners: listeners.reduce((sum, count) => sum + count, 0),
  };
  process.stderr.write(`left: ${JSON.stringify(left)}\n`);
});
