import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, relative } from 'node:path';

const root = join(__dirname, '../../..');

/** Folders in which others' files lie, or made ones, and the lists themselves. */
const leftOut = new Set(['node_modules', 'dist', '.git', '.vscode-test', 'reviewed']);

const textual = /\.(?:ts|mjs|cjs|json|jsonc|craft|md|svg|css|html|txt|el|lua)$/;

function textFiles(folder: string): readonly string[] {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    if (leftOut.has(name)) return [];
    if (statSync(path).isDirectory()) return textFiles(path);
    return textual.test(name) && name !== 'package-lock.json' ? [path] : [];
  });
}

/** Corners of a square frame as scripts and the boards write them. */
const corner = /\b(front|rear|nose|tail|back)[- ](left|right)\b(?![- ](?:upper|lower|above|below))/gi;

/** Corners that stand further apart than this belong to no list. */
const farthest = 80;

const otherWords: Readonly<Record<string, string>> = { nose: 'front', tail: 'rear', back: 'rear' };

/**
 * Every order in which the four corners stand in a text of this repository, with the files in which it does:
 * lists, listings of boards and sentences alike.
 */
export function motorOrders(): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, string[]>();
  for (const path of textFiles(root)) {
    for (const order of ordersIn(readFileSync(path, 'utf8'))) {
      found.set(order, [...(found.get(order) ?? []), relative(root, path)]);
    }
  }
  return found;
}

export function ordersIn(text: string): readonly string[] {
  const orders: string[] = [];
  let taken: string[] = [];
  let last = 0;
  for (const match of text.matchAll(corner)) {
    const [end = '', side = ''] = match.slice(1).map((word) => word.toLowerCase());
    const place = `${otherWords[end] ?? end}-${side}`;
    if (match.index - last > farthest) taken = [];
    last = match.index + match[0].length;
    if (taken.at(-1) === place) continue;
    taken = [...taken.filter((one) => one !== place), place];
    if (taken.length === 4) {
      orders.push(taken.join(' '));
      taken = [];
    }
  }
  return [...new Set(orders)];
}

/** Every setting and constant of the demo, the starters and the documents' examples, each once. */
export function scriptLines(): readonly string[] {
  const scripts = ['test/demo', 'client/starters'].flatMap((folder) =>
    readdirSync(join(root, folder))
      .filter((name) => name.endsWith('.craft'))
      .map((name) => readFileSync(join(root, folder, name), 'utf8')),
  );
  const examples = ['README.md', 'DEVELOPERS.md'].flatMap((name) =>
    [...readFileSync(join(root, name), 'utf8').matchAll(/```craft\n(.*?)```/gs)].map(
      ([, code]) => code ?? '',
    ),
  );
  return [...new Set([...scripts, ...examples].flatMap(settingsIn))].sort();
}

function settingsIn(script: string): readonly string[] {
  let section = '';
  return script.split('\n').flatMap((text) => {
    const bare = text.replace(/\s+#.*$/, '').trim();
    const header = /^\[([^\]@]+)/.exec(bare)?.[1];
    if (header !== undefined) section = `${header.trim()}.`;
    const [, name, value] = /^((?:let )?[\w.-]+)\s*=\s*(.+)$/.exec(bare) ?? [];
    if (name === undefined || value === undefined) return [];
    return [name.startsWith('let ') ? `${name} = ${value}` : `${section}${name} = ${value}`];
  });
}

/** The texts in the drawings of the walkthrough. */
export function drawnLines(): readonly string[] {
  const folder = join(root, 'client/media/walkthrough');
  const drawings = readdirSync(folder).filter((name) => name.endsWith('.svg'));
  const texts = drawings.flatMap((name) =>
    [...readFileSync(join(folder, name), 'utf8').matchAll(/>([^<>\n]+)<\/text>/g)].map(([, text]) => text),
  );
  return [...new Set(texts.map((text) => `drawn: ${(text ?? '').trim()}`))].sort();
}
