import type { Catalog } from '../catalog/catalog';
import type { DataCheck } from '../catalog/model/check';
import type { Craft } from '../craft/craft';
import { inputKeys } from '../craft/keys';
import { CraftView } from '../craft/view';
import { complaints, inPieces, type Raised, type ToldPieces, told } from './acceptances';
import { dataRule } from './data-rule';
import type { Finding, Pieces } from './finding';
import { lineFindings } from './line-findings';
import { perItem } from './per-item';
import { raise } from './raise';
import type { CodeRule, RuleFinding } from './rule';
import { codeRules } from './rules';

/** Called when a rule itself fails: its id and what was thrown. The other rules go on. */
export type OnFault = (ruleId: string, error: unknown) => void;

/** All rules of a catalogue, ready to run. */
export class Checker {
  private readonly rules: readonly CodeRule[];

  constructor(
    catalog: Catalog,
    private readonly onFault: OnFault = () => {},
  ) {
    const written = [...catalog.checks.values()].flatMap((check) => (check.by === 'data' ? [check] : []));
    this.rules = [...codeRules, ...written.flatMap((check) => this.read(check, catalog))];
  }

  /** A rule whose conditions can't be read is said once and left out; the others run. */
  private read(check: DataCheck, catalog: Catalog): readonly CodeRule[] {
    try {
      return [dataRule(check, catalog)];
    } catch (error) {
      this.onFault(check.id, error);
      return [];
    }
  }

  /** Everything found in the craft's own script. Only rules that read what has changed run again. */
  findings(craft: Craft): readonly Finding[] {
    return this.pieces(craft).flat(2);
  }

  /** The same in groups of pieces: what nothing has changed stays the same list. */
  pieces(craft: Craft): readonly Pieces[] {
    const rules = this.saying(craft).flatMap((rule) => this.run(rule, craft));
    const all = [...this.lines(craft), inPieces([told(rules)])];
    const unused = complaints(
      craft,
      all.flatMap(({ accepting }) => accepting),
    );
    return [...all.map(({ pieces }) => pieces), [unused]];
  }

  private lines(craft: Craft): readonly ToldPieces[] {
    const pieces: ToldPieces[] = [];
    try {
      for (const one of lineFindings(craft)) pieces.push(one);
    } catch (error) {
      this.onFault('the check of single lines', error);
    }
    return pieces;
  }

  /** The rules that say something: a change asks again only those near the ones that it concerns. */
  private saying(craft: Craft): readonly CodeRule[] {
    const rules = () => this.rules;
    return perItem(craft.cells, 'rules', rules, (rule) => (this.says(rule, craft) ? [rule] : []));
  }

  private says(rule: CodeRule, craft: Craft): boolean {
    return packsFor(rule, craft).some((pack) => this.saidWith(rule, craft, pack).length > 0);
  }

  private run(rule: CodeRule, craft: Craft): readonly Raised[] {
    return merged(packsFor(rule, craft).map((pack) => this.runWith(rule, craft, pack)));
  }

  private saidWith(rule: CodeRule, craft: Craft, pack: string | null): readonly RuleFinding[] {
    return craft.cells.getWith(pack, 'rule', rule.ids[0] ?? '', () => {
      const found: RuleFinding[] = [];
      const check = () => rule.check(new CraftView(craft, pack), (finding) => found.push(finding));
      return this.contained(rule, check) ? found : [];
    });
  }

  private runWith(rule: CodeRule, craft: Craft, pack: string | null): readonly Raised[] {
    const said = this.saidWith(rule, craft, pack);
    // Places are looked up anew each time: lines come and go without the rule having read them.
    const view = new CraftView(craft, pack);
    const raised: Raised[] = [];
    this.contained(rule, () => raised.push(...said.map((finding) => raise(view, finding))));
    return raised;
  }

  /** Whether it ran to its end; a rule that fails is reported and takes nothing else with it. */
  private contained(rule: CodeRule, run: () => void): boolean {
    try {
      run();
      return true;
    } catch (error) {
      this.onFault(rule.ids[0] ?? 'a rule', error);
      return false;
    }
  }
}

/** The packs to run a rule with; none for a rule about whole crafts where there is only a part of one. */
function packsFor({ scope, whole }: CodeRule, craft: Craft): readonly (string | null)[] {
  return craft.cells.get(whole === true ? `packs for a whole ${scope}` : `packs for a ${scope}`, () => {
    if (whole === true && !craft.isWhole()) return [];
    // Without an overlay every pack sees the same settings, so a rule about the craft needs one run only.
    const isOne = scope === 'craft' && craft.lines(inputKeys.overlay).length === 0;
    return isOne ? [null] : craft.packsOrNone();
  });
}

/** What holds with every pack is told once; what holds with some is told for each of them. */
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
    return [{ ...first, finding: { ...first.finding, pack: null } }];
  });
}

function sameness({ check, place, values }: Finding): string {
  const at = place.script.lineNumber(place.line);
  return JSON.stringify([check.id, place.script.uri, at, place.start, values]);
}
