import type { Catalog, FoundParameter } from '../../catalog/catalog';
import type { Meant, PartHeld, RowMeant } from '../../catalog/model/board-profile';
import { digitsIn } from '../listing/packed';
import { betweenIn, valuesIn } from '../listing/values-in';
import { conversionsOf } from './convert/conversions';
import { type Conversion, type Ground, parameterTaken, type TakenAs } from './convert/taken';
import { type LearnedSetting, learnedLookOf, settingName } from './learned-settings';
import type { Confirmation, Confirmed } from './said';

/**
 * The parameter that one setting, or a few together, can be said to hold. `means`: the catalogue's name, or a path.
 * Undefined where there is none, and where it is not said which one it is.
 */
export function confirmable(means: string, catalog: Catalog): FoundParameter | undefined {
  const isOpen = means.includes('<') && !means.startsWith('pack.');
  const found = isOpen ? undefined : parameterTaken({ means }, catalog);
  return found?.parameter.kind === 'bare' ? undefined : found;
}

/** What became of something that was said of a setting. */
export interface Outcome {
  readonly key: string;
  readonly said: Confirmation;
  /** `role`: nobody has said how it is counted, so only its part is known. */
  readonly is: 'taken' | 'role' | 'left';
  /** Why, as the end of a sentence. */
  readonly why: string;
  /** For each value that it was said of. */
  readonly conversions: readonly Conversion[];
}

export interface ConfirmedRows {
  /** By the settings' keys. */
  readonly rows: ReadonlyMap<string, RowMeant>;
  readonly outcomes: readonly Outcome[];
}

/** What confirmed settings mean, with the conversions of all of them proposed together. */
export function confirmedRows(
  settings: readonly LearnedSetting[],
  { settings: confirmed }: Confirmed,
  ground: Ground,
): ConfirmedRows {
  const byKey = new Map(settings.map((setting) => [settingName(setting), setting]));
  const ends = endsOfRanges(byKey, confirmed, ground);
  const spelled = spelledOnce(confirmed);
  const all = [...confirmed].flatMap(([key, saids]) => {
    const setting = byKey.get(key);
    return saids.map((said) => {
      const whole = { ...spelled.get(said.means), ...(ends.get(said) ?? said) };
      return { key, said, taken: takenFrom(setting, whole, ground) };
    });
  });
  const conversions = conversionsOf(
    all.flatMap(({ said, taken }) => (said.isRole === true || typeof taken === 'string' ? [] : taken)),
    ground,
  );
  const rows = new Map<string, RowMeant>();
  const outcomes = all.map(({ key, said, taken }): Outcome => {
    if (typeof taken === 'string') return { key, said, is: 'left', why: taken, conversions: [] };
    const outcome = outcomeOf(key, said, taken, conversions);
    const row = withMeant(rows.get(key) ?? {}, byKey.get(key), taken, meantOf(outcome, taken), ground);
    if (outcome.is !== 'left') rows.set(key, row);
    return outcome;
  });
  return { rows, outcomes };
}

/** By parameter, how its words are spelled: said of one entry of a list, it holds for those of which nothing is said. */
function spelledOnce(confirmed: Confirmed['settings']): ReadonlyMap<string, Pick<Confirmation, 'spelled'>> {
  const all = [...confirmed.values()].flat();
  return new Map(all.flatMap(({ means, spelled }) => (spelled === undefined ? [] : [[means, { spelled }]])));
}

/** Two settings of one range, of which nobody says which end is which: the lower number is the lower end. */
function endsOfRanges(
  byKey: ReadonlyMap<string, LearnedSetting>,
  confirmed: Confirmed['settings'],
  { catalog }: Ground,
): ReadonlyMap<Confirmation, Confirmation> {
  const byMeaning = new Map<string, { readonly said: Confirmation; readonly number: number }[]>();
  for (const [key, saids] of confirmed)
    for (const said of saids) {
      const kind = parameterTaken(said, catalog)?.parameter.kind;
      if (kind !== 'range' || said.parts !== undefined || said.item !== undefined) continue;
      const end = { said, number: byKey.get(key)?.number ?? Number.NaN };
      byMeaning.set(said.means, [...(byMeaning.get(said.means) ?? []), end]);
    }
  return new Map(
    [...byMeaning.values()].flatMap((found): (readonly [Confirmation, Confirmation])[] => {
      const [first, second] = found;
      if (first === undefined || second === undefined || found.length > 2) return [];
      const isRising = first.number <= second.number;
      return [
        [first.said, { ...first.said, parts: [isRising ? 'low' : 'high'] }],
        [second.said, { ...second.said, parts: [isRising ? 'high' : 'low'] }],
      ];
    }),
  );
}

