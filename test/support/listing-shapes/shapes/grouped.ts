import { headingLine, namePiece, settingLine, valuePieces } from '../lines';
import { everyStyle, inTurn, oneWord, type ShapeMaker, underHeadings, usual } from '../shape';

const betweens = [' = ', '=', ': ', ' : ', ' := '] as const;

/** Groups as a path before the name. */
export const paths: ShapeMaker = (lot) => {
  const step = lot.one(['/', '.', '::', ' > ', ':']);
  const between = step === ':' ? ' = ' : lot.one([' = ', '=', '\t', ' ']);
  return {
    ...usual,
    styles: oneWord,
    groups: 'nested',
    isExact: false,
    without: between.trim() === '' ? ['empty', 'text'] : [],
    print: (items) =>
      inTurn(items, '#', (item, index) => [
        settingLine(
          item.groups.map((group) => `${group}${step}`).join(''),
          namePiece(index, item.name),
          between,
          valuePieces(index, item),
        ),
      ]),
  };
};

/** The group before the name, marked off otherwise than the value. */
export const groupBefore: ShapeMaker = (lot) => {
  const [behind, between] = lot.one([
    [': ', ' -> '],
    [': ', ' = '],
    ['\t', '\t'],
    ['|', '|'],
    [' ', ' -> '],
    ['> ', ': '],
  ] as const);
  return {
    ...usual,
    styles: behind === ' ' ? oneWord : ['plain', 'abbreviated', 'german', 'french', 'greek', 'blanks', 'at'],
    groups: 'one',
    isExact: false,
    without: between === '\t' || between === '|' ? ['empty'] : [],
    comment: '#',
    print: (items) =>
      inTurn(items, '#', (item, index) => [
        settingLine(
          item.groups.join(' '),
          behind,
          namePiece(index, item.name),
          between,
          valuePieces(index, item),
        ),
      ]),
  };
};

/** Headings in brackets or between marks. */
export const brackets: ShapeMaker = (lot) => {
  const [open, close] = lot.one([
    ['[', ']'],
    ['== ', ' =='],
    ['<', '>'],
    ['*** ', ' ***'],
    ['--- ', ' ---'],
    ['{ ', ' }'],
  ] as const);
  const between = lot.one([...betweens, ' ']);
  const comment = lot.one(['#', ';', '//']);
  return {
    ...usual,
    styles: between === ' ' ? [...oneWord, 'dots', 'at'] : everyStyle,
    groups: 'one',
    headed: 'all',
    isExact: false,
    without: between === ' ' ? ['empty', 'text'] : [],
    comment,
    print: (items) =>
      underHeadings(
        items,
        comment,
        (group) => [headingLine(`${open}${group}${close}`)],
        (item, index) => [settingLine(namePiece(index, item.name), between, valuePieces(index, item))],
      ),
  };
};

/** Groups by how far a line is moved in. */
export const indented: ShapeMaker = (lot) => {
  const step = lot.one(['  ', '    ', '\t']);
  const between = lot.one([' = ', ': ', ' := ', ' ']);
  const behind = between === ': ' ? ':' : lot.one(['', ':']);
  return {
    ...usual,
    styles: between === ' ' ? oneWord : everyStyle.filter((style) => style !== 'digits'),
    groups: 'nested',
    headed: 'all',
    isExact: false,
    without: between === ' ' ? ['empty', 'text'] : ['empty'],
    print: (items) =>
      underHeadings(
        items,
        '#',
        (group, depth) => [headingLine(`${step.repeat(depth)}${group}${behind}`)],
        (item, index) => [
          settingLine(
            step.repeat(item.groups.length),
            namePiece(index, item.name),
            between,
            valuePieces(index, item),
          ),
        ],
      ),
  };
};

/** Headings as a person says them. */
export const spokenHeadings: ShapeMaker = (lot) => {
  const before = lot.one(['in ', 'for ', 'section ']);
  const indent = lot.one(['', '  ']);
  const between = lot.one([' = ', ' is ', ' := ']);
  return {
    ...usual,
    styles: everyStyle.filter((style) => style !== 'digits'),
    groups: 'one',
    headed: 'all',
    isExact: false,
    without: ['empty'],
    print: (items) =>
      underHeadings(
        items,
        '#',
        (group) => [headingLine(`${before}${group}:`)],
        (item, index) => [
          settingLine(indent, namePiece(index, item.name), between, valuePieces(index, item)),
        ],
      ),
  };
};
