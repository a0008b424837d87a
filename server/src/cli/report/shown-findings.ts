import type { Level } from '../../catalog/model/check';
import { levels } from '../../checks/report/order';

/** Findings told of one script. Whoever has more mends some and asks again; they are counted all the same. */
export const mostTold = 1000;

export interface ToldFindings<T> {
  /** The worst of them, in the order that they came in. */
  readonly told: readonly T[];
  /** How many more there are. */
  readonly omitted: number;
}

export function toldOf<T extends { readonly level: Level }>(findings: readonly T[]): ToldFindings<T> {
  if (findings.length <= mostTold) return { told: findings, omitted: 0 };
  const kept = new Set<T>();
  for (const level of levels) {
    for (const finding of findings) {
      if (kept.size === mostTold) break;
      if (finding.level === level) kept.add(finding);
    }
  }
  return { told: findings.filter((finding) => kept.has(finding)), omitted: findings.length - mostTold };
}
