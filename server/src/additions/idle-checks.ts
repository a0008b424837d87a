import { type Catalog, checksOf } from '../catalog/catalog';
import type { Fault } from '../catalog/faults/fault';
import type { Addition } from '../catalog/model/addition';
import type { Bundle } from '../catalog/model/bundle';
import type { Check, DataCheck } from '../catalog/model/check';
import { readBy, readCondition } from '../checks/data/condition';
import { asMember } from '../checks/data/members';
import { neverTriggers } from '../checks/data/never';

/** A rule of an addition that says nothing of any craft. */
export interface IdleCheck {
  readonly index: number;
  readonly fault: Fault;
  /** Whether it was to take the place of another one, which then stays in force. */
  readonly isReplacement: boolean;
}

/** Rules without faults that no script can trigger, that look at nothing, or at nothing that what they replace does. */
export function idleChecks(
  { checks, replaces }: Addition,
  catalog: Catalog,
  bundle: Bundle,
): readonly IdleCheck[] {
  const builtIn = new Map(checksOf(bundle).map((check) => [check.id, check]));
  return checks.flatMap((check, index) => {
    const before = replaces.includes(check.id) ? builtIn.get(check.id) : undefined;
    const why = idleness(check, before, catalog);
    if (why === null) return [];
    const stays = before === undefined ? '' : `: ${check.id} stays in force as it is built in`;
    const fault = { at: ['checks', index, 'when'], message: `${why}${stays}` };
    return [{ index, fault, isReplacement: before !== undefined }];
  });
}

function idleness(check: DataCheck, before: Check | undefined, catalog: Catalog): string | null {
  if (neverTriggers(check, catalog)) return 'no script can trigger this rule';
  const read = namesRead(check, catalog);
  if (read.length === 0) return 'this rule looks at nothing of a craft';
  if (before === undefined) return null;
  const wanted = before.by === 'data' ? namesRead(before, catalog) : null;
  if (wanted === null || read.some((name) => wanted.includes(name))) return null;
  return `this rule looks at nothing of what the one that it replaces looks at (${wanted.join(', ')})`;
}

function namesRead(check: DataCheck, catalog: Catalog): readonly string[] {
  return [...new Set(check.when.flatMap((text) => readBy(readCondition(asMember(text, check, catalog)))))];
}

/** The addition without rules that would only put another one out of force. */
export function withoutIdle(addition: Addition, idle: readonly IdleCheck[]): Addition {
  const out = new Set(idle.flatMap(({ index, isReplacement }) => (isReplacement ? [index] : [])));
  if (out.size === 0) return addition;
  return { ...addition, checks: addition.checks.filter((_, index) => !out.has(index)) };
}
