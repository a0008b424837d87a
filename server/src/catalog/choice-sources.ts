import type { Catalog } from './catalog';
import type { CitedSource } from './model/common';
import type { ChoiceSource, Parameter } from './model/parameter';

/**
 * Where the figures behind a word come from, for words that name a row of the hardware tables: a link, a
 * chemistry, a region … Empty for all others.
 */
export function choiceSources(catalog: Catalog, parameter: Parameter, word: string): readonly CitedSource[] {
  if (parameter.kind !== 'word' && parameter.kind !== 'words') return [];
  const { choicesFrom, name } = parameter;
  const found =
    choicesFrom === undefined ? sameName(catalog, name, word) : tables[choicesFrom]?.(catalog, word);
  if (found === undefined) return [];
  const different = new Map(found.map((source) => [`${source.text} ${source.date ?? ''}`, source]));
  return [...different.values()];
}

type Sourced = { readonly source?: CitedSource | undefined } | undefined;

/** A parameter with words of its own may still mean a row by one: a link made for its group, or a grid. */
function sameName(catalog: Catalog, parameter: string, word: string): readonly CitedSource[] {
  const use = parameter.slice(0, parameter.indexOf('.'));
  const link = catalog.link(word);
  const fitting = link?.uses.some((other) => other === use) === true ? link : undefined;
  return [...one(fitting), ...(parameter === 'video.standard' ? one(catalog.grid(word)) : [])];
}

function one(row: Sourced): readonly CitedSource[] {
  return row?.source === undefined ? [] : [row.source];
}

const tables: Partial<Record<ChoiceSource, (catalog: Catalog, word: string) => readonly CitedSource[]>> = {
  boards: (catalog, word) => one(catalog.board(word)),
  chemistries: (catalog, word) => one(catalog.chemistry(word)),
  links: (catalog, word) => one(catalog.link(word)),
  signals: (catalog, word) => one(catalog.signal(word)),
  grids: (catalog, word) => one(catalog.grid(word)),
  'video-bands': (catalog, word) => one(catalog.videoBand(word)),
  regions: (catalog, word) => catalog.region(word)?.permits.map(({ source }) => source) ?? [],
};
