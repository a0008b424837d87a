import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseSync, Visitor } from 'oxc-parser';

const root = join(__dirname, '../..');

/** A regular expression with the files in which it stands. */
export interface Pattern {
  readonly source: string;
  readonly flags: string;
  readonly files: readonly string[];
}

/** Every regular expression that ships, but for those that are put together at run time. */
export function literalPatterns(): readonly Pattern[] {
  const found = new Map<string, Pattern>();
  for (const file of codeFiles()) {
    const add = (source: string, flags: string) => {
      const key = `/${source}/${flags}`;
      found.set(key, { source, flags, files: [...(found.get(key)?.files ?? []), file] });
    };
    const { program } = parseSync(file, textOf(file));
    new Visitor({
      Literal: (node) => {
        if ('regex' in node) add(node.regex.pattern, node.regex.flags);
      },
    }).visit(program);
  }
  return [...found.values()];
}

/** Files in which regular expressions are put together at run time. */
export function filesThatBuildPatterns(): readonly string[] {
  return codeFiles().filter((file) => /\bRegExp\(/.test(textOf(file)));
}

function codeFiles(): readonly string[] {
  return ['server/src', 'client'].flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts') && !name.endsWith('.d.ts'))
      .map((name) => `${folder}/${name}`)
      .sort(),
  );
}

function textOf(file: string): string {
  return readFileSync(join(root, file), 'utf8');
}
