import type { Catalog } from '../catalog/catalog';
import type { DataCheck } from '../catalog/model/check';
import type { Craft } from '../craft/craft';
import { inputKeys } from '../craft/keys';
import { CraftView } from '../craft/view';
import { Query } from '../query/query';
import { dataRule } from './data/data-rule';
import { type Job, type RuleStage, ruleStages } from './job';
import { lineFindings } from './lines/line-findings';
import { complaints, type Raised, withAcceptances } from './report/acceptances';
import { changedFinding, type Finding } from './report/finding';
import { raise } from './report/raise';
import type { CodeRule, RuleFinding } from './rule';
import { codeRules } from './rules';

/** Called when a rule itself fails: its id and what was thrown. The other rules go on. */
export type OnFault = (ruleId: string, error: unknown) => void;

/** All rules of a catalogue, ready to run. */
export class Checker {
  private readonly stages: readonly RuleStage[];

  constructor(
    catalog: Catalog,
    private readonly onFault: OnFault = () => {},
  ) {
    const { stages, unreadable } = rulesOf(catalog);
    this.stages = stages;
    for (const [id, error] of unreadable) onFault(id, error);
  }

  /** Everything found in the craft's own script. Only rules that read what has changed run again. */
  findings(craft: Craft): readonly Finding[] {
    const { findings, accepting } = withAcceptances([
      ...this.lines(craft),
      ...this.stages.flatMap((stage) => this.ofStage.get(craft, stage)),
    ]);
    return [...findings, ...complaints(craft, accepting)];
  }

  private lines(craft: Craft): readonly Raised[] {
    const raised: Raised[] = [];
    try {
      for (const one of lineFindings(craft)) raised.push(one);
    } catch (error) {
      this.onFault('the check of single lines', error);
    }
    return raised;
  }

  /** Of the stages that an edit does not concern, no job is asked: an edit takes half as long as if all were. */
  private readonly ofStage = new Query('findings of a stage', (craft: Craft, stage: RuleStage) =>
    stage.flatMap((job) =>
      job.each === undefined ? this.ofMember(craft, job, '') : this.ofMembers.get(craft, job),
    ),
  );

  /** When something of one member changes, nothing is found anew of the others. */
  private readonly ofMembers = new Query('findings of members', (craft: Craft, job: Job) =>
    craft.members(job.each ?? '').flatMap((member) => this.ofMember(craft, job, member)),
  );

  /** Most rules find nothing: places need a memo only where one finds something. `member`: '' without a collection. */
  private ofMember(craft: Craft, job: Job, member: string): readonly Raised[] {
    const finds = (pack: string | null) =>
      this.ruleFindings.get(new CraftView(craft, pack), job, member).length > 0;
    return packsFor(job, craft).some(finds) ? this.raised.get(craft, job, member) : nothing;
  }

  /** What rules find with any pack, each finding at its places. */
  private readonly raised = new Query('findings of rules', (craft: Craft, job: Job, member: string) =>
    merged(
      packsFor(job, craft).map((pack) => {
        const view = new CraftView(craft, pack);
        return this.ruleFindings.get(view, job, member).flatMap((finding) => this.raisedAlone(view, finding));
      }),
    ),
  );

  /** What rules find with a pack in view, without its places. */
  private readonly ruleFindings = new Query('rules', (view: CraftView, job: Job, member: string) =>
    this.run(job, view, member),
  );

  private run({ rules }: Job, view: CraftView, member: string): readonly RuleFinding[] {
    const all = rules.flatMap((rule) => {
      const found: RuleFinding[] = [];
      const check = () => rule.check(view.anew(), (finding) => found.push(finding), member);
      return this.contained(rule.ids[0] ?? 'a rule', check) ? found : [];
    });
    return all.length === 0 ? nothing : all;
  }

  private raisedAlone(view: CraftView, finding: RuleFinding): readonly Raised[] {
    const raised: Raised[] = [];
    this.contained(finding.id, () => raised.push(raise(view, finding)));
    return raised;
  }

  /** Whether it ran to its end; a rule that fails is reported and takes nothing else with it. */
  private contained(id: string, run: () => void): boolean {
    try {
      run();
      return true;
    } catch (error) {
      this.onFault(id, error);
      return false;
    }
  }
}

/** The rules of a catalogue, and those whose conditions can't be read, with why: they are left out. */
interface Rules {
  readonly stages: readonly RuleStage[];
  readonly unreadable: ReadonlyMap<string, unknown>;
}

const known = new WeakMap<Catalog, Rules>();

/** Read once for a catalogue: all workspaces over it share them. */
function rulesOf(catalog: Catalog): Rules {
  const rules = known.get(catalog) ?? readRules(catalog);
  known.set(catalog, rules);
  return rules;
}

function readRules(catalog: Catalog): Rules {
  const unreadable = new Map<string, unknown>();
  const read = (check: DataCheck): readonly CodeRule[] => {
    try {
      return [dataRule(check, catalog)];
    } catch (error) {
      unreadable.set(check.id, error);
      return [];
    }
  };
  const built = codeRules.map((rule) => withoutReplaced(rule, catalog));
  const written = [...catalog.checks.values()].flatMap((check) => (check.by === 'data' ? read(check) : []));
  return { stages: ruleStages([...built, ...written]), unreadable };
}

/** Of most there is nothing to say: one empty list for all takes no room. */
const nothing: readonly never[] = [];

/** A rule in code without what a workspace has written a rule as data for. */
function withoutReplaced(rule: CodeRule, catalog: Catalog): CodeRule {
  const isReplaced = (id: string) => catalog.check(id)?.by === 'data';
  if (!rule.ids.some(isReplaced)) return rule;
  return {
    ...rule,
    check: (view, report, member) => {
      const others = (finding: RuleFinding) => {
        if (!isReplaced(finding.id)) report(finding);
      };
      rule.check(view, others, member);
    },
  };
}

/** The packs to run a rule with; none for a rule about whole crafts where there is only a part of one. */
function packsFor({ scope, whole }: Job, craft: Craft): readonly (string | null)[] {
  if (whole && !craft.isWhole()) return [];
  // Without an overlay every pack sees the same settings, so a rule about the craft needs one run only.
  const isOne = scope === 'craft' && craft.lines(inputKeys.overlay).length === 0;
  return isOne ? [null] : craft.packsOrNone();
}

/** What holds with every pack is reported once; what holds with some is reported for each of them. */
function merged(perPack: readonly (readonly Raised[])[]): readonly Raised[] {
  const groups = new Map<string, Raised[]>();
  for (const one of perPack.flat()) {
    const key = sameness(one.finding);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [one]);
    else group.push(one);
  }
  return [...groups.values()].flatMap((group) => {
    const byPack = new Map(group.map((one) => [one.finding.pack, one]));
    const [first] = group;
    if (first === undefined || byPack.size < perPack.length) return [...byPack.values()];
    return [{ ...first, finding: changedFinding(first.finding, { pack: null }) }];
  });
}

function sameness({ check, place, values }: Finding): string {
  const at = place.script.lineNumber(place.line);
  return JSON.stringify([check.id, place.script.uri, at, place.start, values]);
}
