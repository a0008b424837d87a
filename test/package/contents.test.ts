import { strict as assert } from 'node:assert';
import { spawnSync } from 'node:child_process';
import { readFileSync, statSync } from 'node:fs';
import { dirname, join, posix } from 'node:path';
import { contentsOf, packedExtension } from './made';

const root = join(__dirname, '../..');

/** All that ships. What is new in the package is added here on purpose, or not at all. */
const expected = [
  '[Content_Types].xml',
  'extension.vsixmanifest',
  'extension/LICENSE.txt',
  'extension/changelog.md',
  'extension/client/l10n/bundle.l10n.de.json',
  'extension/client/media/craft-dark.svg',
  'extension/client/media/craft-light.svg',
  'extension/client/media/icon.png',
  'extension/client/media/propsoff.svg',
  'extension/client/media/walkthrough/card.svg',
  'extension/client/media/walkthrough/copy.svg',
  'extension/client/media/walkthrough/hover.svg',
  'extension/client/media/walkthrough/make.svg',
  'extension/client/media/walkthrough/mend.svg',
  'extension/client/media/walkthrough/sheet.svg',
  'extension/client/starters/first-craft.craft',
  'extension/client/starters/freestyle.craft',
  'extension/client/starters/hall-craft.craft',
  'extension/client/starters/long-flight.craft',
  'extension/client/starters/racer.craft',
  'extension/dist/NOTICES.txt',
  'extension/dist/card.css',
  'extension/dist/card.js',
  'extension/dist/catalog.json',
  'extension/dist/compare.css',
  'extension/dist/compare.js',
  'extension/dist/extension.js',
  'extension/dist/find.css',
  'extension/dist/find.js',
  'extension/dist/learn.css',
  'extension/dist/learn.js',
  'extension/dist/recording.css',
  'extension/dist/recording.js',
  'extension/dist/server-about-recordings-*.js',
  'extension/dist/server-additions-*.js',
  'extension/dist/server-board-answers.js',
  'extension/dist/server-board-profiles-*.js',
  'extension/dist/server-board-reading.js',
  'extension/dist/server-chunk-*.js',
  'extension/dist/server-flight-weighed-*.js',
  'extension/dist/server-language-features-*.js',
  'extension/dist/server-on-demand-*.js',
  'extension/dist/server-read-beside-*.js',
  'extension/dist/server-read-choices-*.js',
  'extension/dist/server-yaml.js',
  'extension/dist/server.js',
  'extension/dist/sheet.css',
  'extension/dist/sheet.js',
  'extension/dist/web/extension.js',
  'extension/dist/web/server.js',
  'extension/package.json',
  'extension/package.nls.de.json',
  'extension/package.nls.json',
  'extension/readme.md',
  'extension/schemas/addition.schema.json',
  'extension/schemas/board.schema.json',
  'extension/schemas/choices.schema.json',
  'extension/schemas/kept-beside.schema.json',
  'extension/schemas/recording-layout.schema.json',
  'extension/syntaxes/craft-script.tmLanguage.json',
  'extension/syntaxes/language-configuration.json',
];

/** Most that a package may weigh: it is fetched over any line, and unpacked at every update. */
const mostBytes = 1_750_000;

interface Manifest {
  readonly name: string;
  readonly description: string;
  readonly icon: string;
  readonly categories: readonly string[];
  readonly keywords: readonly string[];
  readonly engines: Readonly<Record<string, string>>;
  readonly [field: string]: unknown;
}

/** Of what `check --json` prints: where the findings stand. */
interface CheckedFiles {
  readonly files: readonly {
    readonly findings: readonly { readonly range: { readonly start: { readonly line: number } } }[];
  }[];
}

function versionOf(name: string): string {
  const text = readFileSync(join(root, 'node_modules', name, 'package.json'), 'utf8');
  return (JSON.parse(text) as { readonly version: string }).version;
}

describe('the packed extension', () => {
  let path = '';
  let contents: ReadonlyMap<string, string> = new Map();
  let manifest: Manifest;

  before(async () => {
    path = await packedExtension();
    contents = contentsOf(path);
    manifest = JSON.parse(contents.get('extension/package.json') ?? '') as Manifest;
  });

  it('holds what it needs and nothing else', () => {
    // The bundler ends the names of the server's parts with a sign of what they hold, and cuts what they share as it likes.
    const names = [...contents.keys()].map((name) => name.replace(/-[A-Z0-9]{8}\.js$/, '-*.js'));
    assert.deepEqual([...new Set(names)].sort(), expected);
  });

  it('stays small', () => {
    assert.ok(statSync(path).size < mostBytes, `${statSync(path).size} bytes`);
  });

  it('has a manifest for a gallery: no scripts or development, and an icon', () => {
    for (const field of ['scripts', 'devDependencies', 'dependencies', 'private', 'bin']) {
      assert.equal(manifest[field], undefined, field);
    }
    assert.deepEqual(Object.keys(manifest.engines), ['vscode']);
    assert.ok(contents.has(`extension/${manifest.icon}`));
    assert.ok(manifest.categories.length > 0 && manifest.keywords.length > 0);
    assert.ok(manifest.description.length < 145, 'a gallery cuts longer descriptions off');
  });

  it('says nothing about the place where it was built', () => {
    for (const [name, text] of contents) assert.ok(!text.includes(root), name);
  });

  it('shows texts that lead nowhere outside the package', () => {
    const texts = [...contents].filter(([name]) => name.endsWith('.md'));
    assert.ok(texts.length >= 2);
    for (const [name, text] of texts) {
      for (const [, target = ''] of text.matchAll(/\]\(([^)#]+)\)/g)) {
        const there = /^[a-z]+:/.test(target) || contents.has(posix.join(dirname(name), target));
        assert.ok(there, `${name} leads to ${target}, which does not ship`);
      }
    }
  });

  it('shows a craft script in which every line is well', () => {
    const [, script = ''] = /```craft\n([\s\S]*?)```/.exec(contents.get('extension/readme.md') ?? '') ?? [];
    const args = [join(root, 'dist', 'propsoff.js'), 'check', '--json', '-'];
    const { stdout } = spawnSync(process.execPath, args, { input: script, encoding: 'utf8' });
    const { files } = JSON.parse(stdout) as CheckedFiles;
    const lines = files.flatMap(({ findings }) => findings.map(({ range }) => range.start.line));
    // A part of a craft lacks a good deal, which is told at its first section.
    assert.deepEqual([...new Set(lines)], [0]);
  });

  it('carries the licence of every package that is bundled, and of no other', () => {
    const notices = contents.get('extension/dist/NOTICES.txt') ?? '';
    const heads = [...notices.matchAll(/^-{78}\n\n(\S+) (\S+) \((.+)\)$/gm)];
    for (const [, name = '', version] of heads) assert.equal(version, versionOf(name), name);
    const names = heads.map(([, name]) => name);
    for (const name of ['vscode-languageclient', 'vscode-languageserver', 'zod', 'd3-shape', 'vscode-uri']) {
      assert.ok(names.includes(name), name);
    }
    for (const name of ['typescript', 'mocha', 'esbuild']) assert.ok(!names.includes(name), name);
    assert.match(notices, /Permission is hereby granted, free of charge/);
  });
});
