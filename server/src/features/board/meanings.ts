import { TextLines } from '../../board/layer/text-lines';
import { confirmedRows, type Outcome } from '../../board/learn/confirm';
import { previewOf } from '../../board/learn/convert/preview';
import { type Ground, parameterTaken } from '../../board/learn/convert/taken';
import { withList } from '../../board/learn/edit/with-meanings';
import { type LearnedSetting, learnedLookOf, settingName } from '../../board/learn/learned-settings';
import { type Candidate, familyOf, meansOf, type Proposal } from '../../board/learn/propose/proposal';
import { proposals } from '../../board/learn/propose/propose';
import { type Confirmation, nothingConfirmed } from '../../board/learn/said';
import type { Listing } from '../../board/listing/listing';
import { digitsIn } from '../../board/listing/packed';
import { betweenIn, valuesIn } from '../../board/listing/values-in';
import { parameterPath } from '../../board/meaning/parameter-path';
import { wordOfPart } from '../../board/meaning/part-parameter';
import { openMember } from '../../board/profile/members';
import { mannerOf, type Profile, profileOf } from '../../board/profile/profile';
import type { Catalog } from '../../catalog/catalog';
import type {
  BoardProfile,
  BoardSetting,
  Meant,
  PartHeld,
  RowMeant,
} from '../../catalog/model/board-profile';
import type { MeaningChoice, MeaningRow, MeaningSaid } from './meaning-row';
import { portSaid, portsSayable } from './port-settings';

/** All settings of a board, with what each may mean and what is said of it. `listing`: that they are of, one for one. */
export function meaningRows(
  board: BoardProfile,
  settings: readonly LearnedSetting[],
  catalog: Catalog,
  listing: Listing | null = null,
): readonly MeaningRow[] {
  const proposed = proposals(settings, catalog);
  const firsts = new Map(
    settings.flatMap((setting, index) => {
      const one = proposed[index] ?? null;
      return one === null ? [] : [[settingName(setting), sayingOf(one)] as const];
    }),
  );
  const ground = groundFor(board, settings, firsts, catalog);
  const outcomes = outcomesOf(settings, firsts, ground);
  const profile = profileOf(board);
  const ports = portsSayable(settings);
  const lines = listing === null ? null : new TextLines(listing.text);
  return settings.map((setting, index) => {
    const proposal = proposed[index] ?? null;
    const first = outcomes.get(settingName(setting));
    const port = ports.get(settingName(setting)) ?? null;
    const at = listing?.settings[index]?.at.name.start;
    const line = lines === null || at === undefined ? null : lines.placeAt(at).line;
    return { ...rowOf(setting, proposal, first, profile, ground), line, port };
  });
}

/** What a setting would mean by what a person says of it. */
export function choiceSaid(
  board: BoardProfile,
  setting: LearnedSetting,
  saying: Confirmation,
  catalog: Catalog,
): MeaningChoice | null {
  const said = new Map([[settingName(setting), saying]]);
  const ground = groundFor(board, [setting], said, catalog);
  const outcome = outcomesOf([setting], said, ground).get(settingName(setting));
  return outcome === undefined ? null : choiceOf(outcome, familyOfPath(saying.means, catalog), '', catalog);
}

/** What a setting means by its row; null where nobody has said. */
export function saidOf(
  setting: LearnedSetting,
  profile: Profile | null,
  catalog: Catalog,
): Pick<MeaningRow, 'said' | 'isShared'> {
  const found = profile?.find(setting.groups, setting.name, setting.occurrence);
  if (found === undefined || profile === null) return { said: null, isShared: false };
  const row = profile.board.settings[found.row.index];
  const isShared = found.member !== null || [row?.group ?? [], row?.name ?? ''].flat().some(isOpen);
  if (row === undefined) return { said: null, isShared };
  const { port } = row;
  if (port !== undefined) return { said: portSaid(setting, port, profile.board, catalog), isShared };
  const ground = { catalog, manner: profile.manner };
  return { said: shownRow(setting, row, found.member, ground), isShared };
}

function isOpen(text: string): boolean {
  return text.includes(openMember);
}

function sayingOf(one: Candidate): Confirmation {
  return { means: meansOf(one), ...(one.part === null ? {} : { parts: [one.part] }) };
}

