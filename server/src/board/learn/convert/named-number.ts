import type { FoundParameter } from '../../../catalog/catalog';
import type { Parameter } from '../../../catalog/model/parameter';
import { previewOf } from './preview';
import type { Conversion, Ground, TakenAs } from './taken';

/** `out 3`, `M3`: what ends in its number. */
const named = /^(\p{L}[\p{L}\p{M} _.-]{0,20})([1-9]\d?)$/u;

/**
 * A number that the board calls by a name that ends in it: where a word stands in a list, or `channel 5` and what else
 * boards call it. Null for any other value, and where somebody has said how it counts.
 */
export function namedNumber(
  taken: TakenAs,
  { parameter }: FoundParameter,
  ground: Ground,
): Conversion | null {
  const { as, counted, setting } = taken;
  if (parameter.kind !== 'count' || counted !== undefined) return null;
  if (setting.look === 'number') return numberBehindName(taken, parameter, ground);
  const [, name, number = ''] = named.exec(setting.value) ?? [];
  if (name === undefined) return null;
  const isPlace = typeof as === 'object' && 'numberOf' in as;
  const first = isPlace ? 1 : firstCalled(name, parameter);
  const [least, most] = parameter.range;
  const own = Number(number) + (first ?? 0) - 1;
  if (first === null || own < least || own > most) return null;
  const places = Array.from({ length: most - first + 1 }, (_, index) => index + 1);
  const table = Object.fromEntries(places.map((place) => [name + place, String(place + first - 1)]));
  const meant = { counts: { table } };
  return {
    sureness: 'likely',
    meant,
    why:
      isPlace || first === 1
        ? 'its name ends in its number'
        : `${name.trim()} 1 is number ${first} in most boards`,
    preview: previewOf(taken, meant, ground),
    candidates: [],
    takesRole: false,
  };
}

/** `arm aux = 2`: the name says that the number counts from another one, unless the board counts all alike. */
function numberBehindName(
  taken: TakenAs,
  parameter: Parameter & { readonly kind: 'count' },
  ground: Ground,
): Conversion | null {
  const { name, number } = taken.setting;
  const word = name.split(/[^\p{L}]+/u).findLast((one) => one !== '') ?? '';
  const first = firstCalled(word, parameter);
  if (first === null || first === 1) return null;
  const ways = [{ counts: { offset: 1 - first } }, {}].map((meant) => ({
    meant,
    title: 'counts' in meant ? `${word} 1 is ${first}` : 'as it stands',
    preview: previewOf(taken, meant, ground),
  }));
  const [shifted] = ways;
  const [usualLow] = parameter.usual;
  // What is usual only when it is shifted says it.
  const isSure = shifted?.preview.lies === 'usual' && number < usualLow;
  const why = `“${word}” in its name counts from ${first} on in most boards`;
  return {
    sureness: isSure ? 'likely' : 'ask',
    meant: isSure ? (shifted?.meant ?? null) : null,
    why: isSure ? why : `${why}, and not in all`,
    preview: isSure
      ? shifted.preview
      : {
          ...previewOf(taken, {}, ground),
          quantity: null,
          reason: 'nobody has said how it is counted',
          lies: null,
        },
    candidates: ways,
    takesRole: false,
  };
}

/** Whether a value is a number of a count by one of the names that boards have for it. */
export function isNamedNumber(value: string, parameter: Parameter): boolean {
  const [, name] = named.exec(value) ?? [];
  return name !== undefined && firstCalled(name, parameter) !== null;
}

/** What 1 behind a name stands for; null where the name is none of the parameter's. */
function firstCalled(name: string, parameter: Parameter): number | null {
  const word = name.toLowerCase().split(/[^\p{L}]/u)[0] ?? '';
  const calledBy = parameter.kind === 'count' ? (parameter.calledBy ?? []) : [];
  return calledBy.find(({ words }) => words.includes(word))?.first ?? null;
}