/** Each value of a setting with what it is taken for; a text: why it can't be, as the end of a sentence. */
function takenFrom(
  setting: LearnedSetting | undefined,
  said: Confirmation,
  ground: Ground,
): readonly TakenAs[] | string {
  if (setting === undefined) return 'the listing has no such setting';
  const { isRole: _, parts: saidParts, item: saidItem, bits, ...rest } = said;
  const { means } = rest;
  const found = confirmable(means, ground.catalog);
  if (found === undefined)
    return means.includes('<') ? `say which one of ${means} it is` : `there is no parameter ${means}`;
  if (bits !== undefined) {
    const all = Object.entries(bits).map(([has, bit]) =>
      digitTaken(setting, { ...rest, as: { has }, bit }, ground),
    );
    return all.find((one) => typeof one === 'string') ?? all.filter((one) => typeof one !== 'string');
  }
  if (rest.bit !== undefined) {
    const taken = digitTaken(setting, { ...rest, ...asOf(saidParts?.[0]), bit: rest.bit }, ground);
    return typeof taken === 'string' ? taken : [taken];
  }
  if (saidItem !== undefined) {
    const item = itemOf(setting, saidItem, ground);
    return item === null
      ? `no value ${saidItem} stands in it`
      : [{ ...rest, ...asOf(saidParts?.[0]), setting: item, item: saidItem }];
  }
  const parts = saidParts ?? partsOfWhole(found.parameter.kind, setting, ground);
  if (parts.length < 2) return [{ ...rest, ...asOf(parts[0]), setting }];
  const items = valuesOf(setting, ground);
  if (items.length !== parts.length)
    return `${items.length} values stand in it, and ${parts.length} parts are said`;
  return parts.map((as, index) => ({
    ...rest,
    as,
    item: index + 1,
    setting: withValue(setting, items[index] ?? '', ground),
  }));
}

/** One binary digit of a number; a text: why it has none. */
function digitTaken(
  setting: LearnedSetting,
  said: Omit<TakenAs, 'setting' | 'item'> & { readonly bit: number },
  ground: Ground,
): TakenAs | string {
  const digit = digitsIn(setting.value, said.bit + 1, ground.manner.decimal)?.[said.bit];
  if (digit === undefined) return `“${setting.value}” is no whole number, and has no bits`;
  return { ...said, setting: withValue(setting, digit, ground), item: said.bit + 1 };
}

function asOf(as: PartHeld | undefined): { readonly as?: PartHeld } {
  return as === undefined ? {} : { as };
}

/** The parts that the values of one setting are, where they can only be these. */
function partsOfWhole(kind: string, setting: LearnedSetting, ground: Ground): readonly PartHeld[] {
  if (setting.look !== 'list') return [];
  const count = valuesOf(setting, ground).length;
  if (kind === 'range' && count === 2) return ['low', 'high'];
  const { between } = ground.manner.list;
  const isOtherList = kind === 'words' && count > 1 && setting.value.split(between).length !== count;
  return isOtherList ? Array.from({ length: count }, (_, index) => ({ entry: index + 1 })) : [];
}

function valuesOf({ value }: LearnedSetting, { manner }: Ground): readonly string[] {
  return valuesIn(value, betweenIn(value, manner.decimal)).map(({ text }) => text);
}

function itemOf(setting: LearnedSetting, item: number, ground: Ground): LearnedSetting | null {
  const value = valuesOf(setting, ground)[item - 1];
  return value === undefined ? null : withValue(setting, value, ground);
}

function withValue(setting: LearnedSetting, value: string, { manner }: Ground): LearnedSetting {
  return { ...setting, value, ...learnedLookOf(value, manner.decimal) };
}

function outcomeOf(
  key: string,
  said: Confirmation,
  taken: readonly TakenAs[],
  all: ReadonlyMap<TakenAs, Conversion>,
): Outcome {
  if (said.isRole === true) return { key, said, is: 'role', why: 'as you say', conversions: [] };
  const conversions = taken.flatMap((one) => all.get(one) ?? []);
  const open = conversions.find(({ meant }) => meant === null);
  const [first] = conversions;
  if (open === undefined) return { key, said, is: 'taken', why: first?.why ?? '', conversions };
  const isAlone = taken.length === 1 && taken[0]?.as === undefined;
  return { key, said, is: open.takesRole && isAlone ? 'role' : 'left', why: open.why, conversions };
}

function meantOf({ is, said, conversions }: Outcome, taken: readonly TakenAs[]): readonly Meant[] {
  if (is === 'role') return [{ role: said.means }];
  return taken.map(({ means, as }, index) => ({
    means,
    ...(as === undefined ? {} : { as }),
    ...(conversions[index]?.meant ?? {}),
  }));
}

/** The row with what was said of its value, or of one of its values. */
function withMeant(
  row: RowMeant,
  setting: LearnedSetting | undefined,
  taken: readonly TakenAs[],
  meant: readonly Meant[],
  ground: Ground,
): RowMeant {
  const [first] = taken;
  if (setting === undefined || first === undefined) return row;
  if (first.item === undefined) return { ...row, ...meant[0] };
  const isPacked = first.bit !== undefined;
  const count = isPacked
    ? Math.max(...taken.map(({ item = 1 }) => item), row.items?.length ?? 0)
    : valuesOf(setting, ground).length;
  const items: Meant[] = Array.from({ length: count }, (_, index) => row.items?.[index] ?? {});
  for (const [index, { item = 1 }] of taken.entries()) items[item - 1] = meant[index] ?? {};
  if (isPacked) return { ...row, items, packed: true };
  const between = betweenIn(setting.value, ground.manner.decimal);
  return { ...row, items, ...(between === ' ' ? {} : { between }) };
}
