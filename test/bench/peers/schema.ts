import type { Catalog } from '../../../server/src/catalog/catalog';
import type { KnownParameter } from '../../../server/src/catalog/known-parameter';
import { isPlaceholder } from '../../../server/src/catalog/path-tree';
import { fromBase, unitOf } from '../../../server/src/units/unit';

/** As much of JSON Schema as equal work needs. */
export interface Schema {
  readonly $schema?: string;
  readonly type?: string;
  readonly description?: string;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly enum?: readonly string[];
  readonly properties?: Record<string, Schema>;
  additionalProperties?: boolean | Schema;
}

type Branch = Schema & { readonly properties: Record<string, Schema> };

/** The whole catalogue for general-purpose servers: names, ranges and words, each with what a hover would tell. */
export function equalSchema(catalog: Catalog, packs: readonly string[]): Schema {
  const root: Branch = { $schema: 'http://json-schema.org/draft-07/schema#', ...branch() };
  for (const known of catalog.parameters.values()) {
    const parent = known.words.slice(0, -1).reduce(below, root);
    parent.properties[known.words.at(-1) ?? ''] = valueSchema(catalog, known, packs);
  }
  return root;
}

function branch(): Branch {
  return { type: 'object', properties: {}, additionalProperties: false };
}

/** The branch below one for a word of a name; a word that pilots choose may be any. */
function below(at: Branch, word: string): Branch {
  if (!isPlaceholder(word)) {
    const known = at.properties[word] as Branch | undefined;
    if (known?.properties !== undefined) return known;
    const made = branch();
    at.properties[word] = made;
    return made;
  }
  if (typeof at.additionalProperties === 'object') return at.additionalProperties as Branch;
  const made = branch();
  at.additionalProperties = made;
  return made;
}

function valueSchema(
  catalog: Catalog,
  { parameter, range, unit }: KnownParameter,
  packs: readonly string[],
): Schema {
  const description = `${parameter.title}. ${parameter.summary} ${parameter.risk}`;
  if (parameter.kind === 'count' && range !== undefined)
    return { type: 'integer', description, minimum: range.low, maximum: range.high };
  if (parameter.kind === 'quantity' && range !== undefined && unit !== undefined) {
    const [minimum, maximum] = [range.low, range.high].map((end) => fromBase(end, unitOf(unit)));
    return { type: 'number', description, minimum: minimum ?? 0, maximum: maximum ?? 0 };
  }
  if (parameter.kind === 'word') {
    const words =
      parameter.choicesFrom === 'packs' ? packs : catalog.choices(parameter).map(({ name }) => name);
    return words.length === 0 ? { type: 'string', description } : { enum: words, description };
  }
  return { description };
}