/** On what conversions of a board’s settings are proposed, with what is taken of them. */
export function groundFor(
  board: BoardProfile,
  settings: readonly LearnedSetting[],
  said: ReadonlyMap<string, Confirmation>,
  catalog: Catalog,
): Ground {
  const meant = new Map(
    [...said].map(([key, { means, parts }]) => [
      key,
      { means, ...(parts === undefined ? {} : { as: parts[0] }) },
    ]),
  );
  const { text } = withList(board, settings, meant, catalog);
  if (text === undefined) throw new Error('a board whose settings are said has a text');
  return { catalog, manner: mannerOf(text) };
}

/** What became of a saying, with what the row would say. */
interface SayingResult {
  readonly outcome: Outcome;
  readonly row: RowMeant | null;
}

function outcomesOf(
  settings: readonly LearnedSetting[],
  said: ReadonlyMap<string, Confirmation>,
  ground: Ground,
): ReadonlyMap<string, SayingResult> {
  const confirmed = new Map([...said].map(([key, saying]) => [key, [saying]] as const));
  const { rows, outcomes } = confirmedRows(settings, { ...nothingConfirmed, settings: confirmed }, ground);
  return new Map(outcomes.map((outcome) => [outcome.key, { outcome, row: rows.get(outcome.key) ?? null }]));
}

function rowOf(
  setting: LearnedSetting,
  proposal: Proposal | null,
  first: SayingResult | undefined,
  profile: Profile | null,
  ground: Ground,
): Omit<MeaningRow, 'line' | 'port'> {
  const { groups, name, value } = setting;
  const { catalog } = ground;
  const key = settingName(setting);
  const values = setting.look === 'list' ? valuesOf(setting, ground) : [];
  const rivals = (proposal?.rivals ?? []).flatMap((one) => {
    const saying = new Map([[key, sayingOf(one)]]);
    const said = outcomesOf([setting], saying, ground).get(key);
    return said === undefined ? [] : [choiceOf(said, familyOf(one.parameter), one.why, catalog)];
  });
  const own =
    proposal === null || first === undefined
      ? []
      : [choiceOf(first, familyOf(proposal.parameter), proposal.why, catalog)];
  return {
    key,
    group: groups.join(' / '),
    name,
    value,
    values,
    words: wordsHeld(setting, values),
    beside: besideOf(setting),
    sureness: proposal?.sureness ?? null,
    choices: [...own, ...rivals],
    ...saidOf(setting, profile, catalog),
  };
}

/** `bit 0 buzzer, bit 3 lights`; null where none are said. */
function bitsText(bits: Confirmation['bits']): string | null {
  return bits === undefined
    ? null
    : Object.entries(bits)
        .map(([word, bit]) => `bit ${bit} ${word}`)
        .join(', ');
}

function choiceOf(
  { outcome, row }: SayingResult,
  family: string,
  reason: string,
  catalog: Catalog,
): MeaningChoice {
  const { is, said, why, conversions } = outcome;
  const { means, parts = [] } = said;
  const [first] = conversions;
  const isAlone =
    conversions.length === 1 && said.item === undefined && said.bit === undefined && said.bits === undefined;
  const quantities = conversions.map(({ preview }) => preview.quantity);
  const as = parts[0] === undefined ? {} : { as: parts[0] };
  return {
    means,
    part: parts.length === 0 ? bitsText(said.bits) : parts.map(partText).join(', '),
    as: parts[0] ?? null,
    family,
    title: parameterTaken(said, catalog)?.parameter.title ?? means,
    reason,
    row: is === 'taken' || said.isRole === true ? row : null,
    quantity: quantities.some((one) => one === null) ? null : quantities.join(', ') || null,
    usual: first?.preview.usual ?? null,
    lies: isAlone ? (first?.preview.lies ?? null) : null,
    counted: why,
    ways: isAlone
      ? (first?.candidates ?? []).map(({ title, meant, preview }) => ({
          title,
          row: { means, ...as, ...meant },
          quantity: preview.quantity,
          lies: preview.lies,
        }))
      : [],
    takesRole: isAlone && parts.length === 0 && (first?.takesRole ?? false),
  };
}

function partText(part: PartHeld): string {
  if (typeof part === 'string') return part;
  return Object.entries(part)
    .map(([key, value]) => `${key === 'numberOf' ? 'number of' : key} ${value}`)
    .join(' ');
}

