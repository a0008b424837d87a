import { commentLine, headingLine, joined, literal, namePiece, otherLine } from '../lines';
import type { Item, Line, Piece } from '../listing';
import type { Lot } from '../lot';
import { nameStyles } from '../names';
import { type ShapeMaker, underHeadings, usual } from '../shape';
import type { House } from '../values';

const jsonWord = /^(-?(0|[1-9]\d*)(\.\d+)?(e-?\d+)?|true|false|null|\[\d+(, ?\d+)*\])$/;

function valuePiece(index: number, { value }: Item): Piece {
  return { text: value.text, of: { item: index, field: 'value' } };
}

/** A value in a text that other programs read as well: what is no number or word there stands in quotes. */
function quoted(
  index: number,
  item: Item,
  isPlain: (text: string) => boolean,
  quote: string,
): readonly Piece[] {
  const value = valuePiece(index, item);
  const isBare = item.value.quote === '' && isPlain(item.value.text);
  return isBare ? [value] : [literal(quote), value, literal(quote)];
}

const jsonValue = (index: number, item: Item) => quoted(index, item, (text) => jsonWord.test(text), '"');

/** Opens and closes objects where the groups change. */
function jsonLines(items: readonly Item[], indent: string, isPlain: boolean): readonly Line[] {
  const lines: Line[] = [otherLine('{')];
  let open: readonly string[] = [];
  const close = (depth: number, next: string) => {
    for (let left = open.length; left > depth; left -= 1) {
      lines.push(otherLine(`${indent.repeat(left)}}${left === depth + 1 ? next : ''}`));
    }
    open = open.slice(0, depth);
  };
  items.forEach((item, index) => {
    const shared = item.groups.findIndex((group, step) => group !== open[step]);
    close(shared === -1 ? item.groups.length : shared, ',');
    for (const group of item.groups.slice(open.length)) {
      lines.push(headingLine(`${indent.repeat(open.length + 1)}"${group}": {`));
      open = [...open, group];
    }
    if (item.above !== null && !isPlain)
      lines.push(commentLine(`${indent.repeat(open.length + 1)}// ${item.above}`));
    lines.push({ kind: 'setting', pieces: memberOf(index, item, indent, isLastInside(items, index)) });
  });
  close(0, '');
  return [...lines, otherLine('}')];
}

/** Whether what follows closes the object in which a setting stands. */
function isLastInside(items: readonly Item[], index: number): boolean {
  const [item, next] = [items[index], items[index + 1]];
  if (item === undefined || next === undefined) return true;
  return item.groups.some((group, step) => group !== next.groups[step]);
}

function memberOf(index: number, item: Item, indent: string, isLast: boolean): readonly Piece[] {
  const before = `${indent.repeat(item.groups.length + 1)}"`;
  return joined([before, namePiece(index, item.name), '": ', jsonValue(index, item), isLast ? '' : ',']);
}

const documentLooks = ['unit', 'glued unit'] as const;

/** A JSON object, with comments or without. */
export const json: ShapeMaker = (lot) => {
  const indent = lot.one(['  ', '    ', '\t', '']);
  const isPlain = lot.chance(0.6);
  return {
    ...usual,
    styles: nameStyles,
    groups: lot.one(['none', 'one', 'nested']),
    headed: 'all',
    without: [...documentLooks],
    badValue: /"/,
    comment: isPlain ? null : '//',
    print: (items) => jsonLines(items, indent, isPlain),
  };
};

/** A JSON object on one line. */
export const jsonOnOneLine: ShapeMaker = () => ({
  ...usual,
  styles: nameStyles,
  groups: 'nested',
  headed: 'all',
  without: [...documentLooks],
  badValue: /"/,
  comment: null,
  spared: ['pager', 'overwrite'],
  print: (items) => {
    const lines = jsonLines(items, '', true);
    return [{ kind: 'setting', pieces: lines.flatMap(({ pieces }) => pieces) }];
  },
});

