import type { Catalog } from '../../catalog/catalog';
import type { Place } from '../../checks/report/finding';
import { resolveInclude } from '../../craft/include-path';
import type { Script } from '../../craft/script';
import type { Name, ReferenceNode, Span } from '../../language/ast';
import { stepsOf } from '../../language/path-text';
import type { ScriptLine } from '../../language/script-line';
import { referencesIn } from '../../language/value-nodes';
import { referenceMeaning } from './reference-meaning';

/** Something that lines of a craft's scripts name: a constant, a pack, a parameter's path, a script's URI. */
export interface NamedThing {
  readonly kind: 'constant' | 'pack' | 'parameter' | 'include';
  readonly name: string;
}

/** One place that names it. A definition sets it or makes it; a use only speaks of it. */
export interface Occurrence {
  readonly named: NamedThing;
  readonly place: Place;
  readonly role: 'definition' | 'use';
}

const packs = 'pack';

/** Everything that one line names. Places may lie inside each other: a pack's name inside a parameter's path. */
export function occurrencesOn(script: Script, line: ScriptLine, catalog: Catalog): readonly Occurrence[] {
  const { statement } = line;
  const at: OccurrenceMaker = (kind, name, { start, end }, role) => ({
    named: { kind, name },
    place: { script, line, start, end },
    role,
  });
  switch (statement.kind) {
    case 'include': {
      const uri = resolveInclude(script.uri, statement.path.value);
      return uri === null ? [] : [at('include', uri, statement.path, 'use')];
    }
    case 'section': {
      const { path, pack } = statement;
      const made = packMade(path.names, [], at);
      return pack === null ? made : [...made, at('pack', pack.text, pack, 'use')];
    }
    case 'constant':
      return [
        at('constant', statement.name.text, statement.name, 'definition'),
        ...usesIn(line, catalog, at),
      ];
    case 'setting':
      return [...settingNames(line, at), ...usesIn(line, catalog, at)];
    default:
      return [];
  }
}

type OccurrenceMaker = (
  kind: NamedThing['kind'],
  name: string,
  span: Span,
  role: Occurrence['role'],
) => Occurrence;

/** The parameter that a setting sets and the pack that its own path makes, where the section can be named. */
function settingNames(
  { statement, settingPath, section }: ScriptLine,
  at: OccurrenceMaker,
): readonly Occurrence[] {
  if (statement.kind !== 'setting' || settingPath === null || section.path === null) return [];
  const before = section.path === '' ? [] : stepsOf(section.path);
  const parameter = at('parameter', settingPath, statement.path, 'definition');
  return [parameter, ...packMade(statement.path.names, before, at)];
}

function packMade(
  names: readonly Name[],
  before: readonly string[],
  at: OccurrenceMaker,
): readonly Occurrence[] {
  const member = packIn(names, before);
  return member === null ? [] : [at('pack', member.text, member, 'definition')];
}

function usesIn(
  { statement, settingPath }: ScriptLine,
  catalog: Catalog,
  at: OccurrenceMaker,
): readonly Occurrence[] {
  if (statement.kind !== 'setting' && statement.kind !== 'constant') return [];
  const found = settingPath === null ? undefined : catalog.parameter(settingPath);
  return [...referencesIn(statement.value)].flatMap((node) => {
    const meaning = referenceMeaning(node, found);
    if (meaning === 'word') return [];
    return [at(meaning, node.path.text, node, 'use'), ...packUse(node, meaning, at)];
  });
}

/** The pack in a parameter's path: `pack.sprint.capacity`. */
function packUse({ path }: ReferenceNode, meaning: string, at: OccurrenceMaker): readonly Occurrence[] {
  const member = meaning === 'parameter' ? packIn(path.names, []) : null;
  return member === null ? [] : [at('pack', member.text, member, 'use')];
}

/** The pack that a path names, as it stands among the path's last names; `before` are the section's. */
function packIn(names: readonly Name[], before: readonly string[]): Name | null {
  const first = before[0] ?? names[0]?.text;
  return first === packs ? (names[1 - before.length] ?? null) : null;
}

function isSame(one: NamedThing, other: NamedThing): boolean {
  return one.kind === other.kind && one.name === other.name;
}

/** Every place of a script that names something, in order; costs as much as the script is long. */
export function occurrencesIn(script: Script, named: NamedThing, catalog: Catalog): readonly Occurrence[] {
  const found: Occurrence[] = [];
  for (const line of script.document.lines()) {
    if (!mayName(line, named)) continue;
    found.push(...occurrencesOn(script, line, catalog).filter((one) => isSame(one.named, named)));
  }
  return found;
}

/** A quick look that spares nearly all lines the slow one. */
function mayName(line: ScriptLine, { kind, name }: NamedThing): boolean {
  if (kind === 'include') return line.statement.kind === 'include';
  return line.text.includes(name) || (kind === 'parameter' && line.settingPath === name);
}
