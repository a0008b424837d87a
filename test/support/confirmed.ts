import assert from 'node:assert/strict';
import type { Confirmation, Confirmed } from '../../server/src/board/learn/said';
import { readSaid } from '../../server/src/board/learn/said-text';
import { testCatalog } from './catalog';

/** What a pilot types to say what settings mean: `calm/cut=gyro.filter.1.cutoff unit Hz`. */
export function confirmed(
  lines: readonly string[],
  roles: readonly string[] = [],
  ports: Partial<Confirmed['ports']> = {},
): Confirmed {
  const settings = new Map<string, Confirmation[]>();
  const add = (line: string, isRole: boolean) => {
    const read = readSaid(line, testCatalog);
    assert.ok(read.kind === 'said', read.kind === 'wrong' ? read.message : '');
    const said = isRole ? { means: read.said.means, isRole } : read.said;
    settings.set(read.key, [...(settings.get(read.key) ?? []), said]);
  };
  for (const line of lines) add(line, false);
  for (const line of roles) add(line, true);
  return { settings, ports: { ports: new Map(), words: new Map(), ...ports } };
}
