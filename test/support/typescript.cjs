// Loads TypeScript into tests, compiled as for what ships: functions that are made again and again as a program runs
// are not given their names each time. `tsx`, which runs our other programs, does that, and it took an eighth of the
// tests' time on a processor. What was compiled is kept in a file for each source, whose last line says of which text.
const { createHash } = require('node:crypto');
const { mkdirSync, readFileSync, renameSync, writeFileSync } = require('node:fs');
const { join, relative } = require('node:path');

const root = join(__dirname, '../..');
const kept = join(root, 'node_modules', '.cache', 'tests');
/** What was run through is told in terms of the source, which the map then has to hold. */
const isRecorded = process.env.NODE_V8_COVERAGE !== undefined;
const options = {
  loader: 'ts',
  format: 'cjs',
  target: 'node20',
  minifyWhitespace: true,
  sourcemap: 'inline',
  sourcesContent: isRecorded,
  // What is loaded on demand is required, and so comes through here as well.
  supported: { 'dynamic-import': false },
};
const made = `${JSON.stringify(options)} ${require('esbuild/package.json').version} ${readFileSync(__filename)}`;

const hashOf = (text) => createHash('sha1').update(text).digest('hex');

/** The text of a file, or nothing where there is none. */
function read(path) {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return '';
  }
}

function compiled(path) {
  const source = readFileSync(path, 'utf8');
  const place = join(kept, `${hashOf(`${relative(root, path)} ${isRecorded}`)}.js`);
  const mark = `\n// ${hashOf(`${made}${path}${source}`)}`;
  const before = read(place);
  if (before.endsWith(mark)) return before;
  // Most runs compile nothing: only then it is needed.
  const { transformSync } = require('esbuild');
  const code = transformSync(source, { ...options, sourcefile: path }).code + mark;
  // Two processes may be at it, and neither must read half of it.
  writeFileSync(`${place}.${process.pid}`, code);
  renameSync(`${place}.${process.pid}`, place);
  return code;
}

mkdirSync(kept, { recursive: true });
process.setSourceMapsEnabled(true);
require.extensions['.ts'] = (module, path) => module._compile(compiled(path), path);
