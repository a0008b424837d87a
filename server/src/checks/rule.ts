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
  readonly related?: readonly { readonly at: string; readonly message: string }[];
  readonly fixes?: readonly RuleFix[];
}

/** Sets a parameter: its line's value is replaced, or a new line is put into its section. */
export interface RuleFix {
  readonly title: string;
  readonly set: string;
  readonly to: string;
}

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
  check(view: CraftView, report: (finding: RuleFinding) => void, member: string): void;
}
