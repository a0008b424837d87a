import type { BoardLayer } from '../../board/layer/layer';
import type { Catalog } from '../../catalog/catalog';
import type { Level } from '../../catalog/model/check';
import type { Finding } from '../../checks/report/finding';
import { countByLevel } from '../../checks/report/order';
import { type BoardProblem, boardProblems, isReportedByProfile } from './problems';

/** What is reported of a board's text. */
export interface TextReport {
  /** What it and its profile say themselves. */
  readonly problems: readonly BoardProblem[];
  /** What was found in the script that it comes to. */
  readonly findings: readonly Finding[];
}

/** `findings`: those of the script that the text comes to. */
export function boardTextReport(
  layer: BoardLayer,
  findings: readonly Finding[],
  catalog: Catalog,
): TextReport {
  return {
    problems: boardProblems(layer, catalog),
    findings: findings.filter((finding) => !isReportedByProfile(finding, layer)),
  };
}

export function countsOfText({ problems, findings }: TextReport): Readonly<Record<Level, number>> {
  const counts = { ...countByLevel(findings) };
  for (const { check } of problems) counts[check.level] += 1;
  return counts;
}
