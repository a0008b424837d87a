import { strict as assert } from 'node:assert';
import { readdirSync, readFileSync } from 'node:fs';
import { join, normalize, relative, sep } from 'node:path';

const root = join(__dirname, '../..');

/**
 * Every room with the rooms that it may import. Imports run downwards only; imports of types count like any
 * other. A room may always import itself. What is not in the table is not allowed.
 */
const allowed: Readonly<Record<string, readonly string[]>> = {
  // A small database that knows nothing of what it keeps.
  query: [],
  units: [],
  physics: ['units'],
  language: ['units'],
  catalog: ['units', 'language'],
  craft: ['query', 'units', 'language', 'catalog'],
  board: ['units', 'language', 'catalog', 'craft', 'physics'],
  figures: ['query', 'units', 'language', 'catalog', 'craft', 'physics'],
  recording: ['units', 'language', 'catalog', 'craft', 'physics', 'figures'],
  checks: ['query', 'units', 'language', 'catalog', 'craft', 'physics', 'figures', 'board'],
  additions: ['units', 'language', 'catalog', 'craft', 'board', 'figures', 'checks'],
  // The build sheet lists what the checks found.
  sheet: ['units', 'language', 'catalog', 'craft', 'physics', 'figures', 'recording', 'board', 'checks'],
  workspace: ['units', 'language', 'catalog', 'craft', 'recording', 'checks', 'board', 'additions'],
  'file-system': ['workspace'],
  // A hover shows a figure in the words of the build sheet.
  features: [
    'query',
    'units',
    'language',
    'catalog',
    'craft',
    'figures',
    'recording',
    'checks',
    'board',
    'workspace',
    'sheet',
  ],
  lsp: [
    'language',
    'catalog',
    'additions',
    'craft',
    'recording',
    'checks',
    'board',
    'sheet',
    'workspace',
    'file-system',
    'features',
  ],
  cli: [
    'units',
    'language',
    'catalog',
    'additions',
    'craft',
    'recording',
    'checks',
    'board',
    'sheet',
    'workspace',
    'file-system',
    'features',
  ],
  // The data that ships is held to the same checks as that of a workspace.
  build: ['units', 'physics', 'language', 'catalog', 'craft', 'board', 'checks', 'features'],
  // The editor's side sees messages and plain data only, down to the file; it writes numbers and words, and looks for files, as the engine does.
  client: [
    'lsp/protocol',
    'lsp/board-protocol',
    'lsp/files-protocol',
    'lsp/flight-protocol',
    'lsp/learn-protocol',
    'lsp/recording-protocol',
    'lsp/values-protocol',
    'workspace/path-patterns',
    'lsp/own-message',
    'sheet',
    'units/number-text',
    'units/capitals',
  ],
};

/** Packages that only some rooms may import, with everything below them. */
const packages: readonly (readonly [name: RegExp, rooms: readonly string[]])[] = [
  [/^vscode$/, ['client']],
  [/^vscode-languageclient(\/|$)/, ['client']],
  [/^vscode-languageserver(\/|$)/, ['lsp']],
  [/^vscode-jsonrpc(\/|$)/, ['client']],
  [/^vscode-languageserver-protocol(\/|$)/, ['lsp']],
  [/^node:/, ['file-system', 'lsp', 'cli', 'build', 'client']],
  [/^esbuild$/, ['build']],
  [/^zod$/, ['catalog', 'additions', 'build']],
  [/^jsonc-parser$/, ['additions', 'board']],
  [/^yaml$/, ['board']],
  [/^fft\.js$/, ['physics']],
];

interface Import {
  readonly from: string;
  readonly room: string;
  readonly name: string;
}

function filesUnder(folder: string): readonly string[] {
  return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.m?ts$/.test(file))
    .map((file) => join(folder, file).split(sep).join('/'));
}

/** `units` of `server/src/units/unit.ts`. */
function roomOf(file: string): string {
  return /^server\/src\/([^/]+)\//.exec(file)?.[1] ?? (file.startsWith('client/') ? 'client' : 'build');
}

