/** A made-up settings listing: its text, and what each of its settings lines says. */
export interface Listing {
  readonly shape: string;
  readonly text: string;
  readonly settings: readonly Said[];
}

/** A setting with the number of its line (0-based). */
export interface Said {
  readonly line: number;
  readonly group: string;
  readonly name: string;
  readonly value: string;
}

/** Numbers that look drawn by lot and are the same each time. Source: mulberry32, public domain. */
function lots(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

const groups = ['rudder', 'kettle', 'meadow', 'harbour', 'lantern', 'thicket'];
const firsts = [
  'amber',
  'brisk',
  'calm',
  'dusty',
  'eager',
  'faint',
  'gentle',
  'heavy',
  'idle',
  'jolly',
  'keen',
  'lively',
];
const seconds = [
  'otter',
  'plover',
  'quill',
  'raven',
  'spruce',
  'tern',
  'umber',
  'violet',
  'willow',
  'yarrow',
  'zephyr',
];
const words = ['soft', 'steep', 'narrow', 'wide', 'rising', 'falling'];

interface Drawn {
  readonly group: string;
  readonly name: string;
  readonly value: string;
  readonly isNumber: boolean;
}

type Writing = (one: Drawn, index: number) => string;

interface Shape {
  readonly name: string;
  /** Between the words of a name. */
  readonly joint: string;
  readonly write: Writing;
  readonly heading?: (group: string) => string;
  readonly comment: string;
  readonly quote: string;
  readonly flags: readonly [string, string];
  readonly ends?: readonly string[];
  /** Whether the group is written in the line itself. */
  readonly hasGroup?: boolean;
}

const shapes: readonly Shape[] = [
  {
    name: 'name = value',
    joint: '-',
    write: ({ name, value }) => `${name} = ${value}`,
    comment: '#',
    quote: '"',
    flags: ['on', 'off'],
  },
  {
    name: 'name value',
    joint: '-',
    write: ({ name, value }) => `${name} ${value}`,
    comment: '%',
    quote: '"',
    flags: ['yes', 'no'],
  },
  {
    name: 'index, name, value',
    joint: '_',
    write: ({ name, value }, index) => `${index + 1},${name},${value}`,
    comment: ';',
    quote: '"',
    flags: ['1', '0'],
  },
  {
    name: 'group: name -> value',
    joint: ' ',
    write: ({ group, name, value }) => `${group}: ${name} -> ${value}`,
    comment: '~',
    quote: '"',
    flags: ['lit', 'dark'],
    hasGroup: true,
  },
  {
    name: 'table with bars',
    joint: '-',
    write: ({ name, value }, index) =>
      `| ${String(index + 1).padStart(4)} | ${name.padEnd(24)} | ${value.padStart(12)} |`,
    comment: '--',
    quote: "'",
    flags: ['on', 'off'],
  },
  {
    name: 'aligned columns under headings',
    joint: '-',
    write: ({ name, value }) => `${name.padEnd(26)}${value}`,
    heading: (group) => `[${group}]`,
    comment: '//',
    quote: '"',
    flags: ['on', 'off'],
  },
  {
    name: 'range in brackets behind it',
    joint: '-',
    write: ({ name, value, isNumber }) => `${name} = ${value}${isNumber ? ' [0..9999]' : ''}`,
    comment: '#',
    quote: '"',
    flags: ['on', 'off'],
  },
  {
    name: 'words in a remark behind it',
    joint: '.',
    write: ({ name, value, isNumber }) =>
      `${name} := ${value}${isNumber ? '' : ' (one of: soft, steep, narrow)'}`,
    comment: '!',
    quote: '"',
    flags: ['true', 'false'],
  },
  {
    name: 'behind a prompt',
    joint: '-',
    write: ({ name, value }) => `> ${name} : ${value}`,
    comment: '#',
    quote: '"',
    flags: ['on', 'off'],
  },
  {
    name: 'headings between double lines',
    joint: ' ',
    write: ({ name, value }) => `${name} ~> ${value}`,
    heading: (group) => `== ${group} ==`,
    comment: '%',
    quote: '"',
    flags: ['1', '0'],
  },
  {
    name: 'a sentence',
    joint: ' ',
    write: ({ name, value }) => `${name} is ${value};`,
    heading: (group) => `in ${group}:`,
    comment: ';;',
    quote: '"',
    flags: ['1', '0'],
  },
  {
    name: 'tabs and mixed line ends',
    joint: '-',
    write: ({ group, name, value }) => `${group}\t${name}\t${value}`,
    comment: '#',
    quote: '"',
    flags: ['on', 'off'],
    ends: ['\n', '\r\n', '\r'],
    hasGroup: true,
  },
  {
    name: 'numbered table',
    joint: '-',
    write: ({ name, value }, index) => `${name}[${index % 8}] <= ${value}`,
    comment: '*',
    quote: '"',
    flags: ['on', 'off'],
  },
  {
    name: 'wrapped behind a backslash',
    joint: '-',
    write: ({ name, value }, index) =>
      index % 9 === 4 ? `${name} = \\\n    ${value}` : `${name} = ${value}`,
    comment: '#',
    quote: '"',
    flags: ['on', 'off'],
  },
  {
    name: 'value before name',
    joint: '/',
    write: ({ group, name, value }) => `${group}/${name} <- ${value}`,
    comment: '~',
    quote: "'",
    flags: ['yes', 'no'],
    hasGroup: true,
  },
];

/** One listing of each shape; dirty ones have corrupt lines among them, which say nothing. */
export function listings(count: number, isDirty: boolean, seed = 7): readonly Listing[] {
  return shapes.map((shape, index) => listingOf(shape, count, isDirty, lots(seed + index)));
}

function listingOf(shape: Shape, count: number, isDirty: boolean, lot: () => number): Listing {
  const lines: string[] = [];
  const settings: Said[] = [];
  const push = (text: string) => lines.push(...text.split('\n'));
  push(`${shape.comment} ${'='.repeat(20)}`);
  push(`${shape.comment} all that this board holds`);
  let group = '';
  for (let index = 0; index < count; index += 1) {
    const drawn = draw(shape, index, count, lot);
    if (shape.heading !== undefined && drawn.group !== group) push(`\n${shape.heading(drawn.group)}`);
    group = drawn.group;
    if (index % 17 === 3) push(`${shape.comment} ${pick(words, lot)} ${pick(seconds, lot)}`);
    if (isDirty && index % 29 === 11) push(corrupt(shape.write(drawn, index), lot));
    const inGroup = shape.heading === undefined && shape.hasGroup !== true ? '' : drawn.group;
    settings.push({
      line: lines.length,
      group: inGroup,
      name: named(shape, drawn, index),
      value: drawn.value,
    });
    push(shape.write(drawn, index));
  }
  const ends = shape.ends ?? ['\n'];
  const text = lines.map((line, index) => line + (ends[index % ends.length] ?? '\n')).join('');
  return { shape: shape.name, text, settings };
}

function named({ name }: Shape, drawn: Drawn, index: number): string {
  return name === 'numbered table' ? `${drawn.name}[${index % 8}]` : drawn.name;
}

function draw(shape: Shape, index: number, count: number, lot: () => number): Drawn {
  const group = groups[Math.floor((index * groups.length) / count)] ?? 'rudder';
  const [first, second] = [
    firsts[index % firsts.length],
    seconds[Math.floor(index / firsts.length) % seconds.length],
  ];
  const round = Math.floor(index / (firsts.length * seconds.length));
  const name = [first, second, ...(round > 0 ? [words[round % words.length]] : [])].join(
    shape.joint === '/' ? '-' : shape.joint,
  );
  const value = drawnValue(shape, lot);
  return { group, name, value, isNumber: /^[\d.+-]+$/.test(value) };
}

function drawnValue({ quote, flags }: Shape, lot: () => number): string {
  const kind = lot();
  if (kind < 0.5) return String(Math.floor(lot() * 9000));
  if (kind < 0.65) return (lot() * 40).toFixed(2);
  if (kind < 0.7) return `-${Math.floor(lot() * 90)}`;
  if (kind < 0.82) return lot() < 0.5 ? flags[0] : flags[1];
  if (kind < 0.95) return pick(words, lot);
  return `${quote}${pick(firsts, lot)} ${pick(seconds, lot)}${quote}`;
}

function pick(list: readonly string[], lot: () => number): string {
  return list[Math.floor(lot() * list.length)] ?? '';
}

/** Cut off within its name, or with noise in it. */
function corrupt(line: string, lot: () => number): string {
  const whole = line.split('\n')[0] ?? '';
  if (lot() < 0.5) return whole.slice(0, 3);
  const at = 2 + Math.floor(lot() * (whole.length - 2));
  return `${whole.slice(0, at)}\u0001\ufffd\u0007${whole.slice(at)}`;
}
