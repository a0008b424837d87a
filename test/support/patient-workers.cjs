// A worker of mocha's writes down as it ends which code was run through. On a busy machine that takes longer than the
// second after which its pool kills it, and the recording would be lost without a word.
const { createRequire } = require('node:module');

const workerpool = createRequire(require.resolve('mocha'))('workerpool');

const longest = 120_000;
const { pool } = workerpool;
workerpool.pool = (script, options) => pool(script, { ...options, workerTerminateTimeout: longest });
