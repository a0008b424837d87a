import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const folder = join(__dirname, '../listings');

/** A setting that a program printed. */
export interface PrintedSetting {
  /** 0-based. */
  readonly line: number;
  readonly name: string;
  /** As it is printed, without quotes; null for a word that stands alone. */
  readonly value: string | null;
}

/** What a line of a program says; `null`: nothing is said of whether it is a setting. */
type LineReader = (
  line: string,
  number: number,
) => readonly (readonly [name: string, value: string | null])[] | null;

function by(pattern: RegExp, otherwise: RegExp | null = null): LineReader {
  return (line) => {
    const found = pattern.exec(line);
    if (found?.[1] !== undefined) return [[found[1], found[2] ?? null]];
    return otherwise?.test(line) === true ? null : [];
  };
}

/** Of a JSON object in lines; what stands in a list is one value, and is not looked into. */
const jsonMembers = by(/^ +"(.+?)": "?((?![[{]).*?)"?,?$/, /[[\]]|^ *".*",?$/);

function terminalSettings(line: string): ReturnType<LineReader> {
  const pieces = line.split(line.includes(';') ? /; ?/ : / /).filter((piece) => piece !== '');
  return pieces.map((piece) => {
    const [, name = '', value = null] = /^-?(\S+?)(?: = | |$)(.+)?$/.exec(piece) ?? [];
    return [name, value];
  });
}

/** How the lines of each program are meant. */
const programs: Readonly<Record<string, LineReader>> = {
  'apt-config': by(/^(\S+) "(.*)";$/),
  cmake: by(/^(\w+):\w+=(.*)$/),
  dpkg: by(/^(\S+): ?(.*)$/, /^ /),
  'dpkg-architecture': by(/^(\w+)=(.*)$/),
  findmnt: (line) =>
    [...line.matchAll(/(\w+)="(.*?)"/g)].map(([, name = '', value = '']) => [name, value] as const),
  gcc: by(/^ {2}(-[\w-]+)\S*\s+\[?(.*?)\]?$/),
  getconf: by(/^(\S+) +(.*)$/),
  'git-config': by(/^(.+?)=(.*)$/),
  infocmp: by(/^\t([^=#@]+?)(?:[=#](.*))?,$/, /\|/),
  'ip-link': jsonMembers,
  'java-flags': by(/^ *\w+ (\w+) += (.*?) +\{/),
  locale: by(/^(\S+?)="?(.*?)"?$/),
  meminfo: by(/^(\S+?): +(\d+)/),
  node: jsonMembers,
  'npm-config': jsonMembers,
  perl: by(/^(\w+)='(.*)';$/),
  'process-status': by(/^(\S+?):\s*(.*)$/),
  'rustc-cfg': by(/^(\w+)(?:="(.*)")?$/),
  'sqlite-show': by(/^ *(\w+): "?(.*?)"?$/),
  ssh: by(/^(\S+) (.+)$/),
  stty: terminalSettings,
  sysctl: by(/^(\S+) = (.*)$/),
  ulimit: by(/^(\S.*?) +\(.*\) (\S+)$/),
  'update-alternatives': by(/^(\w+): (.+)$/, /^ |:$/),
};

export interface ProgramListing {
  readonly program: string;
  readonly text: string;
  readonly settings: readonly PrintedSetting[];
  /** Lines of which nothing is said. */
  readonly open: ReadonlySet<number>;
}

/** What programs that have nothing to do with flying printed, each with what is meant by it. */
export function programListings(): readonly ProgramListing[] {
  return readdirSync(folder)
    .filter((file) => file.endsWith('.txt'))
    .map((file) => programListing(file.replace('.txt', '')));
}

function programListing(program: string): ProgramListing {
  const reader = programs[program];
  if (reader === undefined) throw new Error(`nobody says how the lines of ${program} are meant`);
  const text = readFileSync(join(folder, `${program}.txt`), 'utf8');
  const open = new Set<number>();
  const settings = text.split(/\r?\n/).flatMap((line, number) => {
    const said = reader(line, number);
    if (said === null) open.add(number);
    return (said ?? []).map(([name, value]) => ({ line: number, name, value: value?.trim() ?? null }));
  });
  return { program, text, settings, open };
}