const importPattern =
  /^\s*(?:import|export)\b[^;'"`]*?\bfrom\s+'([^']+)'|^\s*import\s+'([^']+)'|\bimport\(\s*'([^']+)'|\brequire\(\s*'([^']+)'/gm;

function importsIn(text: string): readonly string[] {
  const plain = text.replace(/\/\*[\s\S]*?\*\//g, '');
  return [...plain.matchAll(importPattern)].map(
    (match) => match.slice(1).find((part) => part !== undefined) ?? '',
  );
}

const files = [...filesUnder('server/src'), ...filesUnder('server/build'), ...filesUnder('client')];
const imports: readonly Import[] = files.flatMap((from) =>
  importsIn(readFileSync(join(root, from), 'utf8')).map((name) => ({ from, room: roomOf(from), name })),
);

/** The file that a relative import names, without its ending; null for a package. */
function target({ from, name }: Import): string | null {
  if (!name.startsWith('.')) return null;
  const path = normalize(join(root, from, '..', name));
  return relative(root, path).split(sep).join('/');
}

function isAllowed(one: Import): boolean {
  const path = target(one);
  if (path === null)
    return packages.every(([name, rooms]) => !name.test(one.name) || rooms.includes(one.room));
  if (!path.startsWith('server/')) return roomOf(path) === one.room;
  const room = roomOf(path);
  return (
    room === one.room || (allowed[one.room] ?? []).some((may) => may === room || path === `server/src/${may}`)
  );
}

/** What a file exports by its own name. */
function exportsIn(text: string): readonly string[] {
  const pattern =
    /^export (?:default )?(?:abstract )?(?:async )?(?:class|interface|type|enum|const|let|function\*?) (\w+)/gm;
  return [...text.matchAll(pattern)].map(([, name = '']) => name);
}

/** The types of a file, also those that it keeps to itself: a search for a name should find one thing. */
function typesIn(text: string): readonly string[] {
  const pattern = /^(?:export )?(?:abstract )?(?:class|interface|type|enum) (\w+)/gm;
  return [...text.matchAll(pattern)].map(([, name = '']) => name);
}

/** Names that more than one file has, with the files. */
function sharedNames(
  texts: ReadonlyMap<string, string>,
  namesIn: (text: string) => readonly string[],
): readonly string[] {
  const places = new Map<string, string[]>();
  for (const [file, text] of texts)
    for (const name of new Set(namesIn(text))) places.set(name, [...(places.get(name) ?? []), file]);
  return [...places].flatMap(([name, at]) => (at.length < 2 ? [] : [`${name}: ${at.join(', ')}`]));
}

/** Groups of files each of which leads to every other of its group. */
function circles(all: readonly string[], among: readonly Import[]): readonly (readonly string[])[] {
  const next = new Map(all.map((file): [string, string[]] => [file, []]));
  for (const one of among) {
    const path = target(one);
    const file = [`${path}.ts`, `${path}/index.ts`].find((name) => next.has(name));
    if (file !== undefined) next.get(one.from)?.push(file);
  }
  const led = new Map(all.map((file) => [file, reached(file, next)]));
  const groups = all.map((file) =>
    [...(led.get(file) ?? [])].filter((other) => led.get(other)?.has(file)).sort(),
  );
  return [...new Map(groups.map((group) => [group.join(), group])).values()].filter(
    ({ length }) => length > 0,
  );
}

/** Every file that a file leads to; itself only where it comes back to it. */
function reached(from: string, next: ReadonlyMap<string, readonly string[]>): ReadonlySet<string> {
  const seen = new Set<string>();
  const waiting = [...(next.get(from) ?? [])];
  for (let file = waiting.pop(); file !== undefined; file = waiting.pop()) {
    if (seen.has(file)) continue;
    seen.add(file);
    waiting.push(...(next.get(file) ?? []));
  }
  return seen;
}

describe('the rooms of the house', () => {
  it('import only what lies below them', () => {
    const wrong = imports.filter((one) => !isAllowed(one)).map(({ from, name }) => `${from} imports ${name}`);
    assert.deepEqual(wrong, []);
  });

  it('are all in the table', () => {
    const rooms = readdirSync(join(root, 'server/src'), { withFileTypes: true })
      .filter((entry) => entry.isDirectory())
      .map(({ name }) => name);
    assert.deepEqual(
      rooms.filter((room) => !(room in allowed)),
      [],
    );
  });

  it('have an order: nothing that a room may import may import the room', () => {
    const below = (room: string, seen: ReadonlySet<string> = new Set()): readonly string[] =>
      (allowed[room] ?? []).flatMap((next) => {
        assert.ok(!seen.has(next), `${room} leads back to ${next}`);
        return [next, ...below(next, new Set([...seen, next]))];
      });
    for (const room of Object.keys(allowed)) assert.ok(!below(room, new Set([room])).includes(room), room);
  });

  it('hold no files that import each other in a circle', () => {
    assert.deepEqual(circles(files, imports), []);
    const file = (name: string) => `server/src/units/${name}.ts`;
    const one = (from: string, name: string) => ({ from: file(from), room: 'units', name: `./${name}` });
    const found = circles(['a', 'b', 'c', 'd'].map(file), [
      one('a', 'b'),
      one('b', 'c'),
      one('c', 'b'),
      one('d', 'a'),
    ]);
    assert.deepEqual(found, [['b', 'c'].map(file)]);
  });

  it('call no two things by one name', () => {
    const textsOf = (some: readonly string[]) =>
      new Map(some.map((file) => [file, readFileSync(join(root, file), 'utf8')]));
    assert.deepEqual(
      sharedNames(textsOf(files.filter((file) => file.startsWith('server/src/'))), exportsIn),
      [],
    );
    // The page without an install has what the editor would have, under the editor's names.
    const ours = files.filter((file) => !file.startsWith('client/one-page/host/'));
    assert.deepEqual(sharedNames(textsOf(ours), typesIn), []);
    const twice = new Map([
      ['a.ts', 'export interface Place {\n}\nexport function read() {}\nfunction own() {}\ntype Own = 1;\n'],
      ['b.ts', 'export type Place = 1;\nexport async function write() {}\nfunction own() {}\n'],
      [
        'c.ts',
        "export abstract class Reader {}\nexport const read = 1;\nexport { write } from './b';\ninterface Own {\n}\n",
      ],
    ]);
    assert.deepEqual(sharedNames(twice, exportsIn), ['Place: a.ts, b.ts', 'read: a.ts, c.ts']);
    assert.deepEqual(sharedNames(twice, typesIn), ['Place: a.ts, b.ts', 'Own: a.ts, c.ts']);
  });

  it('keep what is pure free of clocks, chance and the process', () => {
    const pure = [
      'units',
      'physics',
      'language',
      'catalog',
      'board',
      'craft',
      'figures',
      'recording',
      'checks',
      'additions',
      'sheet',
      'features',
    ];
    const impure =
      /\bDate\.now\(|\bnew Date\(\)|\bMath\.random\(|\bprocess\.|\bset(?:Timeout|Interval|Immediate)\(|\bfetch\(/;
    const wrong = files.filter(
      (file) =>
        pure.includes(roomOf(file)) &&
        impure.test(readFileSync(join(root, file), 'utf8').replace(/\/\/.*$/gm, '')),
    );
    assert.deepEqual(wrong, []);
  });

  it('are looked through whole: every way of importing is seen', () => {
    const text = [
      "import { a } from './a';",
      "import type { B } from '../b/b';",
      "import {\n  c,\n  type D,\n} from '../c';",
      "import * as e from 'e';",
      "import './f';",
      "export { g } from './g';",
      "export * from './h';",
      "const i = await import('./i');",
      "const j = require('./j');",
      "/* import { k } from './k'; */",
      'const text = "from \'l\'";',
    ].join('\n');
    assert.deepEqual(importsIn(text), ['./a', '../b/b', '../c', 'e', './f', './g', './h', './i', './j']);
    assert.ok(imports.length > 300, `${imports.length} imports were found`);
  });

  it('refuse what is not in the table', () => {
    const one = (from: string, name: string) => isAllowed({ from, room: roomOf(from), name });
    assert.equal(one('server/src/units/a.ts', '../language/ast'), false);
    assert.equal(one('server/src/physics/a.ts', '../craft/craft'), false);
    assert.equal(one('server/src/craft/a.ts', 'node:fs'), false);
    assert.equal(one('server/src/features/a.ts', 'vscode-languageserver'), false);
    assert.equal(one('server/src/file-system/a.ts', '../craft/craft'), false);
    assert.equal(one('client/src/a.ts', '../../server/src/lsp/server'), false);
    assert.equal(one('client/src/a.ts', '../../server/src/lsp/protocol'), true);
    assert.equal(one('server/src/lsp/a.ts', '../features/hover'), true);
  });
});
