import type { ListedSetting, Listing } from '../../../server/src/board/listing/listing';
import { escapeCode } from './dirt';
import type { PrintedListing, Stretch, TrueSetting } from './listing';
import type { Shape } from './shape';

/** What a reading of a printed listing has got wrong, a sentence each; empty where all is as it was printed. */
export function disagreements(shape: Shape, printed: PrintedListing, read: Listing): readonly string[] {
  const found = new Map(read.settings.map((setting) => [setting.at.name.end, setting]));
  const wrong = printed.settings.flatMap((setting) => {
    const one = found.get(setting.at.name.end);
    found.delete(setting.at.name.end);
    if (one === undefined) return [`not found: ${JSON.stringify(lineAt(read.text, setting.at.name.start))}`];
    return settingFaults(shape, read.text, setting, one).map(
      (fault) => `${setting.groups.join(' > ')} ${setting.name}: ${fault}`,
    );
  });
  const invented = [...found.values()].map(
    ({ name, at }) => `no setting: ${name} in ${JSON.stringify(lineAt(read.text, at.name.start))}`,
  );
  const refused = read.refused === null ? [] : [`refused: ${read.refused}`];
  return [
    ...refused,
    ...wrong,
    ...invented,
    ...headingFaults(shape, printed, read),
    ...commentFaults(printed, read),
  ];
}

function settingFaults(
  shape: Shape,
  text: string,
  setting: TrueSetting,
  read: ListedSetting,
): readonly string[] {
  return [
    ...identityFaults(shape, setting, read),
    ...(setting.at.value === null
      ? presenceFaults(setting, read)
      : valueFaults(text, setting, setting.at.value, read)),
    ...statedFaults(setting, read),
  ];
}

function different(what: string, truth: unknown, read: unknown): readonly string[] {
  const [one, other] = [JSON.stringify(truth), JSON.stringify(read)];
  return one === other ? [] : [`${what} is ${one}, read as ${other}`];
}

/** Where a group and a name may be parted in several places, the steps count however they are parted. */
function steps(groups: readonly string[], name: string): readonly string[] {
  return [...groups, name]
    .join(' ')
    .split(/[\s./:>|[\]()#]+/)
    .filter((step) => step !== '');
}

function identityFaults(shape: Shape, setting: TrueSetting, read: ListedSetting): readonly string[] {
  const occurrence = different('occurrence', setting.occurrence, read.occurrence);
  if (shape.isExact) {
    return [
      ...different('groups', setting.groups, read.groups),
      ...different('name', setting.name, read.name),
      ...occurrence,
    ];
  }
  const headed = shape.headed === 'all' ? steps(setting.groups, '') : [];
  return [
    ...different('headed groups', headed, steps(read.groups, '').slice(0, headed.length)),
    ...different('path', steps(setting.groups, setting.name), steps(read.groups, read.name)),
    ...occurrence,
  ];
}

function presenceFaults(setting: TrueSetting, read: ListedSetting): readonly string[] {
  return [
    ...different('style', 'presence', read.style.kind),
    ...different('value', setting.value.text, read.value),
  ];
}

/** A unit may be a part of the value or be said beside it. */
function valueFaults(
  text: string,
  { value, at }: TrueSetting,
  place: Stretch,
  read: ListedSetting,
): readonly string[] {
  const unit = value.unit === null ? '' : value.unit.gap + value.unit.text;
  const isWithUnit = unit !== '' && read.value === value.text + unit;
  const end = place.end + (isWithUnit ? unit.length : 0);
  const expected = isWithUnit ? value.text + unit : value.text;
  const isEmpty = place.start === place.end;
  const mark = quoteAround(text, place.start, end);
  return [
    ...different('value', expected, read.value),
    ...(isEmpty
      ? emptyPlaceFaults(text, at.name, read)
      : different('place', { start: place.start, end }, read.at.value)),
    ...different('style', mark === null ? { kind: 'plain' } : { kind: 'quoted', mark }, read.style),
    ...(unit === '' || isWithUnit ? [] : different('unit', value.unit?.text, read.stated?.unit)),
  ];
}

/** The quotes in which a value stands, with colours inside of them or without; null where it stands in none. */
export function quoteAround(text: string, start: number, end: number): string | null {
  const before = withoutColours(text.slice(Math.max(0, start - 20), start)).at(-1);
  const behind = withoutColours(text.slice(end, end + 20))[0];
  return before !== undefined && /["']/.test(before) && before === behind ? before : null;
}

function withoutColours(text: string): string {
  return text.replace(new RegExp(`${escapeCode}\\[[\\d;]*m`, 'g'), '');
}

/** Nothing may stand anywhere on the rest of its line. */
function emptyPlaceFaults(text: string, name: Stretch, { at }: ListedSetting): readonly string[] {
  const between = text.slice(Math.min(name.end, at.value.start), Math.max(name.end, at.value.start));
  const isThere = at.value.start === at.value.end && !/[\r\n]/.test(between);
  return isThere ? [] : [`place of the empty value is ${JSON.stringify(at.value)}`];
}

function statedFaults({ stated }: TrueSetting, read: ListedSetting): readonly string[] {
  return [
    ...different('range', stated?.range ?? null, read.stated?.range ?? null),
    ...different('words', stated?.words ?? null, read.stated?.words ?? null),
    ...different('default', stated?.default ?? null, read.stated?.default ?? null),
    ...different('remark', stated?.remark ?? null, read.stated?.remark ?? null),
  ];
}

/** Each group has its heading, and nothing else has one. A heading may hold the whole path of its group. */
function headingFaults({ headed }: Shape, printed: PrintedListing, read: Listing): readonly string[] {
  if (headed === 'none' || printed.headings.length === 0) return [];
  const key = (groups: readonly string[]) => steps(groups, '').join(' ');
  const told = new Set(read.headings.map(({ groups }) => key(groups)));
  const all = printed.settings.map(({ groups }) => groups).filter((groups) => groups.length > 0);
  const allowed = new Set(all.flatMap((groups) => groups.map((_, index) => key(groups.slice(0, index + 1)))));
  return [
    ...[...new Set(all.map(key))].filter((one) => !told.has(one)).map((one) => `no heading of ${one}`),
    ...[...told].filter((one) => !allowed.has(one)).map((one) => `no group: ${one}`),
  ];
}

function commentFaults(printed: PrintedListing, read: Listing): readonly string[] {
  const starts = read.comments.map(({ start }) => start);
  let at = 0;
  return printed.comments.flatMap(({ start, end }) => {
    while ((starts[at] ?? end) < start) at += 1;
    const isTold = (starts[at] ?? end) < end;
    return isTold ? [] : [`no comment: ${JSON.stringify(lineAt(read.text, start))}`];
  });
}

function lineAt(text: string, offset: number): string {
  const before =
    text
      .slice(0, offset)
      .split(/[\r\n]/)
      .at(-1) ?? '';
  return before + (text.slice(offset).split(/[\r\n]/)[0] ?? '');
}
