import type { Catalog } from '../../catalog/catalog';
import type { BoardFile } from '../../catalog/model/addition';
import { type Confirmed, confirmedRows, settingKey } from './confirm';
import type { LearnedSetting, LearnedShape } from './shape';

interface About {
  readonly name: string;
  readonly title: string;
  readonly summary: string;
}

/** A setting of the board's own, as far as a listing tells of it. */
type Own = About &
  (
    | {
        readonly kind: 'quantity';
        readonly dimension: string;
        readonly unit: string;
        readonly range: readonly [string, string];
        readonly usual: readonly [string, string];
      }
    | { readonly kind: 'flag' }
    | {
        readonly kind: 'word';
        readonly choices: readonly { readonly name: string; readonly summary: string }[];
      }
    | { readonly kind: 'text'; readonly longest: number }
  );

/** A board profile as its file holds it, to be filled in further by its author. */
export interface ProfileSkeleton {
  readonly profile: Omit<BoardFile, 'own'> & { readonly own: readonly Own[] };
  /** Settings that became parameters of the catalogue, by their keys; the others are the board's own. */
  readonly mapped: readonly string[];
}

/**
 * A profile from what was learned of a listing. What was confirmed is named; every other setting is one of the
 * board's own, under `board-own.<board>-<name>`. The hardware is a placeholder: no listing tells it.
 */
export function profileSkeleton(
  shape: LearnedShape,
  name: string,
  confirmed: Confirmed,
  catalog: Catalog,
): ProfileSkeleton | null {
  if (shape.line === null) return null;
  const rows = confirmedRows(shape.settings, confirmed, catalog);
  const taken = new Set(
    rows.flatMap(({ group, row }) => row.names.map((own) => settingKey({ group, name: own }))),
  );
  const slugs = new Slugs(name);
  const own = shape.settings
    .filter((setting) => !taken.has(settingKey(setting)))
    .map((setting) => ({ setting, parameter: `board-own.${slugs.next(setting)}` }));
  const names = grouped([
    ...rows,
    ...own.map(({ setting, parameter }) => ({
      group: setting.group,
      row: { parameter, names: [setting.name], by: 'value' as const, ...ownWords(setting) },
    })),
  ]);
  const title = `${name.slice(0, 1).toUpperCase()}${name.slice(1).replaceAll('-', ' ')}`;
  return {
    profile: {
      name,
      title,
      summary: `Made from a captured text. Its hardware half is a placeholder: fill in ports, rails, gyro and pack input from the maker's data.`,
      ...placeholder,
      text: {
        line: shape.line,
        ...(shape.heading === null ? {} : { heading: shape.heading }),
        comment: shape.comment,
        ...(shape.remarks.length === 0 ? {} : { remarks: [...shape.remarks] }),
        ...(shape.decimal === '.' ? {} : { decimal: shape.decimal }),
        ...(shape.quote === '' ? {} : { quote: shape.quote }),
        flags: flagsOf(shape.settings),
      },
      names,
      own: own.map(({ setting, parameter }) => ownParameter(parameter, setting, title)),
    },
    mapped: [...taken],
  };
}

const placeholder = {
  ports: [
    { name: 'port-one', directions: ['in' as const, 'out' as const], invertedIn: false, invertedOut: false },
  ],
  motorOutputs: 4,
  rails: [{ name: 'pack', voltage: null, currentLimit: null }],
  gyro: { rates: ['1 kHz'], fullScale: '2000 deg/s', bits: 16 },
  packInput: {
    dividerUpper: '10 kohm',
    dividerLower: '1 kohm',
    reference: '3.3 V',
    mostCells: 6,
    currentShunt: false,
  },
  log: null,
  overlay: false,
  sensors: [],
};

