import type { Catalog } from '../../catalog/catalog';
import { inBase } from '../../catalog/known-parameter';
import type { CraftSize } from '../../catalog/model/sizes';
import { sentenceOf } from '../../checks/report/render';
import type { Craft } from '../../craft/craft';
import { interpret } from '../../craft/interpret';
import { noNames, staticWords } from '../../craft/line-check';
import { parseLine } from '../../language/parser';
import { partTextsFor } from '../completion/whole-parts';
import { formatText } from '../formatting/formatting';

/** What is asked about a sales page, in this order. Each may be left unanswered: an empty text. */
export const salesQuestions = ['size', 'kv', 'cells', 'propeller'] as const;
export type SalesQuestion = (typeof salesQuestions)[number];

/** As typed. */
export type SalesAnswers = Readonly<Record<SalesQuestion, string>>;

type ValuesByPath = ReadonlyMap<string, string>;
type PageReading =
  | { readonly values: readonly (readonly [path: string, value: string])[] }
  | { readonly fault: string };

/** Why an answer can't be written, in a sentence; null if it can, or is empty. */
export function salesFault(catalog: Catalog, question: SalesQuestion, typed: string): string | null {
  if (typed.trim() === '') return null;
  const read = readers[question](typed.trim());
  if ('fault' in read) return read.fault;
  for (const [path, value] of read.values) {
    const fault = valueFault(catalog, path, value);
    if (fault !== null) return fault;
  }
  return null;
}

/** As the script would say it. */
function valueFault(catalog: Catalog, path: string, value: string): string | null {
  const found = catalog.parameter(path);
  const statement = parseLine(`answer = ${value}`);
  if (found === undefined || statement.kind !== 'setting' || statement.value === null)
    return 'A value of one line is wanted.';
  const { problems } = interpret(statement.value, found, noNames, staticWords(found, catalog));
  for (const { id, values } of [...statement.problems, ...problems]) {
    const check = catalog.check(id);
    if (check?.level === 'must-fix') return sentenceOf(check.message, { name: path, ...values });
  }
  return null;
}

