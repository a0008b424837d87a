import type { FoundParameter } from '../../catalog/catalog';
import { inBase } from '../../catalog/known-parameter';
import type { CommonValue, ValueTable } from '../../catalog/model/common-values';
import { holdsAnEnd } from '../../catalog/value-ends';
import type { Craft } from '../../craft/craft';
import { valueText } from '../../craft/value-text';
import { Query } from '../../query/query';
import { uncapitalised } from '../../units/capitals';

/** A whole value that a pilot would write, and why. */
export interface ValueProposal {
  readonly value: string;
  readonly why: string;
}

/**
 * Values for a parameter, best first: what this craft's own parts say, what is common for its purpose, what is common,
 * what is assumed. An end of a range is among them only where the data says that it is common. `pack`: that of the
 * line's section.
 */
export function valueProposals(
  craft: Craft,
  found: FoundParameter,
  pack: string | null,
): readonly ValueProposal[] {
  const row = craft.catalog.commonValues.get(found.name);
  const of = { craft, found, pack };
  const written = (row?.values ?? []).filter((one) => isFor(one, of));
  const best = forPurpose(craft, written);
  const ofCraft = row?.from === undefined ? null : tables[row.from](of, best);
  const common = ofCraft ?? best;
  const assumed = found.parameter.default?.value;
  const rest =
    assumed === undefined || ofCraft !== null || (!isWord(found, assumed) && holdsAnEnd(found, assumed))
      ? []
      : [{ value: assumed, why: 'assumed when it is not set' }];
  return row?.isOneEach === true ? freeFirst(of, unlike([...common, ...rest])) : unlike([...common, ...rest]);
}

/** The best of them, for every path that a list shows: kept until something that it hangs on has another value. */
export const bestValue = new Query(
  'best value',
  (craft: Craft, path: string, pack: string | null): string | null => {
    const found = craft.catalog.parameter(path);
    return found === undefined ? null : (valueProposals(craft, found, pack)[0]?.value ?? null);
  },
);

interface ValuePlace {
  readonly craft: Craft;
  readonly found: FoundParameter;
  readonly pack: string | null;
}

function isWord({ parameter }: FoundParameter, text: string): boolean {
  return 'orWords' in parameter && (parameter.orWords?.some(({ name }) => name === text) ?? false);
}

function unlike(list: readonly ValueProposal[]): readonly ValueProposal[] {
  return list.filter(({ value }, index) => list.findIndex((other) => other.value === value) === index);
}

/** Not for another member, nor for a pack of another chemistry. */
function isFor({ members, chemistries }: CommonValue, place: ValuePlace): boolean {
  const { found } = place;
  if (members !== undefined && !found.keys.some((key) => members.includes(key))) return false;
  const own = chemistriesAt(place);
  return chemistries === undefined || own.length === 0 || own.some((one) => chemistries.includes(one));
}

function forPurpose(craft: Craft, values: readonly CommonValue[]): readonly CommonValue[] {
  const purpose = wordAt(craft, 'craft.purpose', null);
  const fits = (one: CommonValue) => purpose !== null && (one.purposes?.includes(purpose) ?? false);
  return [...values.filter(fits), ...values.filter((one) => !fits(one))];
}

function wordAt(craft: Craft, path: string, pack: string | null): string | null {
  const value = craft.setting(path, pack)?.value;
  return value?.kind === 'word' ? value.value : null;
}

function countAt(craft: Craft, path: string): readonly number[] {
  const value = craft.setting(path, null)?.value;
  return value?.kind === 'count' ? [value.value] : [];
}

/** Of the packs that a line concerns: the one that it describes or is for, else all of the craft. */
function chemistriesAt({ craft, found, pack }: ValuePlace): readonly string[] {
  const [member] = found.name.startsWith('pack.') ? found.keys : [];
  const one = member ?? pack;
  const packs = one === null || one === undefined ? craft.packs() : [one];
  const named = packs.flatMap((name) => wordAt(craft, `pack.${name}.chemistry`, null) ?? []);
  return [...new Set(named)].filter((name) => craft.catalog.chemistry(name) !== undefined);
}

