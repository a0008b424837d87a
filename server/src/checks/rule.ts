import type { CraftView } from '../craft/view';
import type { Amount } from '../units/distinct-texts';

/** What a rule says: places are parameters, and the engine finds their lines. */
export interface RuleFinding {
  readonly id: string;
  /** The parameter at whose line it stands; the section's or the craft's header where no line sets it. */
  readonly at: string;
  /** Which part of the line is marked: the value unless told otherwise. */
  readonly mark?: 'value' | 'name';
  readonly values?: Readonly<Record<string, string | Amount>>;
  readonly related?: readonly RuleRelated[];
  readonly fixes?: readonly RuleFix[];
}

/** Takes what a rule has found. */
export type ReportFinding = (finding: RuleFinding) => void;

/** What is said of another parameter's line. */
export interface RuleRelated {
  readonly at: string;
  /** Words with slots. */
  readonly message: string;
  readonly values?: Readonly<Record<string, string>>;
}

/** One line that a fix writes: the value of the line that is there is replaced, or a new line is put into its section. */
export interface RuleLine {
  readonly set: string;
  readonly to: string;
  /** What the pilot is to look at or choose: the value is a place to type over, and a comment says so. */
  readonly look?: string | undefined;
  /** Where the value comes from: a comment behind it says so, in place of what an earlier one said. */
  readonly source?: string | undefined;
}

/** Sets parameters. */
export interface SettingFix extends RuleLine {
  /** Words with slots: `{to}` is what it writes. */
  readonly title: string;
  /** What fills the other slots. */
  readonly values?: Readonly<Record<string, string>>;
  readonly also?: readonly RuleLine[] | undefined;
  /** Written for the pack in view alone, where the craft has several. */
  readonly forPack?: boolean | undefined;
}

/** Takes the lines of parameters out. */
export interface RemovalFix {
  readonly title: string;
  readonly values?: Readonly<Record<string, string>>;
  readonly remove: readonly string[];
}

export type RuleFix = SettingFix | RemovalFix;

/** A check whose algorithm is code; its words stand in `schemas/checks/`. */
export interface CodeRule {
  /** The ids of all checks that it may report. */
  readonly ids: readonly string[];
  /** Run once for the craft, or once for each pack in view. */
  readonly scope: 'craft' | 'pack';
  /** Only for a whole craft: for rules about what is missing. */
  readonly whole?: boolean;
  /** Run once for each member of this collection, such as `flight`. */
  readonly each?: string | undefined;
  /** Pure: reads the view, reports. What it reads decides when it runs again. `member`: '' without a collection. */
  check(view: CraftView, report: ReportFinding, member: string): void;
}
