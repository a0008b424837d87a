import type { Bundle } from '../../src/catalog/model/bundle';
import { repeated } from './places';

/** Concepts and parameters of the trade's words that there are not, and concepts that stand twice. */
export function tradeWordProblems({ tradeWords, parameters }: Bundle): readonly string[] {
  const concepts = tradeWords.concepts.map(({ concept }) => concept);
  const known = new Set(concepts);
  const named = [
    ...tradeWords.concepts.flatMap(({ near = [], madeOf = [] }) => [...near, ...madeOf]),
    ...tradeWords.opposites.flat(),
  ];
  const names = new Set(parameters.flatMap((file) => file.parameters.map(({ name }) => name)));
  const said = (what: string) => `schemas/trade-words.json: ${what}`;
  return [
    ...repeated(concepts).map((one) => said(`the concept ${one} stands there twice`)),
    ...[...new Set(named)].filter((one) => !known.has(one)).map((one) => said(`there is no concept ${one}`)),
    ...Object.keys(tradeWords.said)
      .filter((one) => !names.has(one))
      .map((one) => said(`there is no parameter ${one}`)),
  ];
}
