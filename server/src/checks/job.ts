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

/** Jobs whose checks begin alike, as in `see/…`. */
export type RuleStage = readonly Job[];

export function ruleStages(rules: readonly CodeRule[]): readonly RuleStage[] {
  const stages = new Map<string, Job[]>();
  for (const job of jobsOf(rules)) {
    const name = job.rules[0]?.ids[0]?.split('/')[0] ?? '';
    const stage = stages.get(name);
    if (stage === undefined) stages.set(name, [job]);
    else stage.push(job);
  }
  return [...stages.values()];
}

function jobsOf(rules: readonly CodeRule[]): readonly Job[] {
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
