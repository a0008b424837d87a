import { namePiece, printedValue, settingLine, valuePieces } from '../lines';
import type { Item, StatedTruth } from '../listing';
import type { Lot } from '../lot';
import { nameStyles } from '../names';
import { inTurn, oneWord, type ShapeMaker, usual } from '../shape';

type Parts = { readonly [Part in keyof StatedTruth]: (stated: NonNullable<StatedTruth[Part]>) => string };

interface Wording extends Parts {
  /** Between the value and what is said of it, and between what is said. */
  readonly gap: string;
}

const rangeForms: readonly Parts['range'][] = [
  ({ low, high }) => `[${low}..${high}]`,
  ({ low, high }) => `(${low} to ${high})`,
  ({ low, high }) => `[${low} - ${high}]`,
  ({ low, high }) => `min ${low} max ${high}`,
  ({ low, high }) => `(min: ${low}, max: ${high})`,
  ({ low, high }) => `range ${low}..${high}`,
  ({ low, high }) => `${low} … ${high}`,
];

const wordForms: readonly Parts['words'][] = [
  (words) => `(${words.join(' | ')})`,
  (words) => `{${words.join(',')}}`,
  (words) => `one of ${words.join(', ')}`,
  (words) => `[${words.join('/')}]`,
  (words) => `<${words.join('|')}>`,
];

const defaultForms: readonly Parts['default'][] = [
  (value) => `default ${value}`,
  (value) => `(default: ${value})`,
  (value) => `default=${value}`,
  (value) => `[default ${value}]`,
];

function wordingBy(lot: Lot, remark: string): Wording {
  return {
    gap: lot.one([' ', '  ', '\t']),
    range: lot.one(rangeForms),
    words: lot.one(wordForms),
    default: lot.one(defaultForms),
    remark: (text) => `${remark} ${text}`,
  };
}

function said(stated: Item['stated'], wording: Wording): string {
  if (stated === null) return '';
  const parts = [
    stated.range === null ? null : wording.range(stated.range),
    stated.words === null ? null : wording.words(stated.words),
    stated.default === null ? null : wording.default(stated.default),
    stated.remark === null ? null : wording.remark(stated.remark),
  ];
  return parts.flatMap((part) => (part === null ? [] : [`${wording.gap}${part}`])).join('');
}

