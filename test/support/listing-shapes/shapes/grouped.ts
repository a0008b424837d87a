import { commentLine, headingLine, literal, namePiece, otherLine, settingLine, valuePieces } from '../lines';
import type { Item, Line, Piece } from '../listing';
import { nameStyles } from '../names';
import { inTurn, oneWord, type Shape, type ShapeMaker, underHeadings, usual } from '../shape';

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
    spared: between.trim() === '' ? ['greeting'] : [],
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

/** Of settings under headings, with this between names and values. */
function headed(between: string): Omit<Shape, 'print'> {
  return {
    ...usual,
    styles: between === ' ' ? [...oneWord, 'dots', 'at'] : nameStyles,
    groups: 'one',
    headed: 'all',
    isExact: false,
    without: between === ' ' ? ['empty', 'text'] : [],
  };
}

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
    ...headed(between),
    spared: between === ' ' ? ['greeting'] : [],
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

/** Headings that are written as comments. */
export const commentHeadings: ShapeMaker = (lot) => {
  const mark = lot.one(['#', ';', '//', '--']);
  const [open, close] = lot.one([
    [' --- ', ' ---'],
    [' [', ']'],
    [' == ', ' =='],
    [' ', ''],
    [' ', ':'],
  ] as const);
  const isTitle = open === ' ';
  const rule = isTitle && lot.chance(0.3) ? [commentLine(mark)] : [];
  const between = lot.one([...betweens, ' ']);
  return {
    ...headed(between),
    spared: ['greeting', 'banner'],
    comment: isTitle ? null : mark,
    print: (items) =>
      underHeadings(
        items,
        isTitle ? null : mark,
        (group) => [...rule, headingLine(`${mark}${open}${group}${close}`), ...rule],
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
    styles: between === ' ' ? oneWord : nameStyles.filter((style) => style !== 'digits'),
    groups: 'nested',
    headed: 'all',
    isExact: false,
    without: between === ' ' ? ['empty', 'text'] : ['empty'],
    spared: ['greeting'],
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
    styles: nameStyles.filter((style) => style !== 'digits'),
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

/** Headings with the whole path of their group. */
export const pathHeadings: ShapeMaker = (lot) => {
  const [open, step, close] = lot.one([
    ['[', '.', ']'],
    ['[', '/', ']'],
    ['== ', ' / ', ' =='],
  ] as const);
  const between = lot.one([...betweens]);
  return {
    ...usual,
    styles: nameStyles,
    groups: 'nested',
    headed: 'all',
    isExact: false,
    print: (items) =>
      items.flatMap((item, index): readonly Line[] => {
        const path = item.groups.join(step);
        const isNew = path !== '' && path !== items[index - 1]?.groups.join(step);
        return [
          ...(isNew ? [headingLine(`${open}${path}${close}`)] : []),
          settingLine(namePiece(index, item.name), between, valuePieces(index, item)),
        ];
      }),
  };
};

/** Groups in braces, one in the other. */
export const braces: ShapeMaker = (lot) => {
  const step = lot.one(['  ', '\t', '']);
  const between = lot.one([' = ', ': ', ' ']);
  const end = lot.one(['', ';']);
  return {
    ...usual,
    styles: between === ' ' ? oneWord : nameStyles.filter((style) => style !== 'digits'),
    groups: 'nested',
    headed: 'all',
    isExact: false,
    without: between === ' ' ? ['empty', 'text'] : ['empty'],
    badValue: /[{};]/,
    spared: between === ' ' ? ['greeting'] : [],
    print: (items) =>
      bracedLines(items, step, (item, index) => [
        settingLine(
          step.repeat(item.groups.length),
          namePiece(index, item.name),
          between,
          valuePieces(index, item),
          end,
        ),
      ]),
  };
};

function bracedLines(
  items: readonly Item[],
  step: string,
  write: (item: Item, index: number) => readonly Line[],
): readonly Line[] {
  let open: readonly string[] = [];
  const closed = (depth: number): readonly Line[] =>
    open.slice(depth).map((_, index) => otherLine(`${step.repeat(open.length - 1 - index)}}`));
  const lines = items.flatMap((item, index) => {
    const shared = item.groups.findIndex((group, depth) => group !== open[depth]);
    const depth = shared === -1 ? item.groups.length : shared;
    const before = closed(depth);
    const opened = item.groups
      .slice(depth)
      .map((group, at) => headingLine(`${step.repeat(depth + at)}${group} {`));
    open = item.groups;
    return [...before, ...opened, ...write(item, index)];
  });
  return [...lines, ...closed(0)];
}

/** Groups in braces in one line, or with settings beside the braces. */
export const inlineBraces: ShapeMaker = (lot) => {
  const between = lot.one([' = ', ': ', ' ']);
  const mark = lot.one([';', ',']);
  const behind = between === ': ' ? lot.one(['', ':']) : '';
  // A list may hold the mark, and one group would be on many lines.
  const gap = mark === ';' ? lot.one([' ', ' ', '\n    ']) : ' ';
  return {
    ...usual,
    styles: oneWord,
    groups: 'nested',
    headed: 'all',
    isExact: false,
    without: ['empty', 'text', 'list', 'tuple', 'unit'],
    badValue: /[{};,]/,
    spared: ['greeting', 'stamps', 'counters', 'pager', 'overwrite'],
    comment: null,
    print: (items) => linesOfPieces(inlinePieces(items, between, mark, behind, gap)),
  };
};

function inlinePieces(
  items: readonly Item[],
  between: string,
  mark: string,
  behind: string,
  gap: string,
): readonly Piece[] {
  let open: readonly string[] = [];
  const pieces = items.flatMap((item, index) => {
    const different = item.groups.findIndex((group, depth) => group !== open[depth]);
    const depth = different === -1 ? item.groups.length : different;
    const closed = ' }'.repeat(Math.max(0, open.length - depth));
    const isNewLine = depth === 0 && index > 0;
    const before = closed + (isNewLine ? '\n' : index === 0 ? '' : gap);
    const opened = item.groups.slice(depth).map((group) => `${group}${behind} { `);
    open = item.groups;
    const next = items[index + 1];
    const isLast = next === undefined || item.groups.some((group, at) => next.groups[at] !== group);
    return [
      literal(before + opened.join('')),
      namePiece(index, item.name),
      literal(between),
      ...valuePieces(index, item),
      literal(isLast || item.groups.length === 0 ? '' : mark),
    ];
  });
  return [...pieces, literal(' }'.repeat(open.length))];
}

function linesOfPieces(pieces: readonly Piece[]): readonly Line[] {
  const lines: Piece[][] = [[]];
  for (const piece of pieces) {
    const [first = '', ...more] = piece.text.split('\n');
    lines.at(-1)?.push({ ...piece, text: first });
    for (const text of more) lines.push([{ ...piece, text }]);
  }
  return lines.map((line) => settingLine(line));
}