/** A list of objects, one a setting. */
export const jsonRows: ShapeMaker = (lot) => {
  const [id, now] = lot.one([
    ['id', 'value'],
    ['name', 'value'],
    ['key', 'val'],
  ] as const);
  const range = (item: Item) =>
    item.stated?.range == null ? '' : `, "min": ${item.stated.range.low}, "max": ${item.stated.range.high}`;
  return {
    ...usual,
    styles: nameStyles,
    without: [...documentLooks, 'list'],
    badValue: /"/,
    comment: null,
    states: ['range'],
    print: (items) => [
      otherLine('['),
      ...items.map(
        (item, index): Line => ({
          kind: 'setting',
          pieces: joined([
            `  {"${id}": "`,
            namePiece(index, item.name),
            `", "${now}": `,
            jsonValue(index, item),
            `${range(item)}}${index === items.length - 1 ? '' : ','}`,
          ]),
        }),
      ),
      otherLine(']'),
    ],
  };
};

/** What YAML takes for something else where it begins a text or stands in it. */
const yamlNeedsQuotes = /^[{[<&*!|>%@`'"#,?:-](?!\d)|^[{<]|: |:$| #|^$/;

function yamlPlain(text: string): boolean {
  if (/^\[.*\]$/.test(text)) return true;
  return text === '' || !yamlNeedsQuotes.test(text);
}

function yamlName(index: number, { name }: Item): readonly Piece[] {
  const piece = namePiece(index, name);
  return yamlPlain(name) ? [piece] : [literal('"'), piece, literal('"')];
}

/** Mappings in mappings. */
export const yaml: ShapeMaker = (lot, { quote }: House) => {
  const step = lot.one(['  ', '    ']);
  const before = lot.one([[], [otherLine('---')]]);
  return {
    ...usual,
    styles: nameStyles,
    groups: lot.one(['one', 'nested']),
    headed: 'all',
    without: [...documentLooks],
    badValue: quote === '"' ? /"/ : /'/,
    spared: ['banner', 'greeting'],
    print: (items) => [
      ...before,
      ...underHeadings(
        items,
        '#',
        (group, depth) => [headingLine(`${step.repeat(depth)}${group}:`)],
        (item, index) => {
          const value = quoted(index, item, yamlPlain, quote);
          const indent = step.repeat(item.groups.length);
          const between = item.value.text === '' && item.value.quote === '' ? ':' : ': ';
          return [{ kind: 'setting', pieces: joined([indent, yamlName(index, item), between, value]) }];
        },
      ),
    ],
  };
};

interface Columns {
  readonly group: string;
  readonly name: string;
  readonly value: string;
  readonly unit: string;
  readonly low: string;
  readonly high: string;
  readonly default: string;
}

const columnTitles: readonly Columns[] = [
  { group: 'group', name: 'name', value: 'value', unit: 'unit', low: 'min', high: 'max', default: 'default' },
  {
    group: 'section',
    name: 'setting',
    value: 'now',
    unit: 'unit',
    low: 'least',
    high: 'most',
    default: 'default',
  },
  {
    group: 'Gruppe',
    name: 'Name',
    value: 'Wert',
    unit: 'Einheit',
    low: 'Min',
    high: 'Max',
    default: 'Vorgabe',
  },
  {
    group: 'Group',
    name: 'Parameter',
    value: 'Value',
    unit: 'Unit',
    low: 'Minimum',
    high: 'Maximum',
    default: 'Default',
  },
];

type Cell = readonly Piece[];

function rowOf(mark: string, cells: readonly Cell[]): readonly Piece[] {
  return cells.flatMap((cell, index) => [...(index === 0 ? [] : [literal(mark)]), ...cell]);
}

function needsQuotes(text: string, mark: string): boolean {
  return text.includes(mark) || text.includes('\n');
}

/** A table with a heading row, its cells apart by commas, semicolons or tabs. */
export const table: ShapeMaker = (lot: Lot) => {
  const mark = lot.one([',', ';', '\t']);
  const titles = lot.one(columnTitles);
  const isGrouped = lot.chance(0.5);
  const isStated = lot.chance(0.6);
  const cell = (piece: Piece): Cell =>
    needsQuotes(piece.text, mark) ? [literal('"'), piece, literal('"')] : [piece];
  const text = (value: string) => [literal(value)];
  const cells = (item: Item, index: number): readonly Cell[] => [
    ...(isGrouped ? [text(item.groups.join(' '))] : []),
    cell(namePiece(index, item.name)),
    cell(valuePiece(index, item)),
    ...(isStated ? statedCells(item).map(text) : []),
  ];
  const statedTitles = isStated ? [titles.unit, titles.low, titles.high, titles.default] : [];
  const header = [...(isGrouped ? [titles.group] : []), titles.name, titles.value, ...statedTitles];
  return {
    ...usual,
    styles: nameStyles,
    groups: isGrouped ? 'one' : 'none',
    without: ['quoted', 'unit', 'glued unit'],
    badValue: /["\n]/,
    spared: ['banner', 'greeting'],
    comment: null,
    states: isStated ? ['range', 'default'] : [],
    print: (items) => [
      otherLine(header.join(mark)),
      ...items.map((item, index): Line => ({ kind: 'setting', pieces: rowOf(mark, cells(item, index)) })),
    ],
  };
};

function statedCells({ stated }: Item): readonly string[] {
  return ['', stated?.range?.low ?? '', stated?.range?.high ?? '', stated?.default ?? ''];
}

/** Elements with a text each, or with a name and a value as attributes, in elements that are groups. */
export const elements: ShapeMaker = (lot) => {
  const indent = lot.one(['  ', '\t', '']);
  const form = lot.one(['text', 'attributes', 'named'] as const);
  const hasRoot = lot.chance(0.7);
  const isNamed = lot.chance(0.3);
  const groups = hasRoot ? 'nested' : lot.one(['one', 'none'] as const);
  return {
    ...usual,
    styles: form === 'text' ? ['plain', 'abbreviated', 'german', 'greek'] : nameStyles,
    groups,
    headed: 'all',
    // Without groups, what holds all of them is the only one.
    without: ['unit', 'glued unit', 'quoted'],
    badValue: /[<>&"]/,
    comment: null,
    print: (items) => {
      const inner = elementLines(items, hasRoot ? 1 : 0, indent, isNamed, form);
      return hasRoot ? [otherLine('<dipper>'), ...inner, otherLine('</dipper>')] : inner;
    },
  };
};

function elementLines(
  items: readonly Item[],
  outer: number,
  indent: string,
  isNamed: boolean,
  form: 'text' | 'attributes' | 'named',
): readonly Line[] {
  const lines: Line[] = [];
  let open: readonly string[] = [];
  const before = (depth: number) => indent.repeat(outer + depth);
  const close = (depth: number) => {
    for (let left = open.length; left > depth; left -= 1)
      lines.push(otherLine(`${before(left - 1)}</${isNamed ? 'group' : open[left - 1]}>`));
    open = open.slice(0, depth);
  };
  items.forEach((item, index) => {
    const shared = item.groups.findIndex((group, step) => group !== open[step]);
    close(shared === -1 ? item.groups.length : shared);
    for (const group of item.groups.slice(open.length)) {
      lines.push(headingLine(`${before(open.length)}<${isNamed ? `group name="${group}"` : group}>`));
      open = [...open, group];
    }
    lines.push({ kind: 'setting', pieces: joined([before(open.length), elementOf(index, item, form)]) });
  });
  close(0);
  return lines;
}

function elementOf(index: number, item: Item, form: 'text' | 'attributes' | 'named'): readonly Piece[] {
  const [name, value] = [namePiece(index, item.name), valuePiece(index, item)];
  if (form === 'attributes') return joined(['<set name="', name, '" value="', value, '"/>']);
  if (form === 'named') return joined(['<set id="', name, '">', value, '</set>']);
  return joined(['<', name, '>', value, `</${item.name}>`]);
}
