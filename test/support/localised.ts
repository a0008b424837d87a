import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const root = join(__dirname, '../..');

/** Texts by their key. */
export type Texts = Readonly<Record<string, string>>;

export function jsonOf<T>(path: string): T {
  return JSON.parse(readFileSync(join(root, path), 'utf8')) as T;
}

/** The languages that a kind of file is there in: `de` for `package.nls.de.json`. */
export function languagesOf(folder: string, file: RegExp): readonly string[] {
  return readdirSync(join(root, folder)).flatMap((name) => file.exec(name)?.[1] ?? []);
}

/** A call of `t` in the client, or a piece of text that is in none. */
export interface Said {
  readonly file: string;
  /** Null: the first argument is not a plain text, so no bundle can hold it. */
  readonly text: string | null;
}

const folder = 'client/src';
/** Why a file can't be read ends a sentence of the server, which speaks English. */
const forTheServer = new Set(['editor-files.ts', 'file-pieces.ts']);

/** The client's files without comments. */
function sources(): readonly (readonly [file: string, text: string])[] {
  const names = readdirSync(join(root, folder)).filter((name) => !forTheServer.has(name));
  return names.map((name) => {
    const text = readFileSync(join(root, folder, name), 'utf8');
    return [name, text.replace(/^\s*\/\*\*?[\s\S]*?\*\//gm, '').replace(/^\s*\/\/.*$| \/\/ .*$/gm, '')];
  });
}

const call = /(?<![\w.])(?:vscode\.l10n\.)?t\(\s*(?:'((?:[^'\\]|\\.)*)'|"((?:[^"\\]|\\.)*)")?/g;

/** What the client says through the editor's localisation. */
export function saidByClient(): readonly Said[] {
  return sources().flatMap(([file, source]) =>
    [...source.matchAll(call)].map(([, single, double]) => ({ file, text: single ?? double ?? null })),
  );
}

/**
 * Texts in the client's code that read like words for people and go through no localisation: with a space
 * between words, or one word with a capital. Names, patterns, logs and pages in HTML are none.
 */
export function saidInOneLanguage(): readonly Said[] {
  return sources().flatMap(([file, source]) => {
    const rest = source
      .replace(call, 't(')
      .replace(/^import[\s\S]*?;$/gm, '')
      .replace(/^.*\blog\.\w+\(.*$/gm, '')
      .replace(/new (LanguageClient|Error)\((`[^`]*`|[^)]*)/g, '')
      .replace(/`<!doctype[\s\S]*?<\/html>`/g, '')
      .replace(/\$\{[^}]*\}/g, '…');
    const texts = rest.match(/'(?:[^'\\\n]|\\.)*'|"(?:[^"\\\n]|\\.)*"|`(?:[^`\\]|\\.)*`/g) ?? [];
    return texts
      .filter((text) => /[a-z’]{2,}[,.:]? [A-Za-z][a-z’]+/.test(text) || /^['"`][A-Z][a-z]+['"`]$/.test(text))
      .filter((text) => !text.includes('Propsoff'))
      .map((text) => ({ file, text }));
  });
}