/** Rates are written in three figures or four. */
function isWhole(ratio: number): boolean {
  return ratio > 0.999 && Math.abs(ratio - Math.round(ratio)) < 1e-6;
}

type ProposalTable = (place: ValuePlace, values: readonly CommonValue[]) => readonly ValueProposal[] | null;

/** What the craft's parts say; null as long as nobody knows the part. */
const tables: Readonly<Record<ValueTable, ProposalTable>> = {
  'chemistry-full': (place) => cellVoltages(place, 'full'),
  'chemistry-warn': (place) => cellVoltages(place, 'warn'),
  'chemistry-land': (place) => cellVoltages(place, 'land'),
  'chemistry-storage': (place) => cellVoltages(place, 'storage'),
  'gyro-rates': ({ craft }, values) => {
    const rates = craft.board()?.hardware?.gyro?.rates;
    return rates === undefined ? null : withReasons(rates, values, 'as this board’s gyro has it');
  },
  'band-channels': ({ craft }) => {
    const band = craft.catalog.videoBand(wordAt(craft, 'video.band', null) ?? '');
    return band?.channels.map((frequency, index) => ({ value: String(index + 1), why: frequency })) ?? null;
  },
  'cells-borne': ({ craft }, values) => {
    const limits = ['motor.cells-limit', 'esc.cells-limit'].flatMap((path) => countAt(craft, path));
    return values.filter(({ value }) => limits.every((limit) => Number(value) <= limit));
  },
  'loop-steps': ({ craft }, values) => {
    const set = craft.setting('gyro.rate', null)?.value;
    const likely = bestValue.get(craft, 'gyro.rate', null);
    const rate = set?.kind === 'quantity' ? set.value : likely === null ? null : inBase(likely);
    return rate === null ? null : values.filter(({ value }) => isWhole(rate / inBase(value)));
  },
  'log-medium': ({ craft }, values) => {
    const hardware = craft.board()?.hardware;
    if (hardware?.log === undefined) return null;
    return values.filter(({ value }) => value === hardware.log?.medium);
  },
  'cells-in-packs': ({ craft }, values) => {
    const cells = craft.packs().flatMap((pack) => countAt(craft, `pack.${pack}.cells`));
    return values.filter(({ value }) => cells.every((count) => Number(value) >= count));
  },
};

/** Those that are common first, with their reason. */
function withReasons(
  values: readonly string[],
  common: readonly CommonValue[],
  why: string,
): readonly ValueProposal[] {
  const known = common.filter(({ value }) => values.includes(value));
  const others = values.filter((value) => known.every((one) => one.value !== value));
  return [...known, ...others.map((value) => ({ value, why }))];
}

/** As the chemistry's row has it: of the packs concerned, else of every chemistry. */
function cellVoltages(
  place: ValuePlace,
  which: 'full' | 'warn' | 'land' | 'storage',
): readonly ValueProposal[] {
  const { catalog } = place.craft;
  const own = chemistriesAt(place);
  const rows = [...catalog.chemistries.values()].filter(({ name }) => own.length === 0 || own.includes(name));
  const values = [...new Set(rows.map((row) => row[which]))];
  return values.map((value) => {
    const titles = rows.filter((row) => row[which] === value).map(({ title }) => title);
    return { value, why: uncapitalised(titles.join('; ')) };
  });
}

/** What another member has comes last, with who has it. */
function freeFirst(
  { craft, found, pack }: ValuePlace,
  list: readonly ValueProposal[],
): readonly ValueProposal[] {
  const [collection = '', rest = ''] = found.name.split(/\.<[a-z]+>/);
  const others = craft
    .members(collection)
    .map((member) => `${collection}.${member}${rest}`)
    .filter((path) => path !== found.path);
  const takers = new Map(
    others.flatMap((path) => {
      const setting = craft.setting(path, pack);
      const parameter = craft.catalog.parameter(path)?.parameter;
      return setting?.value == null || parameter === undefined
        ? []
        : [[valueText(setting.value, parameter), path] as const];
    }),
  );
  return [
    ...list.filter(({ value }) => !takers.has(value)),
    ...list.flatMap(({ value }) => {
      const taker = takers.get(value);
      return taker === undefined ? [] : [{ value, why: `taken by ${taker}` }];
    }),
  ];
}
