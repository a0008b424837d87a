import type { CodeRule } from './rule';

/**
 * Rules that run together. One rule is a job of its own; those about each member of the same collection make one
 * job, so that there is one memo for each member and not one for each rule and member: of 830 flights these would
 * take another 3 MB.
 */
export interface Job {
  readonly rules: readonly CodeRule[];
  readonly scope: CodeRule['scope'];
  readonly whole: boolean;
  /** The collection whose members the rules are about. */
  readonly each: string | undefined;
}

export function jobsOf(rules: readonly CodeRule[]): readonly Job[] {
  const single = rules.filter(({ each }) => each === undefined);
  const aboutMembers = new Map<string, CodeRule[]>();
  for (const rule of rules) {
    if (rule.each === undefined) continue;
    const key = JSON.stringify([rule.each, rule.scope, rule.whole === true]);
    aboutMembers.set(key, [...(aboutMembers.get(key) ?? []), rule]);
  }
  return [...single.map((rule) => [rule]), ...aboutMembers.values()].flatMap(jobOf);
}

function jobOf(rules: readonly CodeRule[]): readonly Job[] {
  const [first] = rules;
  return first === undefined
    ? []
    : [{ rules, scope: first.scope, whole: first.whole === true, each: first.each }];
}
