import { parameterTaken } from '../../board/learn/convert/taken';
import { unitFor } from '../../board/meaning/counting';
import { wordsToSpell } from '../../board/meaning/words-to-spell';
import type { Catalog } from '../../catalog/catalog';
import type { Parameter } from '../../catalog/model/parameter';
import { findDimensionName } from '../../units/dimension-names';

/** What can be said of how a setting holds a parameter. */
export interface ParameterForm {
  readonly means: string;
  readonly title: string;
  readonly summary: string;
  /** Units that its quantity can be counted in, its own first; none for what is no quantity. */
  readonly units: readonly string[];
  /** Whether a number is counted in it. */
  readonly isCounted: boolean;
  /** The words that it is said in; null: any, or none. */
  readonly words: readonly string[] | null;
  /** Whether it says on or off, as one bit of a number may. */
  readonly isFlag: boolean;
  /** What a value of it looks like: `25 mW`. */
  readonly hint: string;
  /** Which parts settings may hold of it between them. */
  readonly parts: 'ends' | 'place' | 'points' | 'entries' | null;
}

/** Null where there is no such parameter. */
export function parameterForm(means: string, catalog: Catalog): ParameterForm | null {
  const found = parameterTaken({ means }, catalog);
  if (found === undefined || found.parameter.kind === 'bare') return null;
  const { parameter, dimensionName } = found;
  const isQuantity = ['quantity', 'range', 'curve'].includes(parameter.kind);
  const own = unitFor(parameter);
  const others = isQuantity ? (findDimensionName(dimensionName ?? '')?.units ?? []) : [];
  return {
    means,
    title: parameter.title,
    summary: parameter.summary,
    units: isQuantity ? [own, ...others.filter((unit) => unit !== own)] : [],
    isCounted: isQuantity || parameter.kind === 'count',
    words: wordsToSpell(found, catalog),
    isFlag: parameter.kind === 'flag',
    hint: hintOf(parameter),
    parts: partsOf[parameter.kind] ?? null,
  };
}

function hintOf(parameter: Parameter): string {
  switch (parameter.kind) {
    case 'quantity':
    case 'range':
      return parameter.usual[0];
    case 'curve':
      return parameter.up.usual[1];
    default:
      return '1';
  }
}

const partsOf: Readonly<Record<string, ParameterForm['parts']>> = {
  range: 'ends',
  place: 'place',
  curve: 'points',
  words: 'entries',
};

/** A parameter that can be said of a setting, by the path of a script. */
export interface SayableParameter {
  readonly means: string;
  readonly title: string;
}

/** Every parameter with each member that its collection knows; a pack stays open, for no board names it. */
export function sayableParameters(catalog: Catalog): readonly SayableParameter[] {
  return [...catalog.parameters.values()].flatMap(({ name, parameter }): readonly SayableParameter[] => {
    if (parameter.kind === 'bare' || /^(own|flight|radio-club)\./.test(name)) return [];
    const { title } = parameter;
    const collection = /^(.*?)\.<[a-z]+>/.exec(name)?.[1];
    if (collection === undefined || collection === 'pack') return [{ means: name, title }];
    const members = catalog.members(collection).slice(0, mostMembers);
    return members.map((member) => ({
      means: name.replace(/<[a-z]+>/, member.name),
      title: `${title}, ${member.title}`,
    }));
  });
}

/** Collections that count their members may have very many. */
const mostMembers = 40;
