import { strict as assert } from 'node:assert';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { documents } from '../support/document';

const root = join(__dirname, '../..');
const textOf = (document: string) => readFileSync(join(root, document), 'utf8');
const withoutCode = (text: string) => text.replace(/^```[\s\S]*?^```$/gm, '');

/** Where the links and pictures of a text lead, in Markdown and in HTML. */
function targetsIn(text: string): readonly string[] {
  const plain = withoutCode(text).replace(/`[^`\n]*`/g, '');
  return [
    ...plain.matchAll(/\]\(([^()\s]+)\)/g),
    ...plain.matchAll(/\b(?:src|srcset|href)="([^"\s]+)"/g),
  ].map(([, target = '']) => target);
}

/** The place in a page that a heading can be reached by. */
function anchorsIn(text: string): readonly string[] {
  return [...withoutCode(text).matchAll(/^#+ (.+)$/gm)].map(([, heading = '']) =>
    heading
      .toLowerCase()
      .replace(/[^\p{L}\p{N}\s-]/gu, '')
      .replaceAll(' ', '-'),
  );
}

/** What is wrong with a link of a document; null where nothing is. */
function linkFault(document: string, target: string): string | null {
  if (/^[a-z]+:/.test(target)) return null;
  const [path = '', anchor] = target.split('#');
  const file = path === '' ? document : join(dirname(document), path);
  if (!existsSync(join(root, file))) return `${target} is not there`;
  return anchor === undefined || anchorsIn(textOf(file)).includes(anchor)
    ? null
    : `${target}: no such heading`;
}

/** Files that a text names in passing, such as `checks/checker.ts`. */
function filesNamedIn(text: string): readonly string[] {
  return [...withoutCode(text).matchAll(/`((?:[\w-]+\/)+[\w.-]*)`/g)]
    .map(([, path = '']) => path)
    .filter((path) => path.endsWith('/') || /\.(ts|mjs|json|jsonc|md)$/.test(path));
}

describe('the documents', () => {
  it('are few enough lines to be read', () => {
    const lines = (document: string) => textOf(document).trimEnd().split('\n').length;
    assert.ok(lines('README.md') <= 150, `README.md has ${lines('README.md')} lines`);
    assert.ok(lines('DEVELOPERS.md') <= 200, `DEVELOPERS.md has ${lines('DEVELOPERS.md')} lines`);
  });

  it('are all that the project has', () => {
    const skipped = /(^|\/)(node_modules|dist|\.[\w-]+)(\/|$)/;
    const found = readdirSync(root, { withFileTypes: true })
      .flatMap((entry) => {
        if (skipped.test(entry.name)) return [];
        if (!entry.isDirectory()) return [entry.name];
        const inside = readdirSync(join(root, entry.name), { recursive: true, encoding: 'utf8' });
        return inside.map((name) => `${entry.name}/${name.replaceAll('\\', '/')}`);
      })
      .filter((path) => path.endsWith('.md') && !skipped.test(path));
    assert.deepEqual([...found].sort(), [...documents].sort());
  });

  for (const document of documents) {
    it(`${document} links to what is there`, () => {
      const faults = targetsIn(textOf(document)).flatMap((target) => linkFault(document, target) ?? []);
      assert.deepEqual(faults, []);
    });
  }

  it('for contributors name files that are there', () => {
    const about = documents.filter((document) => /^(DEVELOPERS|server|test)/.test(document));
    const places = ['', 'server/src', 'server/src/lsp', 'test', 'test/unit', 'test/protocol'];
    const made = /^(dist|node_modules|experimental|boards)\/|\.d\//;
    const missing = about.flatMap((document) =>
      filesNamedIn(textOf(document))
        .filter((path) => !made.test(path))
        .filter((path) => !places.some((place) => existsSync(join(root, place, path))))
        .map((path) => `${document}: ${path}`),
    );
    assert.deepEqual(missing, []);
  });
});
