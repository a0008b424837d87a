import { saysOf } from '../forms/said-between';
import type { DecimalMark } from '../number-look';
import { closing, isBlank, opening } from '../text/characters';

interface Bracket {
  readonly open: string;
  readonly close: string;
  readonly isTight: boolean;
}

interface Bracketed {
  readonly value: string;
  readonly open: string;
  readonly inner: string;
  readonly isTight: boolean;
}

const shareOfAny = 0.8;

const leastOfAny = 3;

/** Brackets behind values that say something of them: by what is in them, or because nearly every value has one. */
export function bracketsIn(values: readonly string[], mark: DecimalMark): readonly Bracket[] {
  const found: Bracket[] = [];
  let rest = values;
  for (let round = 0; round < 4; round += 1) {
    const tails = rest.flatMap((value) => bracketBehind(value) ?? []);
    const next = [...closing.keys()].find((open) =>
      saysSomething(
        tails.filter((tail) => tail.open === open),
        rest.length,
        mark,
      ),
    );
    if (next === undefined) break;
    const own = tails.filter(({ open }) => open === next);
    const bracket = {
      open: next,
      close: closing.get(next) ?? '',
      isTight: own.some(({ isTight }) => isTight),
    };
    if (found.some(({ open }) => open === next)) break;
    found.push(bracket);
    rest = rest.map((value) => withoutBrackets(value, [bracket]));
  }
  return found;
}

function saysSomething(tails: readonly Bracketed[], values: number, mark: DecimalMark): boolean {
  if (tails.length === 0) return false;
  const said = tails.filter(({ inner, value }) => saysOf(inner, value, mark)).length;
  return 2 * said >= tails.length || (tails.length >= leastOfAny && tails.length >= shareOfAny * values);
}

/** The bracket that ends a value, with a value before it. */
function bracketBehind(value: string): Bracketed | null {
  const close = value.at(-1) ?? '';
  const open = opening.get(close);
  if (open === undefined) return null;
  let depth = 0;
  for (let at = value.length - 1; at > 0; at -= 1) {
    if (value[at] === close) depth += 1;
    else if (value[at] === open) depth -= 1;
    if (depth > 0) continue;
    const before = value.slice(0, at).trimEnd();
    if (before === '') return null;
    const isTight = !isBlank(value[at - 1]);
    // Right behind a word, brackets are part of it: `all(2)`.
    if (isTight && !/\d[%\p{L}]{0,3}$/u.test(before)) return null;
    return { value: before, open, inner: value.slice(at + 1, -1).trim(), isTight };
  }
  return null;
}

export function withoutBrackets(value: string, brackets: readonly Bracket[]): string {
  let rest = value;
  for (let round = 0; round < 4; round += 1) {
    const tail = bracketBehind(rest);
    const own = brackets.find(({ open }) => open === tail?.open);
    if (tail === null || own === undefined || (tail.isTight && !own.isTight)) return rest;
    rest = tail.value;
  }
  return rest;
}

/** The value alone, whatever brackets say of it. */
export function withoutAnyBracket(value: string): string {
  let rest = value;
  for (let tail = bracketBehind(rest); tail !== null; tail = bracketBehind(rest)) rest = tail.value;
  return rest;
}
