import { strict as assert } from 'node:assert';
import { execFileSync, execSync, spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { packagesIn } from '../../server/build/release/sbom';
import { scratchFolder } from '../workbench/launch.mjs';
import { packedExtension, packedForNpm } from './made';
import { copyOfSource } from './source';

const root = join(__dirname, '../..');

/** Somebody else's machine, as far as variables can tell. */
const elsewhere = { TZ: 'Pacific/Auckland', LC_ALL: 'et_EE.UTF-8', SOURCE_DATE_EPOCH: '1' };

/** What the README tells to type: the command that makes it all, and the extension that is installed then. */
function toldInReadme(): { readonly command: string; readonly file: string } {
  const readme = readFileSync(join(root, 'README.md'), 'utf8');
  const [, command = ''] = /^(npm run release)\b/m.exec(readme) ?? [];
  const [, file = ''] = /^code --install-extension (\S+)/m.exec(readme) ?? [];
  return { command, file };
}

interface Sbom {
  readonly bomFormat: string;
  readonly specVersion: string;
  readonly metadata: { readonly component: { readonly name: string } };
  readonly components: readonly { readonly name: string; readonly version: string }[];
}

describe('a release', () => {
  const { command, file } = toldInReadme();
  let copy = '';
  let folder = '';
  const inRelease = (name: string) => readFileSync(join(folder, name));

  function git(...args: readonly string[]): void {
    const who = [
      '-c',
      'user.name=Anyone',
      '-c',
      'user.email=anyone@example.org',
      '-c',
      'core.hooksPath=none',
    ];
    execFileSync('git', [...who, ...args], { cwd: copy, stdio: 'pipe' });
  }

  before(() => {
    copy = copyOfSource();
    folder = join(copy, 'dist', 'release');
    git('init', '--quiet');
    git('add', '--all');
    git('commit', '--quiet', '--message', 'A checkout');
  });

  it('is refused where something is in no commit, by its name', () => {
    writeFileSync(join(copy, 'server', 'slip.ts'), '\n');
    const { status, stderr } = spawnSync('npm', ['run', '--silent', 'release'], {
      cwd: copy,
      encoding: 'utf8',
    });
    rmSync(join(copy, 'server', 'slip.ts'));
    assert.equal(status, 1);
    assert.match(
      stderr,
      /^\[propsoff\] a release is made of a commit, and these are not in one: server\/slip\.ts\./,
    );
  });

  it('as the README tells gives the same bytes, in another folder, time zone and language, for another person', async () => {
    const [extension, npm] = [await packedExtension(), await packedForNpm()];
    const usual = process.umask(0o077);
    try {
      execSync(command, { cwd: copy, env: { ...process.env, ...elsewhere }, stdio: 'pipe' });
    } finally {
      process.umask(usual);
    }
    const same = (one: string, other: string) =>
      assert.ok(readFileSync(one).equals(readFileSync(other)), `${one} and ${other} differ`);
    same(extension, join(copy, file));
    same(npm, join(folder, 'propsoff-0.1.0.tgz'));
    // The rest once more, at another moment and in this time zone.
    const again = scratchFolder('again');
    const kept = readdirSync(folder).filter((name) => /\.(vsix|tgz)$/.test(name));
    for (const name of kept) writeFileSync(join(again, name), inRelease(name));
    const tsx = join(root, 'node_modules', 'tsx', 'dist', 'cli.mjs');
    for (const args of [
      ['server/build/one-page.ts', '--unweighed'],
      ['server/build/release/release.ts', again],
    ])
      execFileSync(process.execPath, [tsx, ...args], { cwd: copy, stdio: 'pipe' });
    assert.deepEqual(readdirSync(again), readdirSync(folder));
    for (const name of readdirSync(again)) same(join(again, name), join(folder, name));
  });

  it('is all that is handed out, with sums that hold, and nothing of the place where it was made', () => {
    const names = ['-notices.txt', '-page.zip', '.cdx.json', '.html', '.tgz', '.vsix'];
    assert.deepEqual(readdirSync(folder).sort(), [
      'NOTES.md',
      'SHA256SUMS',
      ...names.map((ending) => `propsoff-0.1.0${ending}`),
    ]);
    const { status, stdout } = spawnSync('sha256sum', ['-c', 'SHA256SUMS'], {
      cwd: folder,
      encoding: 'utf8',
    });
    assert.equal(status, 0, stdout);
    assert.equal(stdout.match(/: OK$/gm)?.length, names.length + 1);
    for (const name of readdirSync(folder)) assert.ok(!inRelease(name).includes(copy), name);
  });

  it('lists every package whose code is inside, and no other', () => {
    const sbom = JSON.parse(inRelease('propsoff-0.1.0.cdx.json').toString('utf8')) as Sbom;
    assert.deepEqual(
      [sbom.bomFormat, sbom.specVersion, sbom.metadata.component.name],
      ['CycloneDX', '1.5', 'propsoff'],
    );
    const listed = sbom.components.map(({ name, version }) => `${name}@${version}`);
    assert.deepEqual(listed.sort(), packagesIn(inRelease('propsoff-0.1.0-notices.txt').toString('utf8')));
    for (const name of ['vscode-languageserver', 'zod', '@codemirror/view', 'yaml', 'chokidar'])
      assert.ok(
        listed.some((one) => one.startsWith(`${name}@`)),
        name,
      );
    for (const name of ['typescript', 'mocha', 'esbuild', 'playwright-core'])
      assert.ok(!listed.some((one) => one.startsWith(`${name}@`)), name);
  });

  it('has the notes of its version, and a page to open', () => {
    const notes = inRelease('NOTES.md').toString('utf8');
    assert.match(notes, /^# Propsoff 0\.1\.0\n/);
    for (const name of readdirSync(folder).filter((one) => one.startsWith('propsoff-')))
      assert.ok(notes.includes(`\`${name}\``), name);
    assert.match(notes, /\n### Added\n/);
    assert.match(inRelease('propsoff-0.1.0.html').toString('utf8'), /^<!doctype html>/);
  });

  it('says which part is missing, and which version has no notes', () => {
    const tsx = join(root, 'node_modules', 'tsx', 'dist', 'cli.mjs');
    const rest = (...args: readonly string[]) =>
      spawnSync(process.execPath, [tsx, 'server/build/release/release.ts', ...args], {
        cwd: copy,
        encoding: 'utf8',
      });
    const empty = join(scratchFolder('release'), 'empty');
    mkdirSync(empty);
    rmSync(join(copy, 'dist', 'page'), { recursive: true });
    assert.match(rest(empty).stderr, /dist\/page\/propsoff\.html is not there: npm run page makes it/);
    const manifest = readFileSync(join(copy, 'package.json'), 'utf8');
    writeFileSync(join(copy, 'package.json'), manifest.replace('"version": "0.1.0"', '"version": "0.2.0"'));
    const { status, stderr } = rest();
    assert.equal(status, 1);
    assert.match(stderr, /^\[propsoff\] CHANGELOG\.md says nothing of 0\.2\.0: give it a section/);
  });
});
