import { namePiece, printedValue, settingLine, valuePieces } from '../lines';
import type { Item } from '../listing';
import { nameStyles } from '../names';
import { inTurn, oneWord, type ShapeMaker, usual } from '../shape';

/** A name, a mark, a value. */
export const pairs: ShapeMaker = (lot) => {
  const between = lot.one([' = ', '=', ': ', ' : ', ' := ', ' -> ', ' => ', ' is ', '\t', ' <- ']);
  const end = between === '\t' ? '' : lot.one(['', '', ';']);
  const comment = lot.one(['#', ';', '//', '%', '--', '~']);
  const isSpoken = between === ' is ';
  return {
    ...usual,
    styles: isSpoken ? nameStyles.filter((style) => style !== 'digits') : nameStyles,
    isExact: false,
    without: [...(isSpoken || between === '\t' ? ['empty' as const] : [])],
    badValue: end === ';' ? /;/ : null,
    comment,
    print: (items) =>
      inTurn(items, comment, (item, index) => [
        settingLine(namePiece(index, item.name), between, valuePieces(index, item), end),
      ]),
  };
};

/** A name and a value with one blank between. */
export const spaced: ShapeMaker = (lot) => {
  const comment = lot.one(['#', '%', '//']);
  return {
    ...usual,
    styles: [...oneWord, 'dots', 'slashes', 'at'],
    isExact: false,
    without: ['empty', 'text'],
    spared: ['greeting'],
    comment,
    print: (items) =>
      inTurn(items, comment, (item, index) => [
        settingLine(namePiece(index, item.name), ' ', valuePieces(index, item)),
      ]),
  };
};

/** Names and values in columns. */
export const columns: ShapeMaker = (lot) => {
  const toTheRight = lot.chance(0.3);
  const indent = lot.one(['', '  ']);
  const comment = lot.one(['#', '//', '*']);
  return {
    ...usual,
    styles: nameStyles.filter((style) => style !== 'digits'),
    isExact: false,
    without: ['empty'],
    comment,
    print: (items) => {
      const width = Math.max(...items.map(({ name }) => name.length)) + 2;
      const values = Math.max(...items.map((item) => printedValue(item).length));
      return inTurn(items, comment, (item, index) => [
        settingLine(
          indent,
          namePiece(index, item.name),
          ' '.repeat(width - item.name.length),
          toTheRight ? ' '.repeat(values - printedValue(item).length) : '',
          valuePieces(index, item),
        ),
      ]);
    },
  };
};

/** Dots or lines that lead from the name to the value. */
export const leaders: ShapeMaker = (lot) => {
  const leader = lot.one(['.', '·', '_', ' .']);
  const comment = lot.one(['#', '//', ';']);
  return {
    ...usual,
    styles: ['plain', 'german', 'french', 'greek', 'blanks', 'slashes', 'at'],
    isExact: false,
    without: ['empty'],
    comment,
    print: (items) => {
      const width = Math.max(...items.map(({ name }) => name.length)) + 8;
      return inTurn(items, comment, (item, index) => [
        settingLine(
          namePiece(index, item.name),
          leader.startsWith(' ') ? '' : ' ',
          leader.repeat(Math.floor((width - item.name.length) / leader.length)),
          ' ',
          valuePieces(index, item),
        ),
      ]);
    },
  };
};

/** The name in the board's quotes. */
export const quotedNames: ShapeMaker = (lot, { quote }) => {
  const between = lot.one([' = ', ': ', ' ', '\t']);
  return {
    ...usual,
    styles: nameStyles.filter((style) => quote === '"' || style !== 'french'),
    isExact: false,
    without: between.trim() === '' ? ['empty'] : [],
    comment: '#',
    print: (items) =>
      inTurn(items, '#', (item, index) => [
        settingLine(quote, namePiece(index, item.name), quote, between, valuePieces(index, item)),
      ]),
  };
};

/** A running number before each setting. */
export const numbered: ShapeMaker = (lot) => {
  const form = lot.one([
    { before: '', behind: ',', between: ',' },
    { before: '', behind: '  ', between: '  ' },
    { before: '#', behind: ' ', between: ' = ' },
    { before: '[', behind: '] ', between: ': ' },
    { before: '(', behind: ') ', between: ' -> ' },
    { before: '', behind: '. ', between: ': ' },
  ]);
  const first = lot.one([0, 1, 100]);
  const width = lot.one([0, 3]);
  const shown = (index: number) => String(first + index).padStart(width, '0');
  return {
    ...usual,
    styles: nameStyles.filter((style) => style !== 'digits'),
    isExact: false,
    without: form.between.trim() === '' ? ['empty'] : [],
    badValue: form.between === ',' ? /,/ : null,
    comment: lot.one([';', '//', '%']),
    spared: ['counters', 'stamps'],
    print: (items) =>
      items.map((item, index) =>
        settingLine(
          form.before,
          shown(index),
          form.behind,
          namePiece(index, item.name),
          form.between,
          valuePieces(index, item),
        ),
      ),
  };
};

/** The value in brackets behind its name. */
export const enclosed: ShapeMaker = (lot) => {
  const [open, close, bad] = lot.one([
    ['(', ')', /[()]/],
    ['{', '}', /[{}]/],
    [' <', '>', /[<>]/],
  ] as const);
  return {
    ...usual,
    styles: nameStyles,
    isExact: false,
    badValue: bad,
    print: (items) =>
      inTurn(items, '#', (item, index) => [
        settingLine(namePiece(index, item.name), open, valuePieces(index, item), close),
      ]),
  };
};

/** Names that come again, as those of servers do. */
export const repeated: ShapeMaker = (lot, house) => ({
  ...lot.one([pairs, spaced])(lot, house),
  repeats: true,
});

/** The value before its name, as on a parts list. */
export const valueFirst: ShapeMaker = (lot) => {
  const between = lot.one([' -> ', ' => ']);
  return {
    ...usual,
    styles: nameStyles.filter((style) => style !== 'digits'),
    isExact: false,
    without: ['empty', 'text', 'word'],
    print: (items: readonly Item[]) =>
      inTurn(items, '#', (item, index) => [
        settingLine(valuePieces(index, item), between, namePiece(index, item.name)),
      ]),
  };
};
