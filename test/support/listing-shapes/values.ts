import type { Value } from './listing';
import type { Lot } from './lot';
import { choices, textWords, units } from './words';

export const looks = [
  'whole',
  'negative',
  'decimal',
  'flag',
  'word',
  'quoted',
  'list',
  'tuple',
  'exponent',
  'hex',
  'binary',
  'thousands',
  'glued unit',
  'unit',
  'text',
  'version',
  'date',
  'time',
  'zeros',
  'empty',
] as const;

export type Look = (typeof looks)[number] | 'presence';

/** How one board writes what could be written in several ways. */
export interface House {
  readonly decimal: '.' | ',';
  readonly thousands: string;
  readonly quote: '"' | "'";
  readonly flags: readonly [on: string, off: string];
  readonly list: { readonly open: string; readonly between: string; readonly close: string };
  readonly tuple: { readonly open: string; readonly between: string; readonly close: string };
  readonly hex: 'upper' | 'lower';
  readonly units: readonly string[];
}

const flagPairs = [
  ['on', 'off'],
  ['yes', 'no'],
  ['true', 'false'],
  ['1', '0'],
  ['enabled', 'disabled'],
  ['lit', 'dark'],
] as const;

export function houseBy(lot: Lot): House {
  const decimal = lot.chance(0.25) ? ',' : '.';
  const between = decimal === ',' ? '; ' : lot.one([', ', ',']);
  return {
    decimal,
    thousands: decimal === ',' ? '.' : lot.one([',', "'"]),
    quote: lot.one(['"', "'"]),
    flags: lot.one(flagPairs),
    list: lot.one([
      { open: '', between, close: '' },
      { open: '[', between, close: ']' },
      { open: '', between: ' ', close: '' },
      { open: '{', between: ' ', close: '}' },
    ]),
    tuple: lot.one([
      { open: '(', between, close: ')' },
      { open: '<', between: ';', close: '>' },
    ]),
    hex: lot.one(['upper', 'lower']),
    units: lot.some(units, 3),
  };
}

function decimal(house: House, lot: Lot): string {
  return `${lot.whole(90)}${house.decimal}${lot.whole(90) + 10}`;
}

function several(marks: House['list'], count: number, one: () => string): string {
  return marks.open + Array.from({ length: count }, one).join(marks.between) + marks.close;
}

const pad = (number: number, length: number) => String(number).padStart(length, '0');

function hex({ hex }: House, lot: Lot): string {
  const digits = (lot.whole(4000) + 10).toString(16);
  return `0x${hex === 'upper' ? digits.toUpperCase() : digits}`;
}

const drawn: Readonly<Record<Exclude<Look, 'presence'>, (house: House, lot: Lot) => string>> = {
  whole: (_, lot) => String(lot.whole(9000)),
  negative: (_, lot) => `-${lot.whole(90) + 1}`,
  decimal: (house, lot) => decimal(house, lot),
  flag: ({ flags }, lot) => lot.one(flags),
  word: (_, lot) => lot.one(choices),
  quoted: (_, lot) => lot.some(textWords, 2).join(' '),
  list: ({ list }, lot) => several(list, 2 + lot.whole(4), () => String(lot.whole(500))),
  tuple: ({ tuple }, lot) => several(tuple, 2 + lot.whole(2), () => String(lot.whole(500))),
  exponent: ({ decimal }, lot) => `${1 + lot.whole(9)}${decimal}${lot.whole(9)}e-${1 + lot.whole(6)}`,
  hex: (house, lot) => hex(house, lot),
  binary: (_, lot) => `0b${pad(Number(lot.whole(200).toString(2)), 8)}`,
  thousands: ({ thousands }, lot) => `${1 + lot.whole(90)}${thousands}${pad(lot.whole(1000), 3)}`,
  'glued unit': (_, lot) => String(lot.whole(900)),
  unit: (_, lot) => String(lot.whole(900)),
  text: (_, lot) => lot.some(textWords, 3).join(' '),
  version: (_, lot) => `${lot.whole(9)}.${lot.whole(20)}.${lot.whole(20)}`,
  date: (_, lot) =>
    `20${pad(30 + lot.whole(60), 2)}-${pad(1 + lot.whole(12), 2)}-${pad(1 + lot.whole(28), 2)}`,
  time: (_, lot) => `${pad(lot.whole(24), 2)}:${pad(lot.whole(60), 2)}:${pad(lot.whole(60), 2)}`,
  zeros: (_, lot) => pad(lot.whole(100), 4),
  empty: () => '',
};

function unitOf(look: Look, house: House, lot: Lot): Value['unit'] {
  if (look === 'unit') return { text: lot.one(house.units), gap: ' ' };
  return look === 'glued unit' ? { text: lot.one(house.units), gap: '' } : null;
}

export function valueIn(look: Look, house: House, lot: Lot): Value {
  if (look === 'presence') return { look, text: lot.one(['on', 'off']), quote: '', unit: null };
  const quote = look === 'quoted' ? house.quote : '';
  return { look, text: drawn[look](house, lot), quote, unit: unitOf(look, house, lot) };
}
