import type { Finding } from '../checks/finding';
import { levels } from '../checks/order';

/** Findings told of one script. Whoever has more mends some and asks again; they are counted all the same. */
export const mostTold = 1000;

export interface ToldFindings {
  /** The worst of them, in the order of the script. */
  readonly told: readonly Finding[];
  /** How many more there are. */
  readonly omitted: number;
}

export function toldOf(findings: readonly Finding[]): ToldFindings {
  if (findings.length <= mostTold) return { told: findings, omitted: 0 };
  const kept = new Set<Finding>();
  for (const level of levels) {
    for (const finding of findings) {
      if (kept.size === mostTold) break;
      if (finding.level === level) kept.add(finding);
    }
  }
  return { told: findings.filter((finding) => kept.has(finding)), omitted: findings.length - mostTold };
}
