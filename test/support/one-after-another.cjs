// Runs the built command line as often as it is asked to, one run after the other in this process: what was loaded for
// one run serves the next, which then takes a tenth of the time. `command-line.ts` starts it with two pipes.
//
// A run is over when a process of its own would end: when nothing is left to wait for. Then this process itself waits
// for the next question. It is gone after an error that nobody caught, and the test that asked fails.
const { readSync, writeSync } = require('node:fs');
const { Readable, Writable } = require('node:stream');

const [questions, answers] = [3, 4];
const program = process.argv[2];
const home = process.cwd();
const printed = { stdout: [], stderr: [] };

function nextQuestion() {
  const chunks = [];
  const chunk = Buffer.alloc(65_536);
  do {
    const length = readSync(questions, chunk);
    // Nobody is left to ask.
    if (length === 0) process.exit();
    chunks.push(Buffer.from(chunk.subarray(0, length)));
  } while (chunks.at(-1).at(-1) !== 10);
  return JSON.parse(Buffer.concat(chunks).toString());
}

/** A stream of this run alone, in the place of this process's own. */
function replace(name, stream, fd) {
  Object.defineProperty(process, name, { value: Object.assign(stream, { fd }), configurable: true });
}

function keepingIn(chunks) {
  return new Writable({
    write: (chunk, _, done) => {
      chunks.push(chunk);
      done();
    },
  });
}

function runNext() {
  const { args, input, cwd = home, env } = nextQuestion();
  process.chdir(cwd);
  process.env = env;
  process.argv = [process.execPath, program, ...args];
  process.exitCode = undefined;
  replace('stdin', Readable.from([Buffer.from(input)]), 0);
  // They lead to a pipe, for whoever asks.
  replace('stdout', keepingIn(printed.stdout), answers);
  replace('stderr', keepingIn(printed.stderr), answers);
  delete require.cache[program];
  require(program);
}

function answer() {
  const [stdout, stderr] = [printed.stdout, printed.stderr].map((all) => `${Buffer.concat(all.splice(0))}`);
  const bytes = Buffer.from(`${JSON.stringify({ status: process.exitCode ?? 0, stdout, stderr })}\n`);
  for (let at = 0; at < bytes.length; ) at += writeSync(answers, bytes, at);
}

process.on('beforeExit', () => {
  answer();
  // Only what is still to come puts off the end.
  setImmediate(runNext);
});
runNext();
