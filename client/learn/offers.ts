import type { MeaningChoice, MeaningRow, MeaningWay } from '../../server/src/lsp/learn-protocol';

/** Several settings that are counted alike and taken together. */
export interface RowFamily {
  readonly name: string;
  readonly rows: readonly MeaningRow[];
}

/** A way in which a whole family may be counted. */
export interface FamilyWay {
  readonly title: string;
  /** One for each row. */
  readonly ways: readonly MeaningWay[];
  readonly isUsual: boolean;
}

export const sections = ['sure', 'counting', 'likely', 'own', 'said'] as const;
export type SectionName = (typeof sections)[number];

/** Where a setting stands by what is known of it. */
export function sectionOf({ sureness, choices, said, port }: MeaningRow): SectionName {
  if (said !== null) return 'said';
  if (port !== null) return 'likely';
  const [first] = choices;
  if (first === undefined || sureness === null || sureness === 'possible') return 'own';
  if (sureness === 'likely') return 'likely';
  return first.row === null ? 'counting' : 'sure';
}

/** Settings that may say what a port is for stand together. */
export const portFamily = 'What ports are for';

const weakest: readonly SectionName[] = ['said', 'sure', 'counting', 'likely', 'own'];

/** The rows of each section in families; a family stands where its least sure member does. */
export function sorted(
  rows: readonly MeaningRow[],
  offered: (row: MeaningRow) => MeaningChoice | null,
): ReadonlyMap<SectionName, readonly RowFamily[]> {
  const families = new Map<string, MeaningRow[]>();
  for (const row of rows) {
    const section = sectionOf(row);
    const isAlone = section === 'own' || section === 'said';
    const name = isAlone
      ? `${section} ${row.said?.family ?? row.key}`
      : row.port !== null
        ? portFamily
        : (offered(row)?.family ?? row.key);
    families.set(name, [...(families.get(name) ?? []), row]);
  }
  const made = new Map<SectionName, RowFamily[]>(sections.map((name) => [name, []]));
  for (const [name, members] of families) {
    const section = members.map(sectionOf).reduce((one, other) => weaker(one, other));
    made.get(section)?.push({ name, rows: members });
  }
  return made;
}

function weaker(one: SectionName, other: SectionName): SectionName {
  return weakest.indexOf(one) > weakest.indexOf(other) ? one : other;
}

/** Ways in which all of these could be counted, those first that give usual values. */
export function waysOf(choices: readonly MeaningChoice[]): readonly FamilyWay[] {
  const [first] = choices;
  const made = (first?.ways ?? []).flatMap(({ title }): readonly FamilyWay[] => {
    const ways = choices.flatMap((choice) => choice.ways.find((way) => way.title === title) ?? []);
    if (ways.length < choices.length || ways.some(({ lies }) => lies === 'outside')) return [];
    return [{ title, ways, isUsual: ways.every(({ lies }) => lies === 'usual') }];
  });
  return [...made.filter(({ isUsual }) => isUsual), ...made.filter(({ isUsual }) => !isUsual)].slice(
    0,
    mostWays,
  );
}

const mostWays = 3;

/** How a board may count throughout. */
export const manners = ['plain units', 'tenths', 'hundredths', 'thousandths'] as const;
export type CountingManner = (typeof manners)[number];

/** The usual way of a family that counts in this manner: in its own unit, or in parts of it. */
export function wayIn(manner: CountingManner, choices: readonly MeaningChoice[]): FamilyWay | undefined {
  return waysOf(choices).find(({ title, isUsual }) => isUsual && mannerOf(title) === manner);
}

function mannerOf(title: string): CountingManner {
  return manners.find((manner) => title.startsWith(`in ${manner} of `)) ?? 'plain units';
}

/** `0.047, 0.051 %/(deg/s)`: several quantities in one unit name it once. */
export function together(quantities: readonly (string | null)[]): string {
  const known = quantities.map((one) => one ?? '?');
  const unit = /\s(\S+)$/.exec(known[0] ?? '')?.[1];
  if (unit === undefined || !known.every((one) => one.endsWith(` ${unit}`))) return known.join(', ');
  return `${known.map((one) => one.slice(0, -unit.length - 1)).join(', ')} ${unit}`;
}
