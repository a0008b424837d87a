import type { Place } from '../../checks/report/finding';
import { fileName } from '../../craft/include-path';
import type { Script } from '../../craft/script';
import type { Span } from '../../language/ast';
import type { ScriptLine } from '../../language/script-line';
import { type Location, locationOf } from '../range';
import { fuzzyScore } from './fuzzy';

/** Something of an open script that can be looked up by its name. */
export interface WorkspaceSymbol {
  readonly name: string;
  readonly kind: 'pack' | 'section' | 'constant';
  /** The script that it stands in. */
  readonly container: string;
  readonly location: Location;
}

/** More answers than this only make a longer list to read. */
const mostAnswers = 200;

/** Packs, constants and sections of some scripts whose names fit what was typed, the best first. */
export function workspaceSymbols(scripts: Iterable<Script>, typed: string): readonly WorkspaceSymbol[] {
  const fitting: (FoundSymbol & { readonly score: number })[] = [];
  for (const script of new Set(scripts)) {
    for (const line of script.document.lines()) {
      const named = nameOn(line);
      const score = named === null ? null : fuzzyScore(typed, named.name);
      if (named !== null && score !== null)
        fitting.push({ ...named, place: { script, line, ...named.span }, score });
    }
  }
  return fitting
    .sort((one, other) => other.score - one.score)
    .slice(0, mostAnswers)
    .map(({ name, kind, place }) => ({
      name,
      kind,
      container: fileName(place.script.uri),
      location: locationOf(place),
    }));
}

type Kind = WorkspaceSymbol['kind'];

interface NamedLine {
  readonly name: string;
  readonly kind: Kind;
  readonly span: Span;
}

interface FoundSymbol extends NamedLine {
  readonly place: Place;
}

function nameOn({ statement }: ScriptLine): NamedLine | null {
  if (statement.kind === 'constant')
    return { name: statement.name.text, kind: 'constant', span: spanOf(statement.name) };
  if (statement.kind !== 'section') return null;
  const { path, pack } = statement;
  const [collection, member, ...deeper] = path.names;
  if (pack === null && collection?.text === 'pack' && member !== undefined && deeper.length === 0) {
    return { name: member.text, kind: 'pack', span: spanOf(member) };
  }
  const name = pack === null ? path.text : `${path.text} @ ${pack.text}`;
  return { name, kind: 'section', span: spanOf(path) };
}

function spanOf({ start, end }: Span): Span {
  return { start, end };
}
