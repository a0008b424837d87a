import type { Place } from '../../checks/report/finding';
import { fileName } from '../../craft/include-path';
import type { Script } from '../../craft/script';
import type { Span } from '../../language/ast';
import { isOwnPath } from '../../language/path-text';
import type { ScriptLine } from '../../language/script-line';
import { type Location, locationOf } from '../range';
import { fuzzyScore } from './fuzzy';
import { insideQuotes } from './value-spans';

/** Something of a script that can be looked up by its name. */
export interface WorkspaceSymbol {
  readonly name: string;
  readonly kind: 'craft' | 'pack' | 'section' | 'constant' | 'setting';
  /** The script that it stands in. */
  readonly container: string;
  readonly location: Location;
}

/** More answers than this only make a longer list to read. */
const mostAnswers = 200;

/**
 * How far behind the others that fit alike something comes. Every script has hundreds of settings, so that without
 * this nothing else would be seen.
 */
const behind: Readonly<Record<Kind, number>> = { craft: 0, pack: 0, section: 0, constant: 0, setting: 2 };

/** Names of crafts, packs, constants, sections and settings of some scripts that fit what was typed, the best first. */
export function workspaceSymbols(scripts: Iterable<Script>, typed: string): readonly WorkspaceSymbol[] {
  const fitting: (FoundSymbol & { readonly score: number })[] = [];
  for (const script of new Set(scripts)) {
    for (const line of script.document.lines()) {
      for (const named of namesOn(line)) {
        const score = scoreOf(named, typed);
        if (score !== null) fitting.push({ ...named, place: { script, line, ...named.span }, score });
      }
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

/** A setting must be meant: nothing typed, or letters that are only scattered over its path, mean none. */
function scoreOf({ name, kind }: NamedLine, typed: string): number | null {
  const score = fuzzyScore(typed, name);
  if (score === null) return null;
  if (kind === 'setting' && (typed.trim() === '' || score <= 0)) return null;
  return score - behind[kind];
}

function namesOn(line: ScriptLine): readonly NamedLine[] {
  const { statement } = line;
  switch (statement.kind) {
    case 'constant':
      return [{ name: statement.name.text, kind: 'constant', span: spanOf(statement.name) }];
    case 'section':
      return [sectionName(statement)];
    case 'setting':
      return settingNames(line);
    default:
      return [];
  }
}

function sectionName({ path, pack }: Extract<ScriptLine['statement'], { kind: 'section' }>): NamedLine {
  const [collection, member, ...deeper] = path.names;
  if (pack === null && collection?.text === 'pack' && member !== undefined && deeper.length === 0)
    return { name: member.text, kind: 'pack', span: spanOf(member) };
  const name = pack === null ? path.text : `${path.text} @ ${pack.text}`;
  return { name, kind: 'section', span: spanOf(path) };
}

/** A setting by its whole path; what names the craft by that name as well. Bare settings are the board's. */
function settingNames({ text, statement, settingPath, section }: ScriptLine): readonly NamedLine[] {
  if (statement.kind !== 'setting' || settingPath === null || isOwnPath(settingPath)) return [];
  const { path, value } = statement;
  const overlay = section.pack === null ? '' : ` @ ${section.pack}`;
  const setting: NamedLine = { name: settingPath + overlay, kind: 'setting', span: spanOf(path) };
  if (settingPath !== 'craft.name' || value?.kind !== 'text' || value.value === '') return [setting];
  return [{ name: value.value, kind: 'craft', span: insideQuotes(text, value) }, setting];
}

function spanOf({ start, end }: Span): Span {
  return { start, end };
}
