import { strict as assert } from 'node:assert';
import { spawnSync } from 'node:child_process';
import { copyFileSync, cpSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { codeBlocks } from '../support/document';
import { scratchFolder } from '../workbench/launch.mjs';
import { packedForNpm } from './made';

const root = join(__dirname, '../..');

/** All that ships, a name of a part that the bundler makes up with a star in it. */
const expected = [
  'LICENSE',
  'README.md',
  'dist/CHECKS.md',
  'dist/NOTICES.txt',
  'dist/catalog.json',
  'dist/propsoff*.js',
  'dist/server*.js',
  'output.d.ts',
  'package.json',
  'schemas/output/*.schema.json',
];

/** Most that it may weigh: `npx` fetches it before it can answer. */
const mostBytes = 1_500_000;

const slip = '[gyro.filter.1]\ncutof = 180 Hz\n';

describe('the package for npm', () => {
  const folder = scratchFolder('empty');
  const packed = join(folder, 'propsoff-0.1.0.tgz');
  // Nothing answers where packages would be fetched from, and nothing is kept from earlier.
  const nowhere = 'http://127.0.0.1:9/';
  const env = {
    ...process.env,
    NO_COLOR: '1',
    npm_config_registry: nowhere,
    npm_config_proxy: nowhere,
    npm_config_https_proxy: nowhere,
    npm_config_cache: scratchFolder('npm-cache'),
    npm_config_fetch_retries: '0',
  };

  before(async () => copyFileSync(await packedForNpm(), packed));

  /** In a folder that holds nothing but the file, as somebody types it. */
  function npx(args: readonly string[], input = '') {
    const words = ['--yes', './propsoff-0.1.0.tgz', ...args];
    return spawnSync('npx', words, { cwd: folder, env, input, encoding: 'utf8' });
  }

  /** Once it is installed there. */
  function propsoff(args: readonly string[], input = '') {
    const program = join(folder, 'node_modules', '.bin', 'propsoff');
    return spawnSync(program, args, { cwd: folder, env, input, encoding: 'utf8' });
  }

  it('holds what it needs and nothing else, and stays small', () => {
    const { stdout } = spawnSync('tar', ['-tzf', packed], { encoding: 'utf8' });
    const names = stdout
      .trim()
      .split('\n')
      .map((name) => name.replace('package/', ''))
      .map((name) => name.replace(/^(dist\/(propsoff|server))(-.*)?\.js$/, '$1*.js'))
      .map((name) => name.replace(/[\w-]+(?=\.schema)/, '*'));
    assert.deepEqual([...new Set(names)].sort(), expected);
    assert.ok(statSync(packed).size < mostBytes, `${statSync(packed).size} bytes`);
  });

  it('runs from the packed file in an empty folder, without a network: a file, and a pipe', () => {
    writeFileSync(join(folder, 'my.craft'), slip);
    const found = npx(['check', 'my.craft']);
    assert.equal(found.status, 1, found.stderr);
    assert.match(found.stdout, /^my\.craft:2:1 must-fix line\/unknown-name /m);
    assert.match(npx(['check', '-'], slip).stdout, /^-:2:1 must-fix/m);
  });

  it('is installed without a network, and does there what it does here: help, exit codes, the server', () => {
    const install = spawnSync('npm', ['install', '--silent', packed], { cwd: folder, env, encoding: 'utf8' });
    assert.equal(install.status, 0, install.stderr);
    cpSync(join(root, 'test/demo'), folder, { recursive: true });
    assert.match(propsoff(['--help']).stdout, /propsoff <command>/);
    const demo = propsoff(['check', 'sandmartin.craft', 'boards']);
    assert.equal(demo.status, 0, `${demo.stdout}${demo.stderr}`);
    assert.equal(propsoff(['check', 'there-is-none.craft']).status, 2);
    assert.match(propsoff(['explain', 'wire/port-shared']).stdout, /port/);
    const exit = '{"jsonrpc":"2.0","method":"exit"}';
    const served = propsoff(['server', '--stdio'], `Content-Length: ${exit.length}\r\n\r\n${exit}`);
    // The protocol: an exit that was not asked for before is a failure, and nothing is said.
    assert.deepEqual([served.status, served.stderr], [1, '']);
  });

  it('has types of what is printed as JSON, which take what is printed and refuse what is not', () => {
    const printed = (command: readonly string[]) =>
      propsoff([...command, '--json', 'sandmartin.craft']).stdout;
    const [readme] = codeBlocks('server/build/package/npm-readme.md').filter(
      ({ language }) => language === 'ts',
    );
    assert.ok(readme);
    const file = (name: string, text: string) => writeFileSync(join(folder, name), text);
    const typed = (name: string, command: readonly string[]) =>
      `import type { ${name} } from 'propsoff';\nexport const printed: ${name} = ${printed(command)};\n`;
    file('readme.ts', readme.text);
    file('check.ts', typed('CheckOutput', ['check']));
    file('sheet.ts', typed('SheetOutput', ['sheet']));
    file('card.ts', typed('BenchCardOutput', ['bench-card']));
    const options = ['--noEmit', '--strict', '--exactOptionalPropertyTypes', '--module', 'node16'];
    const tsc = (...files: readonly string[]) =>
      spawnSync(process.execPath, [join(root, 'node_modules/typescript/bin/tsc'), ...options, ...files], {
        cwd: folder,
        encoding: 'utf8',
      });
    const taken = tsc('readme.ts', 'check.ts', 'sheet.ts', 'card.ts');
    assert.equal(taken.status, 0, taken.stdout);
    file('wrong.ts', readFileSync(join(folder, 'readme.ts'), 'utf8').replace('must-fix', 'most-fix'));
    assert.match(tsc('wrong.ts').stdout, /most-fix/);
  });
});
