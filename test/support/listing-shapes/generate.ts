import fc from 'fast-check';
import { type DirtKind, dirtKinds, together } from './dirt';
import type { Item } from './listing';
import { Lot } from './lot';
import { furtherName, joints, type NameStyle, nameIn } from './names';
import type { Board } from './print';
import type { Shape } from './shape';
import { type ShapeName, shapeNames, shapes } from './shapes';
import { statedOf } from './stated';
import { type House, houseBy, type Look, looks, valueIn } from './values';
import { germanGroups, groupWords, places, remarkWords } from './words';

/** One setting as it is drawn; the numbers choose among what the shape allows. */
export interface Draw {
  readonly look: number;
  readonly group: number;
  readonly seed: number;
}

/** All that a listing is made of, as plain data: small numbers and short lists give plain listings. */
export interface Plan {
  readonly shape: ShapeName;
  readonly choices: number;
  readonly style: number;
  readonly dirt: readonly DirtKind[];
  readonly draws: readonly Draw[];
}

const draw: fc.Arbitrary<Draw> = fc.record({ look: fc.nat(399), group: fc.nat(99), seed: fc.nat(99_999) });

/** Listings of 3 to 200 settings, most of them short. */
export function plans(among: readonly ShapeName[] = shapeNames): fc.Arbitrary<Plan> {
  return fc.record({
    shape: fc.constantFrom(...among),
    choices: fc.nat(9999),
    style: fc.nat(99),
    dirt: fc.oneof(
      { weight: 2, arbitrary: fc.constant([]) },
      { weight: 3, arbitrary: fc.subarray([...dirtKinds], { minLength: 1, maxLength: 2 }) },
    ),
    draws: fc.oneof(
      { weight: 4, arbitrary: fc.array(draw, { minLength: 3, maxLength: 20, size: 'max' }) },
      { weight: 1, arbitrary: fc.array(draw, { minLength: 20, maxLength: 200, size: 'max' }) },
    ),
  });
}

/** A board that prints a listing, with what is needed to draw more of its settings. */
export interface DrawnBoard extends Board {
  readonly house: House;
  readonly plan: Plan;
}

export function boardOf(plan: Plan): DrawnBoard {
  const lot = new Lot(plan.choices);
  const house = houseBy(lot);
  const shape: Shape = shapes[plan.shape](lot, house);
  const style = shape.styles[plan.style % shape.styles.length] ?? 'plain';
  const isMixed = lot.chance(0.2);
  const joint = lot.one(joints);
  const groups = groupsOf(shape, lot);
  const names = new Names(shape, joint);
  const grouped = plan.draws
    .map((one) => ({ one, group: one.group % groups.length }))
    .sort((left, right) => left.group - right.group);
  const items = grouped.map(({ one, group }) => {
    const own = new Lot(one.seed);
    const named = isMixed ? own.one(shape.styles) : style;
    return itemOf(
      shape,
      house,
      one.look,
      groups[group] ?? [],
      names.next(named, groups[group] ?? [], own),
      own,
    );
  });
  const spared = [
    ...shape.spared,
    ...(style === 'digits' || isMixed ? (['stamps', 'counters'] as const) : []),
  ];
  return { shape, items, dirt: together(plan.dirt, spared), dirtSeed: plan.choices, house, plan };
}

/** Names that are not taken yet, unless the shape has names that come again. */
class Names {
  private readonly taken = new Map<string, Set<string>>();

  constructor(
    private readonly shape: Shape,
    private readonly joint: (typeof joints)[number],
  ) {}

  next(style: NameStyle, groups: readonly string[], lot: Lot): string {
    const taken = this.takenIn(groups);
    if (this.shape.repeats && taken.size > 0 && lot.chance(0.4)) return lot.one([...taken]);
    const drawn = nameIn(style, this.joint, lot);
    const dress = this.shape.dressed ?? ((name: string) => name);
    let name = dress(drawn, lot);
    for (let count = 2; taken.has(name); count += 1) name = dress(furtherName(style, drawn, count), lot);
    taken.add(name);
    return name;
  }

  private takenIn(groups: readonly string[]): Set<string> {
    const key = JSON.stringify(groups);
    const taken = this.taken.get(key) ?? new Set<string>();
    this.taken.set(key, taken);
    return taken;
  }
}

function groupsOf({ groups, headed }: Shape, lot: Lot): readonly (readonly string[])[] {
  if (groups === 'none') return [[]];
  const words = lot.some([...groupWords, ...germanGroups], 2 + lot.whole(4));
  const top = headed === 'all' && lot.chance(0.3) ? [[]] : [];
  if (groups === 'one') return [...top, ...words.map((word) => [word])];
  return [
    ...top,
    ...words.flatMap((word) => [[word], ...lot.some(places, lot.whole(3)).map((place) => [word, place])]),
  ];
}

export function itemOf(
  shape: Shape,
  house: House,
  look: number,
  groups: readonly string[],
  name: string,
  lot: Lot,
): Item {
  const allowed: readonly Look[] = [
    ...looks.filter((one) => !shape.without.includes(one)),
    ...(shape.own ?? []),
  ];
  const value = fittingValue(shape, house, allowed[look % allowed.length] ?? 'whole', lot);
  const above = lot.chance(0.15) ? remark(lot) : null;
  return { groups, name, value, stated: statedOf(shape, house, value, lot), above };
}

/** A comment; some hold what was a setting once. */
function remark(lot: Lot): string {
  return lot.chance(0.3) ? `kestrel = ${lot.whole(90)}` : lot.some(remarkWords, 4).join(' ');
}

/** A value that the shape can print; where the look has none, a whole number. */
export function fittingValue(shape: Shape, house: House, look: Look, lot: Lot): Item['value'] {
  const value = valueIn(look, house, lot);
  const unit = value.unit === null ? '' : value.unit.gap + value.unit.text;
  const isBad = value.quote === '' && shape.badValue?.test(value.text + unit) === true;
  return isBad ? valueIn('whole', house, lot) : value;
}
