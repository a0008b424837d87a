import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { FileSystem } from '../../server/src/workspace/file-system';

/** The demo's files, whatever folder is asked for; all of them may be included. */
export function demoFiles(demo: string): FileSystem {
  return {
    readText: async (uri) => readFileSync(join(demo, uri.slice(uri.lastIndexOf('/') + 1)), 'utf8'),
    readPieces: async () => null,
    list: async () => [],
    folders: () => [],
    foldersOf: () => [],
    scriptsBelow: async () => ({ scripts: [], unread: [], isCut: false }),
    refusal: () => null,
  };
}
