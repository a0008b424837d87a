import { literal, namePiece, settingLine, valuePieces } from '../lines';
import type { Item, Line, Piece } from '../listing';
import { inTurn, oneWord, type ShapeMaker, usual } from '../shape';
import { type Look, looks } from '../values';

function chunksOf(items: readonly Item[], size: number): readonly (readonly number[])[] {
  const chunks: number[][] = [];
  items.forEach((item, index) => {
    const last = chunks.at(-1);
    const before = items[last?.[0] ?? -1];
    const isSame = before !== undefined && before.groups.join('\n') === item.groups.join('\n');
    if (last === undefined || last.length >= size || !isSame) chunks.push([index]);
    else last.push(index);
  });
  return chunks;
}

/** Several settings on one line. */
export const severalSettings: ShapeMaker = (lot) => {
  const [equals, between, bad] = lot.one([
    ['=', ' ', /\s|^$/],
    ['=', ', ', /,|^$/],
    [' = ', '; ', /;|^$/],
    [': ', ', ', /,|^$/],
    ['=', ' | ', /\||^$/],
    [':', '  ', /\s|^$/],
  ] as const);
  const size = 2 + lot.whole(4);
  const isGrouped = lot.chance(0.4) && !equals.startsWith(':');
  return {
    ...usual,
    styles: [...oneWord, 'dots', 'at'],
    groups: isGrouped ? 'one' : 'none',
    isExact: false,
    badValue: bad,
    print: (items) =>
      chunksOf(items, size).map((chunk) => lineOf(items, chunk, isGrouped ? ': ' : null, equals, between)),
  };
};

function lineOf(
  items: readonly Item[],
  chunk: readonly number[],
  /** What stands behind the group; null: no group is printed. */
  behind: string | null,
  equals: string,
  between: string,
): Line {
  const groups = items[chunk[0] ?? 0]?.groups ?? [];
  const settings = chunk.flatMap((index, place): readonly Piece[] => {
    const item = items[index];
    if (item === undefined) return [];
    return [
      literal(place === 0 ? '' : between),
      namePiece(index, item.name),
      literal(equals),
      ...valuePieces(index, item),
    ];
  });
  return settingLine(behind === null ? '' : groups.join(' ') + behind, settings);
}

/** A word, then several settings of it; here and there a setting that stands alone. */
export const ledSettings: ShapeMaker = (lot) => {
  const [behind, equals, between] = lot.one([
    [' ', '=', ' '],
    [' ', '=', ', '],
    [' ', ' ', ' '],
    [': ', ' ', ' '],
    [': ', '=', ' '],
    [': ', ':', ' '],
    [' = ', ':', ' '],
    ['  ', ':', '  '],
    [' - ', '=', '; '],
  ] as const);
  const size = 2 + lot.whole(4);
  return {
    ...usual,
    styles: oneWord,
    groups: 'one',
    isExact: false,
    without: looks.filter((look) => !sureLooks.includes(look)),
    badValue: /[,;:]/,
    spared: ['greeting'],
    print: (items) => chunksOf(items, size).map((chunk) => lineOf(items, chunk, behind, equals, between)),
  };
};

/** Such as no name is: a word beside names would be another. */
const sureLooks: readonly Look[] = ['whole', 'negative', 'decimal', 'flag', 'hex', 'zeros'];

/** Most settings have several values. */
export const severalValues: ShapeMaker = (lot) => {
  const between = lot.one([' ', ': ', ' = ', '\t']);
  const comment = lot.one(['#', '//']);
  return {
    ...usual,
    styles: oneWord,
    without: ['empty', 'text', 'unit', 'tuple', 'quoted'],
    own: ['list', 'list', 'list'],
    spared: between.trim() === '' ? ['greeting'] : [],
    comment,
    print: (items) =>
      inTurn(items, comment, (item, index) => [
        settingLine(namePiece(index, item.name), between, valuePieces(index, item)),
      ]),
  };
};

/** Words that stand for themselves, beside settings that have a value. */
export const bareWords: ShapeMaker = (lot) => {
  const negation = lot.one(['-', '!', '~']);
  const perLine = lot.one([1, 4]);
  const between = lot.one([' = ', ': ']);
  return {
    ...usual,
    styles: oneWord,
    without: ['empty'],
    own: ['presence', 'presence', 'presence', 'presence', 'presence', 'presence', 'presence'],
    comment: null,
    spared: ['greeting'],
    print: (items) => {
      const isBare = (index: number) => items[index]?.value.look === 'presence';
      const runs = chunksOf(
        items.map((item, index) => ({ ...item, groups: [isBare(index) ? 'bare' : `${index}`] })),
        perLine,
      );
      return runs.map((run) =>
        settingLine(
          run.flatMap((index, place): readonly Piece[] => {
            const item = items[index];
            if (item === undefined) return [];
            if (!isBare(index))
              return [namePiece(index, item.name), literal(between), ...valuePieces(index, item)];
            return [
              literal(`${place === 0 ? '' : ' '}${item.value.text === 'off' ? negation : ''}`),
              namePiece(index, item.name),
            ];
          }),
        ),
      );
    },
  };
};

/** Plain settings, settings of numbered members and settings with several values in one listing. */
export const mixedForms: ShapeMaker = (lot) => {
  const between = lot.one([' = ', ': ', ' := ']);
  const [open, close] = lot.one([
    ['[', ']'],
    ['(', ')'],
    [' #', ''],
  ] as const);
  return {
    ...usual,
    styles: oneWord,
    isExact: false,
    without: ['empty'],
    own: ['list', 'tuple'],
    dressed: (name, own) => (own.chance(0.4) ? `${name}${open}${own.whole(4)}${close}` : name),
    comment: ';',
    print: (items) =>
      inTurn(items, ';', (item, index) => [
        settingLine(namePiece(index, item.name), between, valuePieces(index, item)),
      ]),
  };
};

/** Values that go on in the next line. */
export const continued: ShapeMaker = (lot) => {
  const isMarked = lot.chance(0.6);
  const between = lot.one([' = ', ': ']);
  return {
    ...usual,
    styles: [...oneWord, 'dots', 'blanks'],
    isExact: false,
    without: ['empty'],
    own: ['text', 'text', 'list'],
    spared: ['stamps', 'counters', 'pager', 'overwrite'],
    print: (items) =>
      inTurn(items, '#', (item, index) => {
        const { value } = item;
        const cut = value.look === 'text' ? value.text.indexOf(' ') : -1;
        if (cut === -1) return [settingLine(namePiece(index, item.name), between, valuePieces(index, item))];
        const of = { item: index, field: 'value' } as const;
        return [
          settingLine(
            namePiece(index, item.name),
            between,
            { text: value.text.slice(0, cut), of },
            isMarked ? ' \\' : '',
          ),
          settingLine('    ', { text: value.text.slice(cut + 1), of }),
        ];
      }),
  };
};
