import type { Confirmed } from '../../server/src/board/learn/said';
import { readConfirmed } from '../../server/src/cli/files/confirmed';
import { testCatalog } from './catalog';

/** What a pilot types to say what settings mean: `calm/cut=gyro.filter.1.cutoff unit Hz`. */
export function confirmed(
  lines: readonly string[],
  roles: readonly string[] = [],
  ports: Partial<Confirmed['ports']> = {},
): Confirmed {
  const said = readConfirmed({ confirm: lines, role: roles }, testCatalog);
  return { ...said, ports: { ...said.ports, ...ports } };
}
