import type { Bundle } from '../../src/catalog/model/bundle';
import { unitTable } from '../../src/units/unit-table';
import { allProse } from './prose';

/** A number in an explanation has its unit as a script would write it: `160 us`, and not `160 µs` or `160 microseconds`. */
export function unitSpellingProblems(bundle: Bundle): readonly string[] {
  return allProse(bundle).flatMap(({ at, text }) =>
    [...text.matchAll(/\d\s?([A-Za-zµμ°ΩΩ]{2,}|[µμ°ΩΩ])/g)].flatMap(([written, unit = '']) => {
      const meant = misspelt(unit);
      return meant === undefined ? [] : [`${at}: "${written}" should have its unit as ${meant}`];
    }),
  );
}

const symbols = new Set(unitTable.map(({ symbol }) => symbol));

/** Names and other letter cases by which a symbol can be missed. Bytes are counted in words: "2 bytes". */
const meantBy = new Map(
  unitTable
    .filter(({ name }) => name !== 'byte')
    .flatMap(({ symbol, name }) => [
      [symbol.toLowerCase(), symbol],
      [name.toLowerCase(), symbol],
      [`${name.toLowerCase()}s`, symbol],
    ]),
);

function misspelt(unit: string): string | undefined {
  if (symbols.has(unit)) return undefined;
  if (/[µμ]/.test(unit)) return 'u with the letters of the table';
  if (/[°ΩΩ]/.test(unit)) return 'deg, degC or ohm';
  return meantBy.get(unit.toLowerCase());
}
