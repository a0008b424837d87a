import type { Check, Level } from '../../catalog/model/check';
import type { Script } from '../../craft/script';
import type { Span } from '../../language/ast';
import type { ScriptLine } from '../../language/script-line';

/** A stretch of one line of one script. */
export interface Place extends Span {
  readonly script: Script;
  readonly line: ScriptLine;
}

export interface Related {
  readonly place: Place;
  /** Words with slots. */
  readonly message: string;
  /** What fills the slots; nothing: the message is told as it stands. */
  readonly values?: Readonly<Record<string, string>> | undefined;
}

/** A change to one script. A place without length is an insertion. */
export interface FixEdit {
  readonly place: Place;
  readonly newText: string;
  /** Parts of the new text that the pilot is to type over, in order. */
  readonly stops?: readonly Stop[];
}

/** A part of a new text to type over. */
export interface Stop extends Span {
  /** The words to pick from, the one that stands there first; none: anything. */
  readonly choices: readonly string[];
}

/** Its title is made last, from words and values, as a finding's sentence is. */
export interface Fix {
  /** Words with slots: `{to}` is what it writes, as a script says it. */
  readonly title: string;
  readonly values: Readonly<Record<string, string>>;
  /** The parameter that it sets; null where it does something else. */
  readonly set: string | null;
  readonly edits: readonly FixEdit[];
  /** Whether it writes what the pilot is to look at or choose: never made unasked. */
  readonly isHelp?: boolean;
}

/**
 * Something that a check found. Its sentence is made last, from the check's words and `values`; nothing
 * ever reads meaning back out of a sentence.
 */
export interface Finding {
  readonly check: Check;
  /** The check's level; once accepted a risk is a note, and a note tidy. */
  readonly level: Level;
  readonly values: Readonly<Record<string, string>>;
  /** Always in the script that was checked. */
  readonly place: Place;
  readonly related: readonly Related[];
  /** The pack that it holds for; null: for all, or packs play no part. */
  readonly pack: string | null;
  readonly fixes: readonly Fix[];
  /** Why the pilot accepted it. */
  readonly accepted: string | null;
}

/** The same finding with some of it otherwise; what is made when it is looked at stays so. */
export function changedFinding(
  finding: Finding,
  changes: Partial<Pick<Finding, 'level' | 'pack' | 'accepted'>>,
): Finding {
  const { check, level, values, place, pack, accepted } = finding;
  return {
    check,
    level,
    values,
    place,
    pack,
    accepted,
    ...changes,
    get related() {
      return finding.related;
    },
    get fixes() {
      return finding.fixes;
    },
  };
}
