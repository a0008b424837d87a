// Loaded into a process before our program: names every way out that it takes, on standard error, and bars it.
// `reached:` is what the test looks for.
const guarded = [
  ['node:net', ['connect', 'createConnection', 'createServer']],
  ['node:http', ['request', 'get', 'createServer']],
  ['node:https', ['request', 'get', 'createServer']],
  ['node:http2', ['connect', 'createServer']],
  ['node:tls', ['connect', 'createServer']],
  ['node:dgram', ['createSocket']],
  ['node:dns', ['lookup', 'resolve', 'resolve4', 'resolve6']],
  ['node:child_process', ['spawn', 'exec', 'execFile', 'fork', 'spawnSync', 'execSync', 'execFileSync']],
  ['node:vm', ['runInThisContext', 'runInNewContext', 'runInContext', 'compileFunction']],
  ['node:worker_threads', ['Worker']],
  ['node:inspector', ['open']],
];

function barred(name) {
  return function reached() {
    process.stderr.write(`reached: ${name}\n`);
    throw new Error(`${name} is barred`);
  };
}

for (const [module, names] of guarded) {
  const loaded = require(module);
  for (const name of names) loaded[name] = barred(`${module} ${name}`);
}
const { Socket, Server } = require('node:net');
Socket.prototype.connect = barred('a socket');
Server.prototype.listen = barred('a listener');
globalThis.fetch = barred('fetch');
globalThis.WebSocket = barred('WebSocket');
// Text that becomes a program: `eval` and `new Function` both come to this constructor or this name.
globalThis.eval = barred('eval');
globalThis.Function = new Proxy(Function, { apply: barred('Function'), construct: barred('Function') });
// Files are read; nothing is ever written, moved or taken away.
const files = require('node:fs');
for (const name of ['writeFile', 'appendFile', 'rm', 'unlink', 'rename', 'mkdir', 'symlink', 'copyFile']) {
  files[name] = barred(`fs ${name}`);
  files[`${name}Sync`] = barred(`fs ${name}Sync`);
  files.promises[name] = barred(`fs/promises ${name}`);
}
process.stderr.write('the watchman stands\n');
