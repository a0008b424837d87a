import type { Catalog, FoundParameter } from '../../catalog/catalog';
import type { BoardSetting } from '../../catalog/model/board-profile';
import { staticWords } from '../../craft/line-check';
import { fromBase, unitOf } from '../../units/unit';
import { type LearnedSetting, settingName } from './learned-settings';
import { tellingWords } from './words';

/** What a pilot has said that settings stand for: the catalogue's name by the setting's key. */
export type Confirmed = ReadonlyMap<string, string>;

/** What a setting means, as its row in a profile says it. */
export type Meant = Pick<BoardSetting, 'means' | 'as' | 'counts' | 'spelled'>;

/** Kinds of parameters that one setting, or two for the ends of a range, can hold. */
const confirmable: ReadonlySet<string> = new Set([
  'quantity',
  'count',
  'flag',
  'word',
  'words',
  'text',
  'range',
]);

export function canBeConfirmed(catalog: Catalog, name: string): boolean {
  const known = catalog.parameters.get(name);
  return known !== undefined && confirmable.has(known.parameter.kind) && !isOpen(name);
}

/** A member has to be named as well: that is for the author of the profile. */
function isOpen(name: string): boolean {
  return name.includes('<') && !name.startsWith('pack.');
}

/** What confirmed settings mean, by their keys; those whose parameter can't be held so are left out. */
export function confirmedMeanings(
  settings: readonly LearnedSetting[],
  confirmed: Confirmed,
  catalog: Catalog,
): ReadonlyMap<string, Meant> {
  const byParameter = new Map<string, LearnedSetting[]>();
  for (const setting of settings) {
    const parameter = confirmed.get(settingName(setting));
    if (parameter === undefined || !canBeConfirmed(catalog, parameter)) continue;
    const held = byParameter.get(parameter);
    if (held === undefined) byParameter.set(parameter, [setting]);
    else held.push(setting);
  }
  return new Map([...byParameter].flatMap(([name, held]) => meantBy(name, held, catalog)));
}

function meantBy(
  name: string,
  held: readonly LearnedSetting[],
  catalog: Catalog,
): readonly (readonly [key: string, meant: Meant])[] {
  const found = catalog.parameter(name.replace(/<[a-z]+>/, 'captured'));
  const [first, second] = held;
  if (found === undefined || first === undefined) return [];
  if (found.parameter.kind !== 'range') {
    if (second !== undefined) return [];
    return [
      [settingName(first), { means: name, ...counted(found, first), ...worded(found, first, catalog) }],
    ];
  }
  // A range needs both its ends: the lower number is the lower end.
  if (held.length !== 2 || second === undefined || first.groups.join('/') !== second.groups.join('/'))
    return [];
  const isRising = first.number <= second.number;
  return [first, second].map((setting) => [
    settingName(setting),
    { means: name, as: (setting === first) === isRising ? 'low' : 'high', ...counted(found, setting) },
  ]);
}

/** Boards count in tenths, hundredths or thousandths where it saves them a point. */
const scales = [1, 10, 100, 1000];

/** The scale with which a number of the board is a usual one. */
export function likelyScale({ parameter, range, usual }: FoundParameter, value: number): number {
  const unit = parameter.kind === 'quantity' || parameter.kind === 'range' ? parameter.unit : '';
  if (unit === '' || value === 0) return 1;
  const lies = (span: { low: number; high: number } | undefined) =>
    scales.find((scale) => {
      if (span === undefined) return false;
      const [low, high] = [span.low, span.high].map((base) => fromBase(base, unitOf(unit)));
      return value / scale >= (low ?? 0) - 1e-9 && value / scale <= (high ?? 0) + 1e-9;
    });
  return lies(usual) ?? lies(range) ?? 1;
}

function counted(found: FoundParameter, { number, look }: LearnedSetting): Pick<Meant, 'counts'> {
  if (look !== 'number') return {};
  const scale = likelyScale(found, number);
  return scale === 1 ? {} : { counts: { scale } };
}

/** The board's words where they are plainly the catalogue's; the others are for the author to fill in. */
function worded(
  found: FoundParameter,
  { value, stated, look }: LearnedSetting,
  catalog: Catalog,
): Pick<Meant, 'spelled'> {
  const { parameter } = found;
  if (parameter.kind !== 'word' && parameter.kind !== 'words' && parameter.kind !== 'flag') return {};
  const known = parameter.kind === 'flag' ? ['on', 'off'] : (staticWords(found, catalog) ?? []);
  const spelled = stated?.words ?? (look === 'word' || look === 'flag' || look === 'words' ? [value] : []);
  const pairs = spelled.flatMap((own) => {
    const word = wordOf(own, known);
    return word === null ? [] : [[word, own] as const];
  });
  // Where all are spelled alike nothing need be said; where some are not, all that are known are named.
  return pairs.every(([word, own]) => word === own) ? {} : { spelled: Object.fromEntries(pairs) };
}

/** The catalogue's word that a board's word plainly is; null where none is, or more than one may be. */
function wordOf(own: string, known: readonly string[]): string | null {
  if (known.includes(own)) return own;
  const told = tellingWords(own).join(' ');
  const [word, ...others] = known.filter((one) => tellingWords(one).join(' ') === told);
  return word === undefined || others.length > 0 ? null : word;
}
