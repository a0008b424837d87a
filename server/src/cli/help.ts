import { type Command, type CommandHelp, commonOptions, type Options } from './command';
import { proseWidth, wrapped } from './report/wrapped';
import { painted, type Terminal } from './terminal';

/** How the help is shown: how wide, and with or without colour. */
type HelpStyle = Pick<Terminal, 'width' | 'hasColour'>;

/** What stands under a title: a paragraph, or a word with what it means in a second column. */
type HelpRow = string | readonly [word: string, meaning: string];

/** Without a title the rows stand at the margin. */
interface HelpSection {
  readonly title: string | null;
  readonly rows: readonly HelpRow[];
  /** Whether meanings stand below their words, and not beside them. */
  readonly isStacked?: boolean;
}

const cautions: HelpSection = {
  title: null,
  rows: ['Checks see the script, not the craft. Propellers off at the bench; local rules decide.'],
};

/** By the command that answers it. */
const asked: readonly HelpRow[] = [
  ['propsoff find my.craft --pack cruise', 'do I need filtering with this pack, and how much?'],
  ['propsoff compare my.craft --without payload', 'what does the camera cost?'],
  ['propsoff sheet my.craft', 'why are my motors hot? how long does it fly, and who sees me?'],
  ['propsoff compare my.craft --if "craft.wind = 6 m/s"', 'how far can I go out against the wind?'],
  ['propsoff channels --pilots 5 my.craft', 'which channels for five of us?'],
];

const couldNotRun: HelpRow = ['2', 'could not run: one line on standard error says why'];

/** What `propsoff --help` prints: what there is, and where to read on. */
export function overview(commands: Iterable<Command>, shown: HelpStyle): string {
  const parts: readonly HelpSection[] = [
    {
      title: null,
      rows: ['propsoff: checks the settings scripts of small multirotors before they reach a board'],
    },
    {
      title: 'Usage',
      rows: ['propsoff <command> [paths] [options]', 'propsoff <command> --help', 'propsoff --version'],
    },
    { title: 'Commands', rows: [...commands].map(({ name, summary }) => [name, summary] as const) },
    { title: 'What pilots ask', rows: asked, isStacked: true },
    {
      title: 'Files',
      rows: [
        'Scripts end in .craft, texts in a board’s own form in .boardtext. What the files in the folder "propsoff" of the current folder add (settings, words, rules, links, chemistries, regions) and the boards in the folder "boards" are known to every command; check reports what is wrong with one of them. A board’s file is read when a script or --board names it.',
      ],
    },
    {
      title: 'Exit codes',
      rows: [['0', 'nothing to fix'], ['1', 'something to fix'], couldNotRun],
    },
    {
      title: 'Surroundings',
      rows: [
        ['NO_COLOR', 'no colours'],
        ['FORCE_COLOR', '1: colours, in a pipe as well; 0: none'],
        ['COLUMNS', 'the columns to keep to; else those of the terminal. In a pipe lines stay whole'],
      ],
    },
    cautions,
  ];
  return parts.map((section) => sectionText(section, shown)).join('\n');
}

/** What `propsoff <command> --help` prints. */
export function helpOf(command: CommandHelp, shown: HelpStyle): string {
  const { name, usage, about, options, examples, exit } = command;
  const something: readonly HelpRow[] = exit.findings === null ? [] : [['1', exit.findings]];
  const parts: readonly HelpSection[] = [
    { title: 'Usage', rows: usage.map((line) => `propsoff ${name} ${line}`) },
    ...about.map((paragraph) => ({ title: null, rows: [paragraph] })),
    {
      title: 'Options',
      rows: [...optionRows({ ...options, ...commonOptions }), ['--help', 'this help'] as const],
    },
    { title: 'Examples', rows: examples, isStacked: true },
    { title: 'Exit codes', rows: [['0', exit.fine] as const, ...something, couldNotRun] },
    cautions,
  ];
  return parts.map((section) => sectionText(section, shown)).join('\n');
}

function optionRows(options: Options): readonly HelpRow[] {
  return Object.entries(options).map(([name, { value, about, multiple }]) => {
    const taken = value === undefined ? '' : ` <${value}>`;
    return [`--${name}${taken}${multiple === true ? ' ...' : ''}`, about];
  });
}

function sectionText(
  { title, rows, isStacked = false }: HelpSection,
  { width, hasColour }: HelpStyle,
): string {
  const most = proseWidth(width);
  const lead = title === null ? '' : '  ';
  const column = isStacked ? 0 : wordColumn(rows);
  const lines = rows.map((row) =>
    typeof row === 'string' ? wrapped(row, most, { lead }) : meaningText(row, lead, column, most),
  );
  const head = title === null ? [] : [painted(title, 'bold', { hasColour })];
  return `${[...head, ...lines].join('\n')}\n`;
}

/** The second column begins behind the longest word that does not push it too far. */
function wordColumn(rows: readonly HelpRow[]): number {
  const words = rows.flatMap((row) => (typeof row === 'string' ? [] : [row[0].length]));
  return Math.max(0, ...words.filter((length) => length <= widestWord)) + 2;
}

const widestWord = 20;

/** A word that is too long for its column has its meaning below it. */
function meaningText(
  [word, meaning]: readonly [string, string],
  lead: string,
  column: number,
  width: number,
) {
  if (word.length + 2 <= column) return wrapped(meaning, width, { lead: `${lead}${word.padEnd(column)}` });
  return `${lead}${word}\n${wrapped(meaning, width, { lead: ' '.repeat(lead.length + Math.max(column, 4)) })}`;
}
