import type { Catalog } from '../../catalog/catalog';
import type { KnownParameter } from '../../catalog/known-parameter';
import { inputKeys } from '../../craft/keys';
import type { ScriptLine } from '../../language/script-line';
import type { Snapshot } from '../snapshot';
import type { NameContext } from './context';
import { foreignWordsFor } from './foreign-words';
import type { CompletionItem, CompletionOptions } from './item';
import type { OpenName } from './paths';
import { headerItem } from './sections';

/** Fewer letters fit too many words of the trade: only a whole word counts then. */
export const shortestSynonym = 3;
/** Sections that a word of the trade leads to. */
const mostSections = 5;

/** What a parameter is called too, from the word on that begins with what was typed. */
interface SaidSynonym {
  readonly synonym: string;
  /** In one piece, since a blank ends what is typed: `dry-weight`. */
  readonly filter: string;
}

function saidFor(known: KnownParameter, typed: string, catalog: Catalog): SaidSynonym | undefined {
  if (typed.length < 2) return undefined;
  const sought = typed.toLowerCase();
  const foreign = typed.length < shortestSynonym ? [] : foreignWordsFor(known, catalog);
  for (const synonym of [...known.parameter.alsoCalled, ...foreign]) {
    const words = synonym.toLowerCase().split(/[\s-]+/);
    const tails = words.map((_, index) => words.slice(index).join('-'));
    const filter = tails.find((tail) =>
      typed.length < shortestSynonym ? tail === sought : tail.startsWith(sought),
    );
    if (filter !== undefined) return { synonym, filter };
  }
  return undefined;
}

/** Parameters of the list that the trade calls by the typed word, under that word. */
export function synonymItems(
  { catalog }: Snapshot,
  names: readonly OpenName[],
  typed: string,
  item: (name: OpenName) => CompletionItem,
): readonly CompletionItem[] {
  return names.flatMap((name) => {
    const said = saidFor(name.known, typed, catalog);
    if (said === undefined || name.rest.toLowerCase().startsWith(typed.toLowerCase())) return [];
    const { known } = name;
    const detail = `${known.parameter.title}, also called “${said.synonym}”`;
    return [{ ...item(name), detail, filterText: said.filter }];
  });
}

/** Sections not opened yet that hold what the trade calls by the typed word. */
export function synonymSectionItems(
  { catalog, script }: Snapshot,
  line: ScriptLine,
  { typed, range }: NameContext,
  options: CompletionOptions,
): readonly CompletionItem[] {
  const sections = new Map<string, CompletionItem>();
  for (const known of catalog.parameters.values()) {
    const said = saidFor(known, typed, catalog);
    if (said === undefined) continue;
    const path = known.words.slice(0, -1).join('.');
    const isHere = path === line.section.path || script.has(inputKeys.section(path));
    if (sections.has(path) || isHere) continue;
    const detail = `Holds ${known.words.at(-1)}, also called “${said.synonym}”`;
    sections.set(path, { ...headerItem(path, detail, range, options), filterText: said.filter });
    if (sections.size === mostSections) break;
  }
  return [...sections.values()];
}