/** Ranges, words, defaults, remarks behind the value. */
export const stated: ShapeMaker = (lot) => {
  const comment = lot.one(['#', '//', ';']);
  const wording = wordingBy(lot, comment);
  const between = lot.one([' = ', ': ', ' := ', ' ']);
  return {
    ...usual,
    styles: between === ' ' ? oneWord : nameStyles.filter((style) => style !== 'digits'),
    isExact: false,
    without: ['empty', 'text', 'list', 'tuple'],
    badValue: /[;#]|\/\//,
    spared: between === ' ' ? ['greeting'] : [],
    comment,
    states: ['range', 'words', 'default', 'remark'],
    print: (items) =>
      inTurn(items, comment, (item, index) => [
        settingLine(
          namePiece(index, item.name),
          between,
          valuePieces(index, item),
          said(item.stated, wording),
        ),
      ]),
  };
};

/** Ranges, words and defaults in brackets between a name and its value. */
export const saidBefore: ShapeMaker = (lot) => {
  const [open, close] = lot.one([
    ['(', ')'],
    ['[', ']'],
    ['<', '>'],
  ] as const);
  const to = lot.one(['..', '-', ' to ', ' … ']);
  const bar = lot.one(['|', ' | ']);
  const between = lot.one([' = ', ': ', ' := ', ' ', '  ']);
  const isLoose = between.trim() === '';
  const said = (stated: Item['stated']) =>
    [
      stated?.range == null ? null : stated.range.low + to + stated.range.high,
      stated?.words == null ? null : stated.words.join(bar),
      stated?.default == null ? null : `default ${stated.default}`,
    ].flatMap((part) => (part === null ? [] : [` ${open}${part}${close}`]));
  return {
    ...usual,
    styles: isLoose ? oneWord : nameStyles.filter((style) => style !== 'digits'),
    isExact: false,
    without: ['empty', 'text', 'list', 'tuple', 'unit', 'glued unit'],
    spared: isLoose ? ['greeting'] : [],
    states: ['range', 'words', 'default'],
    print: (items) =>
      inTurn(items, '#', (item, index) => [
        settingLine(
          namePiece(index, item.name),
          said(item.stated).join(''),
          between,
          valuePieces(index, item),
        ),
      ]),
  };
};

/** Attributes of one thing a line. */
export const attributes: ShapeMaker = (lot, { quote }) => {
  const [id, now] = lot.one([
    ['id', 'val'],
    ['name', 'value'],
    ['key', 'now'],
  ] as const);
  const [open, close] = lot.one([
    ['', ''],
    ['<item ', '/>'],
    ['- ', ''],
    ['{', '}'],
  ] as const);
  const range = lot.one([null, ['min', 'max'], ['from', 'to']] as const);
  const attribute = (name: string, value: string) => ` ${name}=${quote}${value}${quote}`;
  return {
    ...usual,
    styles: nameStyles.filter((style) => quote === '"' || style !== 'french'),
    isExact: false,
    without: ['quoted', 'unit', 'glued unit'],
    badValue: quote === '"' ? /"/ : /'/,
    comment: null,
    states: range === null ? [] : ['range'],
    print: (items) =>
      items.map((item, index) =>
        settingLine(
          `${open}${id}=${quote}`,
          namePiece(index, item.name),
          `${quote} ${now}=${quote}`,
          valuePieces(index, item),
          quote,
          range === null || item.stated?.range == null
            ? ''
            : attribute(range[0], item.stated.range.low) + attribute(range[1], item.stated.range.high),
          close,
        ),
      ),
  };
};

/** A table drawn with bars. */
export const bars: ShapeMaker = (lot) => {
  const corner = lot.one(['|', '+']);
  const titles = lot.one([
    ['name', 'value'],
    ['setting', 'now'],
    ['Name', 'Wert'],
    ['parameter', 'value'],
  ] as const);
  const isOpen = lot.chance(0.3);
  return {
    ...usual,
    styles: nameStyles,
    isExact: false,
    badValue: /\|/,
    comment: null,
    print: (items) => {
      const names = Math.max(titles[0].length, ...items.map(({ name }) => name.length));
      const values = Math.max(titles[1].length, ...items.map((item) => printedValue(item).length));
      const edge = isOpen ? '' : '| ';
      const end = isOpen ? '' : ' |';
      const between = ' | ';
      const rule = [names, values].map((width) => '-'.repeat(width + (isOpen ? 1 : 2))).join(corner);
      return [
        heading(`${edge}${titles[0].padEnd(names)}${between}${titles[1].padEnd(values)}${end}`),
        heading(isOpen ? rule : `${corner}${rule}${corner}`),
        ...items.map((item, index) =>
          settingLine(
            edge,
            namePiece(index, item.name),
            ' '.repeat(names - item.name.length),
            between,
            valuePieces(index, item),
            ' '.repeat(values - printedValue(item).length),
            end,
          ),
        ),
      ];
    },
  };
};

function heading(text: string) {
  return { kind: 'other', pieces: [{ text, of: null }] } as const;
}

/** Columns of blanks under a heading row. */
export const headedColumns: ShapeMaker = (lot) => {
  const titles = lot.one([
    ['NAME', 'VALUE', 'DEFAULT'],
    ['setting', 'now', 'default'],
    ['Parameter', 'Value', 'Default'],
  ] as const);
  const isRuled = lot.chance(0.5);
  return {
    ...usual,
    styles: nameStyles.filter((style) => style !== 'digits'),
    isExact: false,
    without: ['empty', 'unit', 'glued unit'],
    comment: null,
    states: ['default'],
    print: (items) => {
      const names = Math.max(titles[0].length, ...items.map(({ name }) => name.length)) + 2;
      const values = Math.max(titles[1].length, ...items.map((item) => printedValue(item).length)) + 2;
      return [
        heading(`${titles[0].padEnd(names)}${titles[1].padEnd(values)}${titles[2]}`),
        ...(isRuled ? [heading(titles.map((title) => '-'.repeat(title.length)).join('  '))] : []),
        ...items.map((item, index) =>
          settingLine(
            namePiece(index, item.name),
            ' '.repeat(names - item.name.length),
            valuePieces(index, item),
            item.stated?.default == null
              ? ''
              : ' '.repeat(values - printedValue(item).length) + item.stated.default,
          ),
        ),
      ];
    },
  };
};
