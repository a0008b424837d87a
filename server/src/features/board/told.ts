import type { Translation } from '../../board/translation';
import type { Catalog } from '../../catalog/catalog';
import type { Level } from '../../catalog/model/check';
import type { Finding } from '../../checks/report/finding';
import { countByLevel } from '../../checks/report/order';
import { type BoardProblem, boardProblems, isToldByProfile, noProfileProblem } from './problems';

/** What is told of a board's text. */
export interface ToldText {
  /** What its profile says, or that there is none. */
  readonly problems: readonly BoardProblem[];
  /** What was found in the script that it was translated to. */
  readonly findings: readonly Finding[];
}

/** `findings`: those of the script that the text was translated to. */
export function toldText(
  translation: Translation | null,
  findings: readonly Finding[],
  catalog: Catalog,
): ToldText {
  if (translation === null) return { problems: noProfileProblem(catalog), findings: [] };
  return {
    problems: boardProblems(translation, catalog),
    findings: findings.filter((finding) => !isToldByProfile(finding, translation)),
  };
}

export function countsOfText({ problems, findings }: ToldText): Readonly<Record<Level, number>> {
  const counts = { ...countByLevel(findings) };
  for (const { check } of problems) counts[check.level] += 1;
  return counts;
}