/** A path as the family that its parameter is of. */
function familyOfPath(means: string, catalog: Catalog): string {
  return familyOf(parameterTaken({ means }, catalog)?.name ?? means);
}

function shownRow(
  setting: LearnedSetting,
  row: BoardSetting,
  member: string | null,
  ground: Ground,
): MeaningSaid | null {
  const meanings: readonly Meant[] = row.items ?? [row];
  const named = meanings.flatMap(({ means, role }) => means ?? role ?? []);
  const [first] = named;
  if (first === undefined) return null;
  const path = member === null ? first : parameterPath({ means: first }, member);
  const values = row.items === undefined ? [setting.value] : valuesOfItems(setting, row, ground);
  const previews = meanings.flatMap(({ means, as, ...how }, index) => {
    if (means === undefined) return [];
    const value = values[index] ?? '';
    const one = { ...setting, value, ...learnedLookOf(value, ground.manner.decimal) };
    const taken = { setting: one, means: member === null ? means : parameterPath({ means }, member) };
    const preview = previewOf({ ...taken, ...(as === undefined ? {} : { as }) }, how, ground);
    const word = row.items === undefined ? null : wordOfPart(as);
    // Of several, each is told with the word that it is about.
    return [
      word === null || preview.quantity === null
        ? preview
        : { ...preview, quantity: `${word} ${preview.quantity}` },
    ];
  });
  return {
    means: [...new Set([path, ...named.slice(1)])].join(', '),
    title: parameterTaken({ means: path }, ground.catalog)?.parameter.title ?? path,
    family: familyOfPath(path, ground.catalog),
    isRole: meanings.some(({ role }) => role !== undefined),
    row: meaningOf(row),
    quantity: previews.flatMap(({ quantity }) => quantity ?? []).join(', ') || null,
    usual: previews[0]?.usual ?? null,
    lies: previews.length === 1 ? (previews[0]?.lies ?? null) : null,
  };
}

/** What a row says of its meaning, and nothing else. */
function meaningOf({ means, as, counts, spelled, role, items, between, packed }: BoardSetting): RowMeant {
  return {
    ...(means === undefined ? {} : { means }),
    ...(as === undefined ? {} : { as }),
    ...(counts === undefined ? {} : { counts }),
    ...(spelled === undefined ? {} : { spelled }),
    ...(role === undefined ? {} : { role }),
    ...(items === undefined ? {} : { items }),
    ...(between === undefined ? {} : { between }),
    ...(packed === undefined ? {} : { packed }),
  };
}

function valuesOfItems(
  setting: LearnedSetting,
  { packed, items = [] }: BoardSetting,
  ground: Ground,
): readonly string[] {
  return packed === true
    ? (digitsIn(setting.value, items.length, ground.manner.decimal) ?? [])
    : valuesOf(setting, ground);
}

function valuesOf({ value }: LearnedSetting, { manner }: Ground): readonly string[] {
  return valuesIn(value, betweenIn(value, manner.decimal)).map(({ text }) => text);
}

/** A range of so many whole numbers is a choice of them. */
const fewNumbers = 16;

function wordsHeld({ value, stated }: LearnedSetting, values: readonly string[]): readonly string[] {
  const { low = '', high = '' } = stated?.range ?? {};
  const isWhole = [low, high].every((end) => /^\d{1,3}$/.test(end));
  const count = isWhole ? Number(high) - Number(low) + 1 : 0;
  const numbers = Array.from({ length: count <= fewNumbers ? Math.max(0, count) : 0 }, (_, index) =>
    String(Number(low) + index),
  );
  return [...new Set([...numbers, ...(values.length > 0 ? values : [value]), ...(stated?.words ?? [])])];
}

function besideOf({ stated }: LearnedSetting): string {
  if (stated === null) return '';
  const { range, words, default: byDefault, unit, remark } = stated;
  return [
    ...(range === null ? [] : [`${range.low} to ${range.high}`]),
    ...(unit === null ? [] : [unit]),
    ...(words === null ? [] : [words.join(', ')]),
    ...(byDefault === null ? [] : [`default ${byDefault}`]),
    ...(remark === null ? [] : [remark]),
  ].join(' · ');
}
