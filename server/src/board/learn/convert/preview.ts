import type { FoundParameter } from '../../../catalog/catalog';
import type { Meant } from '../../../catalog/model/board-profile';
import { valueText } from '../../../craft/value-text';
import { liesWithin } from '../../../units/interval';
import { exactText } from '../../../units/quantity';
import { fromBase, toBase, unitOf } from '../../../units/unit';
import { countingOf, holdsNumbers, unitFor } from '../../meaning/counting';
import { NumberSpelling } from '../../meaning/number-spelling';
import { partParameter } from '../../meaning/part-parameter';
import { Speller } from '../../meaning/spelling';
import { type Ground, type Preview, parameterTaken, type TakenAs } from './taken';

/**
 * What a setting's value would mean: the quantity that it comes to, what is usual, and whether it is. Asks nothing of
 * the other settings; of a range, a curve or a list it looks at this setting's part alone.
 */
export function previewOf(taken: TakenAs, how: Pick<Meant, 'counts' | 'spelled'>, ground: Ground): Preview {
  const { setting } = taken;
  const whole = parameterTaken(taken, ground.catalog);
  if (whole === undefined) return unread(setting.value, `there is no parameter ${taken.means}`, null);
  const found = partParameter(whole, taken.as);
  const usual = usualText(found);
  return holdsNumbers(found.parameter)
    ? numberPreview(taken, how, ground, found, usual)
    : wordPreview(taken, how, ground, found, usual);
}

/** In SI; null for what is no number. */
function numberOf(
  value: string,
  { counts }: Pick<Meant, 'counts'>,
  found: FoundParameter,
  { manner }: Ground,
): number | null {
  return new NumberSpelling(countingOf(counts, found.parameter), found, manner.decimal).read(value);
}

function numberPreview(
  taken: TakenAs,
  how: Pick<Meant, 'counts' | 'spelled'>,
  ground: Ground,
  found: FoundParameter,
  usual: string | null,
): Preview {
  const { value: token } = taken.setting;
  const word = Object.entries(how.spelled ?? {}).find(([, spelled]) => spelled === token)?.[0];
  if (word !== undefined) return { token, quantity: word, reason: null, usual, lies: null };
  const number = numberOf(token, how, found, ground);
  if (number === null) return unread(token, 'it is no number', usual);
  const isWhole = found.parameter.kind === 'count' || found.parameter.kind === 'place';
  if (isWhole && !Number.isInteger(number)) return unread(token, 'a whole number is wanted', usual);
  const quantity = shownText(number, unitFor(found.parameter));
  return { token, quantity, reason: null, usual, lies: liesOf(number, found) };
}

/** A preview is compared with what is usual: nobody reads more of it. */
const shownDigits = 6;

function shownText(base: number, unit: string): string {
  const rounded = Number(fromBase(base, unitOf(unit)).toPrecision(shownDigits));
  return exactText(toBase(rounded, unitOf(unit)), unit);
}

function wordPreview(
  { setting, as, means }: TakenAs,
  { spelled }: Pick<Meant, 'counts' | 'spelled'>,
  ground: Ground,
  found: FoundParameter,
  usual: string | null,
): Preview {
  // A listing keeps the quotes of its texts apart from them.
  const token = setting.value;
  const row = { setting: { name: setting.name, spelled }, groups: [], name: setting.name, index: 0 };
  const isEntry = typeof as === 'object' && 'entry' in as;
  const meaning = { means, by: isEntry ? ('each' as const) : ('value' as const), parts: [row] };
  const read = new Speller(meaning, found, { ...ground.manner, quote: '' }).read([token]);
  if (read.kind === 'unclear') return unread(token, read.reason, usual);
  return { token, quantity: valueText(read.value, found.parameter), reason: null, usual, lies: null };
}

function unread(token: string, reason: string, usual: string | null): Preview {
  return { token, quantity: null, reason, usual, lies: null };
}

function usualText({ parameter }: FoundParameter): string | null {
  switch (parameter.kind) {
    case 'quantity':
    case 'range':
    case 'count':
      return parameter.usual.join(' to ');
    case 'curve':
      return parameter.up.usual.join(' to ');
    default:
      return null;
  }
}

function liesOf(number: number, { usual, range }: FoundParameter): Preview['lies'] {
  if (range === undefined) return null;
  if (usual !== undefined && liesWithin(usual, number)) return 'usual';
  return liesWithin(range, number) ? 'possible' : 'outside';
}
