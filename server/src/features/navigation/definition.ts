import type { Craft } from '../../craft/craft';
import { inputKeys } from '../../craft/keys';
import type { Script } from '../../craft/script';
import type { Statement } from '../../language/ast';
import type { ScriptLine } from '../../language/script-line';
import { lineRange, type Position, type Range, rangeInLine, rangeOf } from '../range';
import type { Snapshot } from '../snapshot';
import { craftsNaming, namedAt, occurrencesAcross, scriptsOf } from './named-at';
import type { NamedThing, Occurrence } from './occurrences';

export interface DefinitionTarget {
  readonly uri: string;
  /** The whole line, or the start of a script. */
  readonly range: Range;
  /** The name itself; lies inside the range. */
  readonly selection: Range;
}

export interface Definition {
  /** What was asked about. */
  readonly origin: Range;
  /** Where it is set, what counts first. */
  readonly targets: readonly DefinitionTarget[];
}

/** Where the constant, pack, parameter or included script at a position is set; null where nothing is. */
export function definition(
  snapshot: Snapshot,
  position: Position,
  open: Iterable<Craft> = [],
): Definition | null {
  const here = namedAt(snapshot, position);
  if (here === undefined) return null;
  const crafts = craftsNaming(snapshot, here.named, open);
  const targets =
    here.named.kind === 'include'
      ? scriptsOf(crafts)
          .filter(({ uri }) => uri === here.named.name)
          .map(startOf)
      : settersOf(snapshot, crafts, here.named).map(targetOf);
  return targets.length === 0 ? null : { origin: rangeOf(here.place), targets };
}

/** Later lines override earlier ones, so the last comes first; a pack's own section before lines that name it. */
function settersOf(snapshot: Snapshot, crafts: readonly Craft[], named: NamedThing): readonly Occurrence[] {
  const all = occurrencesAcross(crafts, named, snapshot).filter(({ role }) => role === 'definition');
  if (named.kind === 'pack') {
    const sections = all.filter(({ place: { line } }) => isSectionOf(line.statement, named.name));
    return sections.length > 0 ? sections : all.slice(0, 1);
  }
  const counting = linesThatCount(snapshot, named);
  const rank = ({ place }: Occurrence) => counting.indexOf(place.line);
  const effective = all.filter((one) => rank(one) >= 0).sort((one, other) => rank(one) - rank(other));
  return [...effective, ...all.filter((one) => rank(one) < 0)];
}

/** The lines that set it with the pack in view: the one that counts, then those that it overrides. */
function linesThatCount({ craft, pack }: Snapshot, { kind, name }: NamedThing): readonly ScriptLine[] {
  if (kind === 'constant')
    return craft
      .lines(inputKeys.constant(name))
      .map(({ line }) => line)
      .reverse();
  const setting = craft.setting(name, pack);
  return setting === undefined ? [] : [setting.origin, ...setting.overridden].map(({ line }) => line);
}

function isSectionOf(statement: Statement, pack: string): boolean {
  return statement.kind === 'section' && statement.path.text === `pack.${pack}`;
}

function targetOf({ place }: Occurrence): DefinitionTarget {
  const { script, line } = place;
  return { uri: script.uri, range: lineRange(script, line), selection: rangeOf(place) };
}

function startOf({ uri }: Script): DefinitionTarget {
  const range = rangeInLine(0, { start: 0, end: 0 });
  return { uri, range, selection: range };
}
