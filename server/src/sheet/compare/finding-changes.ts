import type { Finding } from '../../checks/report/finding';
import { levels } from '../../checks/report/order';
import { adviceOf, messageOf } from '../../checks/report/render';

/** A finding in words, for a comparison. */
export interface RenderedFinding {
  readonly id: string;
  readonly level: Finding['level'];
  readonly message: string;
  readonly advice: string;
  /** Whether it comes only if one change is made without the others that belong to it. */
  readonly isOnlyAlone?: boolean;
}

export interface FindingChanges {
  /** The worst first. */
  readonly gained: readonly RenderedFinding[];
  readonly lost: readonly RenderedFinding[];
}

/** Findings of the one that the other lacks. One that only says other numbers is the same finding. */
export function findingChanges(before: readonly Finding[], after: readonly Finding[]): FindingChanges {
  return { gained: beyond(after, before), lost: beyond(before, after) };
}

function beyond(those: readonly Finding[], these: readonly Finding[]): readonly RenderedFinding[] {
  const left = new Map<string, number>();
  for (const finding of these) left.set(sameness(finding), (left.get(sameness(finding)) ?? 0) + 1);
  const more = those.filter((finding) => {
    const count = left.get(sameness(finding)) ?? 0;
    left.set(sameness(finding), count - 1);
    return count <= 0;
  });
  return more
    .map((finding) => ({
      id: finding.check.id,
      level: finding.level,
      message: messageOf(finding),
      advice: adviceOf(finding),
    }))
    .sort((one, other) => levels.indexOf(one.level) - levels.indexOf(other.level));
}

function sameness({ check, pack, level }: Finding): string {
  return JSON.stringify([check.id, pack, level]);
}