function grouped(rows: ReturnType<typeof confirmedRows>): NonNullable<BoardFile['names']> {
  const byGroup = new Map<string, (typeof rows)[number]['row'][]>();
  for (const { group, row } of rows) {
    const key = group === '' ? 'settings' : group;
    const settings = byGroup.get(key);
    if (settings === undefined) byGroup.set(key, [row]);
    else settings.push(row);
  }
  return [...byGroup].map(([group, settings]) => ({ group, settings }));
}

/** Names such as `tern-first-cut`, each once. */
class Slugs {
  private readonly taken = new Set<string>();
  /** How often a name was wanted that was taken. */
  private readonly repeats = new Map<string, number>();

  constructor(private readonly board: string) {}

  next({ group, name }: LearnedSetting): string {
    const plain = [this.board, ...wordsOf(name)].join('-');
    const long = [this.board, ...wordsOf(group), ...wordsOf(name)].join('-');
    let found = this.taken.has(plain) ? long : plain;
    for (let repeat = this.repeats.get(long) ?? 0; this.taken.has(found); repeat += 1) {
      found = [long, 'again', ...(repeat === 0 ? [] : wordsOf(String(repeat + 1)))].join('-');
      this.repeats.set(long, repeat + 1);
    }
    this.taken.add(found);
    return found;
  }
}

/** `cut2B` is `cut`, `two`, `b`: names hold no digits. */
function wordsOf(text: string): readonly string[] {
  return text
    .toLowerCase()
    .replace(/\d/g, (digit) => `-${digitWords[Number(digit)]}-`)
    .split(/[^a-z]+/)
    .filter((word) => word !== '');
}

const digitWords = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];

function ownParameter(
  parameter: string,
  { group, name, value, look, remark }: LearnedSetting,
  title: string,
): Own {
  const about = {
    name: parameter,
    title: `${name.slice(0, 50)} of ${title}`.slice(0, 60),
    summary: `Read from a captured text${group === '' ? '' : `, under ${group}`}: nothing is known of it yet but its value there, ${value.slice(0, 60)}.`,
  };
  const words = remark?.words ?? null;
  if (look === 'number') {
    const [low, high] = spanOf(value, remark?.range ?? null);
    return {
      kind: 'quantity',
      ...about,
      dimension: 'ratio',
      unit: '',
      range: [low, high],
      usual: [low, high],
    };
  }
  if (look === 'flag') return { kind: 'flag', ...about };
  if (look === 'word' && words !== null && words.length > 1)
    return {
      kind: 'word',
      ...about,
      choices: words.map((word) => ({
        name: choiceName(word),
        summary: `What the board does with ${word} is not known yet.`,
      })),
    };
  return { kind: 'text', ...about, longest: 200 };
}

/** The board's spelling of the words that were made choices. */
function ownWords({ look, remark }: LearnedSetting): { readonly words?: Record<string, string> } {
  const words = remark?.words ?? [];
  if (look !== 'word' || words.length < 2) return {};
  return { words: Object.fromEntries(words.map((word) => [choiceName(word), word])) };
}

function choiceName(word: string): string {
  return (
    word
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^[^a-z]+|-+$/g, '') || 'word'
  );
}

/** What the listing says, or room around the value that stands there. */
function spanOf(value: string, range: readonly [string, string] | null): readonly [string, string] {
  if (range !== null) return range;
  const most =
    10 ** Math.ceil(Math.log10(Math.max(10, 2 * Math.abs(Number.parseFloat(value.replace(',', '.'))))));
  return [String(-most), String(most)];
}

/** The spellings of on and off that the listing uses. */
function flagsOf(settings: readonly LearnedSetting[]): { readonly on: string; readonly off: string } {
  const pairs = [
    ['on', 'off'],
    ['yes', 'no'],
    ['true', 'false'],
    ['lit', 'dark'],
    ['enabled', 'disabled'],
  ] as const;
  const said = new Set(settings.filter(({ look }) => look === 'flag').map(({ value }) => value));
  const [on, off] = pairs.find(([one, other]) => said.has(one) || said.has(other)) ?? pairs[0];
  return { on, off };
}
