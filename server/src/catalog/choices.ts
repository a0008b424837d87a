import type { BoardProfile } from './model/board-profile';
import type { Choice, ChoiceSource, Parameter } from './model/parameter';

/** Words that only the craft at hand can tell. */
export interface ChoiceContext {
  /** The serial ports of the craft's board. */
  readonly ports?: readonly Choice[];
  /** The packs that the script describes. */
  readonly packs?: readonly Choice[];
}

/** The tables of the catalogue that words come from. */
interface Tables {
  readonly boards: ReadonlyMap<string, BoardProfile>;
  readonly signals: ChoicesByName;
  readonly regions: ChoicesByName;
  readonly grids: ChoicesByName;
  readonly videoBands: ChoicesByName;
  readonly chemistries: ChoicesByName;
  readonly links: ReadonlyMap<string, Choice & { readonly uses: readonly string[] }>;
  members(collection: string): readonly Choice[];
  boardNames(): readonly string[];
}

type ChoicesByName = ReadonlyMap<string, Choice>;

/** Words of a parameter, or the words that may stand in place of its number. Empty where it takes none. */
export function choicesOf(tables: Tables, parameter: Parameter, context: ChoiceContext): readonly Choice[] {
  switch (parameter.kind) {
    case 'word':
    case 'words':
      return [...(parameter.choices ?? []), ...fromElsewhere(tables, parameter, context)];
    case 'quantity':
    case 'count':
      return parameter.orWords ?? [];
    default:
      return [];
  }
}

type WithWords = Extract<Parameter, { kind: 'word' | 'words' }>;

function fromElsewhere(tables: Tables, parameter: WithWords, context: ChoiceContext): readonly Choice[] {
  const { choicesFrom } = parameter;
  if (choicesFrom === undefined) return [];
  if (choicesFrom === 'links') return linksFor(tables, parameter.name);
  return sources[choicesFrom](tables, context);
}

const sources: Record<
  Exclude<ChoiceSource, 'links'>,
  (from: Tables, context: ChoiceContext) => readonly Choice[]
> = {
  boards: (catalog) => catalog.boardNames().map((name) => asBoard(catalog.boards.get(name), name)),
  ports: (_, { ports = [] }) => ports,
  packs: (_, { packs = [] }) => packs,
  chemistries: (catalog) =>
    [...catalog.chemistries.values()].map(({ name, summary, risk }) => ({ name, summary, risk })),
  signals: (catalog) => asChoices(catalog.signals),
  regions: (catalog) => asChoices(catalog.regions),
  grids: (catalog) => asChoices(catalog.grids),
  'video-bands': (catalog) => asChoices(catalog.videoBands),
  'switch-functions': (catalog) =>
    catalog.members('switch').map(({ name, summary, part }) => ({ name, summary, part })),
  'log-media': () => logMedia,
};

const logMedia: readonly Choice[] = [
  { name: 'off', summary: 'Nothing is recorded.' },
  { name: 'flash', summary: 'Into the memory chip on the board, a few minutes long.' },
  { name: 'card', summary: 'Onto a memory card, long enough for a whole day.' },
];

function asBoard(board: BoardProfile | undefined, name: string): Choice {
  return { name, summary: board?.summary ?? `The board ${board?.title ?? name} of this workspace.` };
}

function asChoices(table: ChoicesByName): readonly Choice[] {
  return [...table.values()].map(({ name, summary }) => ({ name, summary }));
}

/** A group takes the links made for its use; a group that no link is made for takes them all. */
function linksFor(tables: Tables, name: string): readonly Choice[] {
  const use = name.slice(0, name.indexOf('.'));
  const links = [...tables.links.values()];
  const fitting = links.filter((link) => link.uses.some((one) => one === use));
  return (fitting.length === 0 ? links : fitting).map((link) => ({ name: link.name, summary: link.summary }));
}