const sizePattern = /^(\d{1,6}(?:[.,]\d{1,4})?) ?(in|inch|inches|"|″|mm)$/i;
const statorPattern = /^(\d\d)(\d\d(?:[.,]\d)?)$/;
const kvPattern = /^(\d{1,6}(?:[.,]\d{1,4})?) ?(?:kv|rpm\/v)?$/i;
const cellsPattern = /^(\d{1,2}) ?(?:s|cells?)?$/i;
/** What stands beside the cells on a pack's label. */
const capacityPattern = /^(\d{2,6}) ?mah$/i;
const dischargePattern = /^(\d{1,3}) ?c$/i;
const propellerPart = /^(\d{1,6}(?:[.,]\d{1,4})?) ?(in|inch|"|″|mm)?$/i;

const readers: Readonly<Record<SalesQuestion, (typed: string) => PageReading>> = {
  size: (typed) => {
    const values: (readonly [string, string])[] = [];
    for (const part of typed.split(/[,;]/).map((one) => one.trim())) {
      const [, across, unit = ''] = sizePattern.exec(part) ?? [];
      const stator = statorValues(part);
      if (across !== undefined) values.push(['prop.diameter', lengthText(across, unit)]);
      else if (stator.length > 0) values.push(...stator);
      else
        return {
          fault: 'Write the size of the propellers, the motors or both: 5 in, 2207, or 5 in, 2207.',
        };
    }
    return { values };
  },
  kv: (typed) => {
    // A motor is sold by its size and its kv together.
    const [, size, rest] = /^(\d{4}(?:[.,]\d)?)[ -]+(\d.*)$/.exec(typed) ?? [];
    const [, kv] = kvPattern.exec(rest ?? typed) ?? [];
    return kv === undefined
      ? { fault: 'Write the motor’s turns for each volt, as the page has it: 1950, 1950kv, or 2207 1950kv.' }
      : { values: [...statorValues(size ?? ''), ['motor.kv', `${point(kv)} rpm/V`]] };
  },
  cells: (typed) => {
    const values: (readonly [string, string])[] = [];
    for (const part of partsOfLabel(typed)) {
      const read = labelValue(part);
      if (read === null) return { fault: cellsFault };
      values.push(read);
    }
    return values.some(([path]) => path === 'pack.first.cells') ? { values } : { fault: cellsFault };
  },
  propeller: (typed) => {
    const parts = typed.split(/[x×*]/i).map((part) => propellerPart.exec(part.trim()));
    const [across, pitch, blades] = parts;
    const isReadable = parts.length <= 3 && !parts.includes(null) && blades?.[2] === undefined;
    if (!isReadable || !across)
      return {
        fault: 'Write diameter, pitch and blades, as far as the page has them: 5x4.3x3, 5x4.3, or 31 mm.',
      };
    const unit = across[2] ?? 'in';
    return {
      values: [
        ['prop.diameter', lengthText(across[1] ?? '', unit)],
        ...(pitch ? ([['prop.pitch', lengthText(pitch[1] ?? '', pitch[2] ?? unit)]] as const) : []),
        ...(blades ? ([['prop.blades', blades[1] ?? '']] as const) : []),
      ],
    };
  },
};

/** 2207: twenty-two across, seven high. Empty for what is no such size. */
function statorValues(size: string): readonly (readonly [path: string, value: string])[] {
  const [, width, height] = statorPattern.exec(size) ?? [];
  if (width === undefined || height === undefined) return [];
  return [
    ['motor.stator-diameter', `${Number(width)} mm`],
    ['motor.stator-height', `${Number(point(height))} mm`],
  ];
}

const cellsFault =
  'Write one number of cells: 4, 4S, or as the label has it: 4S 1300 mAh 100C lipo. Of several packs, the one that you fly.';

/** The parts of a label, numbers with their units. */
function partsOfLabel(typed: string): readonly string[] {
  return typed.replaceAll(/(\d) (s|cells?|mah|c)(?= |$)/gi, '$1$2').split(/[\s,;]+/);
}

function labelValue(part: string): readonly [path: string, value: string] | null {
  const [, cells] = cellsPattern.exec(part) ?? [];
  if (cells !== undefined) return ['pack.first.cells', String(Number(cells))];
  const [, capacity] = capacityPattern.exec(part) ?? [];
  if (capacity !== undefined) return ['pack.first.capacity', `${Number(capacity)} mAh`];
  const [, discharge] = dischargePattern.exec(part) ?? [];
  if (discharge !== undefined) return ['pack.first.discharge', `${Number(discharge)} C`];
  return /^[a-z][a-z-]+$/i.test(part) ? ['pack.first.chemistry', part.toLowerCase()] : null;
}

function point(text: string): string {
  return text.replace(',', '.');
}

function lengthText(text: string, unit: string): string {
  return `${point(text)} ${unit.toLowerCase() === 'mm' ? 'mm' : 'in'}`;
}

/**
 * A script of what a sales page tells. What it does not tell is what is usual for the size, with a comment that says so
 * and what to write: so it shows figures at once, and nobody takes a guess for a fact. Answers must be without fault.
 * `craftOf`: reads a text as a craft.
 */
export async function salesPageScript(
  catalog: Catalog,
  answers: SalesAnswers,
  craftOf: (text: string) => Promise<Craft>,
): Promise<string> {
  const told = valuesTyped(answers);
  const size = sizeFor(catalog, told);
  const own = [...headLines(answers, size), ...craftLines(told, size)].join('\n');
  const parts = partTextsFor(await craftOf(own));
  return formatText(`${own}\n\n${parts.join('\n\n')}\n`);
}

function valuesTyped(answers: SalesAnswers): ValuesByPath {
  const told = new Map<string, string>();
  for (const question of salesQuestions) {
    const typed = answers[question].trim();
    const read = typed === '' ? null : readers[question](typed);
    if (read !== null && 'values' in read) for (const [path, value] of read.values) told.set(path, value);
  }
  return told;
}

/** The row that is nearest in propeller or stator, by their ratio; the one for five inches where nothing is told. */
function sizeFor({ sizes }: Catalog, told: ValuesByPath): CraftSize {
  const [across, stator, kv] = ['prop.diameter', 'motor.stator-diameter', 'motor.kv'].map((path) =>
    told.get(path),
  );
  const distance = (row: CraftSize): number => {
    if (across !== undefined) return ratio(across, row.diameter);
    if (stator !== undefined) return ratio(stator, row.stator[0]);
    return ratio(kv ?? usualKv, row.kv);
  };
  const [first] = [...sizes].sort((one, other) => distance(one) - distance(other));
  if (first === undefined) throw new Error('the catalogue has no sizes');
  return first;
}

const usualKv = '1950 rpm/V';

function ratio(one: string, other: string): number {
  return Math.abs(Math.log(inBase(one) / inBase(other)));
}

function headLines(answers: SalesAnswers, { title }: CraftSize): readonly string[] {
  const said = salesQuestions.map((question) => answers[question].trim()).filter((typed) => typed !== '');
  return [
    `# From a sales page: ${said.length === 0 ? 'nothing was told' : said.join(', ')}. What it does not tell is what is usual for ${title}:`,
    '# each such line says what to write in its place. The figures are those of this guess until then.',
    '# Left for you to decide: gains (none is written: the margins wait for them), board and ports, what it does when the link is lost where you fly.',
    '',
  ];
}

function craftLines(told: ValuesByPath, size: CraftSize): readonly string[] {
  const line = (path: string, usual: string, write: string): string => {
    const name = path.slice(path.lastIndexOf('.') + 1);
    const known = told.get(path);
    return known === undefined
      ? `${name} = ${usual}  # not told: ${write}`
      : `${name} = ${known}  # as the page tells`;
  };
  const cells = Number(told.get('pack.first.cells') ?? size.cells);
  return [
    '[craft]',
    'name = "Sales page"',
    `purpose = ${size.purpose}  # not told: race, freestyle, cruise, endurance, indoor, training or filming`,
    'layout = quad-x',
    line('craft.mass', size.mass, 'weigh it, ready to fly, without a pack'),
    line('craft.motor-spacing', size.spacing, 'measure it across the diagonal'),
    '',
    '[board]',
    'profile = wren  # an invented board: pick yours once it has a profile',
    '',
    '[motor]',
    line('motor.kv', kvFor(cells, size), 'the number before kv'),
    line('motor.poles', String(size.poles), 'count the magnets'),
    line('motor.stator-diameter', size.stator[0], 'the first two figures of a size such as 2207'),
    line('motor.stator-height', size.stator[1], 'the last two figures of a size such as 2207'),
    `cells-limit = ${cells}  # not told: the most that its page allows`,
    'spin = inward  # must be the same under [esc]',
    'idle = 6 %',
    '# resistance and idle-current, from the maker or measured, narrow every figure: write them once you know them.',
    '',
    '[prop]',
    line('prop.diameter', size.diameter, 'measure it from tip to tip'),
    line('prop.pitch', size.pitch, 'the second figure on the propeller'),
    line('prop.blades', String(size.blades), 'count them'),
    '',
    '[pack.first]',
    line('pack.first.chemistry', size.chemistry, 'the label says it'),
    line('pack.first.cells', String(cells), 'the number before S on the label'),
    line('pack.first.capacity', size.capacity, 'the label says it'),
    line('pack.first.discharge', size.discharge, 'the number before C on the label'),
    line(
      'pack.first.mass',
      `${Math.round(cells * inBase(size.cellMass) * 1000)} g`,
      'weigh it with its plug',
    ),
  ];
}

/** The same speed from more cells takes less kv; in steps that motors are sold in. */
function kvFor(cells: number, size: CraftSize): string {
  const kv = (Number.parseFloat(size.kv) * size.cells) / cells;
  return `${Math.round(kv / 50) * 50} rpm/V`;
}
