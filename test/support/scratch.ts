import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { URI } from 'vscode-uri';

/** A folder of its own for a test, with files in it. */
export class Scratch {
  readonly path = realpathSync(mkdtempSync(join(tmpdir(), 'propsoff-')));

  constructor(files: Readonly<Record<string, string | Buffer>> = {}) {
    for (const [name, content] of Object.entries(files)) this.write(name, content);
  }

  get uri(): string {
    return URI.file(this.path).toString();
  }

  file(name: string): string {
    return join(this.path, name);
  }

  uriOf(name: string): string {
    return URI.file(this.file(name)).toString();
  }

  write(name: string, content: string | Buffer): void {
    mkdirSync(dirname(this.file(name)), { recursive: true });
    writeFileSync(this.file(name), content);
  }

  read(name: string): string {
    return readFileSync(this.file(name), 'utf8');
  }

  remove(name: string): void {
    rmSync(this.file(name), { recursive: true });
  }
}

/** Runs something with a folder that is gone afterwards. */
export async function withScratch<T>(
  files: Readonly<Record<string, string | Buffer>>,
  run: (scratch: Scratch) => Promise<T>,
): Promise<T> {
  const scratch = new Scratch(files);
  try {
    return await run(scratch);
  } finally {
    rmSync(scratch.path, { recursive: true, force: true });
  }
}

/** Makes a pipe with a name, to which nobody writes. Node itself can't. */
export function makeNamedPipe(path: string): void {
  execFileSync('sh', ['-c', 'mkfifo "$1"', 'sh', path]);
}

/** Does something as a user without rights, where this process has the rights of all; the file system sees it so. */
export async function asNobody<T>(run: () => Promise<T>): Promise<T> {
  const { geteuid, seteuid } = process;
  if (geteuid?.() !== 0 || seteuid === undefined) return run();
  seteuid(65_534);
  try {
    return await run();
  } finally {
    seteuid(0);
  }
}
