import { heldAs } from '../../board/meaning/held-as';
import { profileOf } from '../../board/profile/profile';
import { fixFor } from '../../checks/report/rule-fix';
import type { Craft } from '../../craft/craft';
import type { PlacedLine } from '../../craft/setting';
import { CraftView } from '../../craft/view';
import { type AxisName, axisNames } from '../../figures/axis-names';
import {
  type ChainName,
  chainNames,
  isLowpass,
  isUnfiltered,
  kindOf,
  type Stage,
  stageAt,
  stagesOf,
} from '../../figures/filter-stages';
import { halfRate } from '../../physics/sampling';
import { plainNumber } from '../../units/number-text';
import { fromBase, unitOf } from '../../units/unit';
import { asDocumentEdits } from '../what-if';
import type { Wish } from './wish';

/** A setting that may move: a number, whether a filter is on, or a factor on several gains. */
export interface Movable {
  readonly kind: 'number' | 'switch' | 'factor';
  /** The filter that it is of; null for gains. */
  readonly stage: Stage | null;
  /** The packs of the wish that feel it. */
  readonly packs: readonly (string | null)[];
  /** What it may be, rising, in SI; of a switch 0 (off) and 1, of a factor shares of what is written. */
  readonly values: readonly number[];
  /** Which of them it is now. */
  readonly now: number;
  /** What is written for the value of a place in the list. */
  readonly lines: (at: number) => readonly MovableLine[];
  /** Of a factor: by how much it turns the derivative gain of an axis, as the board will hold it. */
  readonly shareOf?: (at: number, axis: AxisName, pack: string | null) => number;
}

/** One setting with what it is to hold, as a script writes it. */
export interface MovableLine {
  readonly path: string;
  readonly to: string;
  readonly pack: string | null;
  /** Whether it is for that pack alone, however the line stands now. */
  readonly isForPack: boolean;
}

/** Everything of a craft that a wish lets move, but for voltages, which nothing else hangs on. */
export function movablesOf(craft: Craft, wish: Wish): readonly Movable[] {
  const places = placesIn(craft, wish);
  const moved = chainNames.flatMap((chain) => chainMovables(places, chain, wish));
  return wish.moves.includes('gains') ? [...moved, ...derivativeFactor(places)] : moved;
}

/** Writes a movable's value into a craft that is there to be tried on. */
export function write(trial: Craft, lines: readonly MovableLine[]): void {
  for (const { path, to, pack, isForPack } of lines) {
    const view = new CraftView(trial, pack);
    if (view.written(path) === to && (view.isSet(path) || !isForPack)) continue;
    const fix = fixFor(view, { title: path, set: path, to, forPack: isForPack });
    if (fix !== null) trial.changed(trial.root.edit(asDocumentEdits(trial, fix.edits)));
  }
}

/** Where a path stands for the packs of a wish: each place with what is written there. */
export function placesOf(
  craft: Craft,
  wish: Wish,
  path: string,
): readonly (SettingPlace & { readonly line: (path: string, to: string) => MovableLine })[] {
  const places = placesIn(craft, wish);
  return places.of(path).map((place) => ({
    ...place,
    line: (at, to) => places.line(at, to, place),
  }));
}

/** With some packs alone, what is written is for them alone. */
function placesIn(craft: Craft, { packs }: Wish): SettingPlaces {
  return new SettingPlaces(craft, packs, !craft.packsOrNone().every((pack) => packs.includes(pack)));
}

/** The same setting in several packs is one where one line says it for all of them. */
interface SettingPlace {
  readonly view: CraftView;
  readonly packs: readonly (string | null)[];
}

class SettingPlaces {
  constructor(
    readonly craft: Craft,
    readonly packs: readonly (string | null)[],
    readonly isForPack: boolean,
  ) {}

  /** For each line that sets a path, or would have to: the packs that read it. */
  of(path: string): readonly SettingPlace[] {
    const byLine = new Map<PlacedLine['line'] | string | null, (string | null)[]>();
    for (const pack of this.packs) {
      const line = this.craft.setting(path, pack)?.origin.line;
      const key = this.isForPack ? pack : (line ?? null);
      byLine.set(key, [...(byLine.get(key) ?? []), pack]);
    }
    return [...byLine.values()].map((packs) => ({
      view: new CraftView(this.craft, packs[0] ?? null),
      packs,
    }));
  }

  line(path: string, to: string, { view: { pack } }: SettingPlace): MovableLine {
    return { path, to, pack, isForPack: this.isForPack };
  }
}

function chainMovables(places: SettingPlaces, chain: ChainName, { moves }: Wish): readonly Movable[] {
  const { craft, packs } = places;
  const views = packs.map((pack) => new CraftView(craft, pack));
  const [view] = views;
  if (view === undefined) return [];
  const stages = stagesOf(view, chain);
  const isOff = views.every((one) => isUnfiltered(one, chain));
  if (isOff && moves.includes('filters') && hasUse(view, chain)) {
    const [first = stageAt(chain, 1)] = stages;
    return addedLowpass(places, first, stages.length > 0);
  }
  if (isOff) return [];
  return stages.flatMap((stage) => stageMovables(places, stage, moves));
}

/** A derivative that is not there needs no filter. */
function hasUse(view: CraftView, chain: ChainName): boolean {
  return (
    chain === 'gyro' ||
    axisNames.some((axis) => (view.quantityOr(`control.${axis}.derivative`, null) ?? 0) > 0)
  );
}

function stageMovables(places: SettingPlaces, stage: Stage, moves: Wish['moves']): readonly Movable[] {
  const kinds = new Set(places.packs.map((pack) => kindOf(new CraftView(places.craft, pack), stage)));
  const [kind] = kinds;
  // One that is another filter with each pack is the pilot's own idea.
  if (kind == null || kinds.size > 1 || kind === 'none') return [];
  if (!moves.includes(isLowpass(kind) ? 'filters' : 'notches')) return [];
  const numbers = isLowpass(kind) ? ['cutoff'] : kind === 'notch' ? ['centre', 'width'] : ['width'];
  return [...switchOf(places, stage, kind), ...numbers.flatMap((name) => numberOf(places, stage, name))];
}

/** Not of notches that follow the motors, where one that searches takes what they leave. */
function switchOf(places: SettingPlaces, stage: Stage, kind: string): readonly Movable[] {
  const path = `${stage.path}.kind`;
  const searches = places.packs.some((pack) => {
    const view = new CraftView(places.craft, pack);
    return chainNames.some((chain) =>
      stagesOf(view, chain).some((one) => kindOf(view, one) === 'follow-noise'),
    );
  });
  if (kind === 'follow-motors' && searches) return [];
  return places.of(path).map((place) => ({
    kind: 'switch',
    stage,
    packs: place.packs,
    values: [0, 1],
    now: 1,
    lines: (at) => [places.line(path, at === 0 ? 'none' : kind, place)],
  }));
}

function numberOf(places: SettingPlaces, stage: Stage, name: string): readonly Movable[] {
  const path = `${stage.path}.${name}`;
  return places.of(path).flatMap((place) => {
    const now = place.view.quantity(path);
    const found = scaleOf(place.view, stage, path, now);
    if (now === null || found === null) return [];
    const { values, unit } = found;
    return [
      {
        kind: 'number',
        stage,
        packs: place.packs,
        values,
        now: values.indexOf(now),
        lines: (at) => [places.line(path, written(values[at] ?? now, unit), place)],
      } as const,
    ];
  });
}

/**
 * A low-pass in a chain that has none: off is how the script stands. Where filters are written that are off, the first
 * of them; not where the script contradicts itself.
 */
function addedLowpass(places: SettingPlaces, stage: Stage, isWritten: boolean): readonly Movable[] {
  const path = `${stage.path}.cutoff`;
  const chain = `${stage.chain}.chain`;
  return places.of(chain).flatMap((place): readonly Movable[] => {
    const found = scaleOf(place.view, stage, path, place.view.quantityOr(path, null));
    const isClosed = place.view.isSet(chain) && place.view.word(chain) === 'none';
    if (found === null || (isWritten && isClosed)) return [];
    const { values, unit } = found;
    const common = { stage, packs: place.packs };
    const kind = `${stage.path}.kind`;
    const forAll = (path: string, to: string) => ({ ...places.line(path, to, place), isForPack: false });
    // For some packs alone: with the others the filter is there, and off.
    const opened = [
      ...(isClosed ? [forAll(chain, 'in-order')] : []),
      ...(places.isForPack && !isWritten ? [forAll(kind, 'none')] : []),
    ];
    return [
      {
        ...common,
        kind: 'switch',
        values: [0, 1],
        now: 0,
        lines: (at) => (at === 0 ? [] : [...opened, places.line(kind, 'butterworth', place)]),
      },
      {
        ...common,
        kind: 'number',
        values,
        now: Math.floor(values.length / 2),
        lines: (at) => [places.line(path, written(values[at] ?? 0, unit), place)],
      },
    ];
  });
}

/** Neighbours lie a hundredth apart: closer nobody can tell two filters from one another. */
const fineness = 1.01;
/** A low-pass close to half its rate cuts next to nothing. */
const mostOfRate = 0.8;

/**
 * What a number of a filter may be: three digits each, in the usual range, as the board will hold them, and what it is
 * now.
 */
function scaleOf(view: CraftView, stage: Stage, path: string, now: number | null) {
  const { parameter, usual } = view.catalog.parameter(path) ?? {};
  const rate = view.quantity(stage.rate);
  if (parameter?.kind !== 'quantity' || usual === undefined || rate === null) return null;
  const { low, high } = usual;
  const most = Math.min(high, mostOfRate * halfRate(rate));
  const values = new Set<number>(now === null ? [] : [now]);
  for (let value = low; value <= most; value *= fineness) {
    const held = heldValue(view, path, Number(value.toPrecision(3)));
    if (held !== null && held >= low && held <= most) values.add(held);
  }
  const rising = [...values].sort((one, other) => one - other);
  return rising.length < 2 ? null : { values: rising, unit: parameter.unit };
}

/** As the craft's board will hold it; null where it won't. */
function heldValue(view: CraftView, path: string, value: number): number | null {
  const profile = view.board === undefined ? null : profileOf(view.board);
  const found = view.catalog.parameter(path);
  if (profile === null || found?.parameter.kind !== 'quantity') return value;
  const held = heldAs(profile, path, found, { kind: 'quantity', value, unit: found.parameter.unit });
  return held?.kind === 'quantity' ? held.value : null;
}

/** From less than half of what is written to half as much again. */
const factors: readonly number[] = Array.from({ length: 56 }, (_, step) =>
  Number((0.4 + 0.02 * step).toFixed(2)),
);

/** The derivative gains of all axes and packs by one factor: how much they are beside the proportional ones. */
function derivativeFactor(places: SettingPlaces): readonly Movable[] {
  const gains = axisNames.flatMap((axis) => {
    const path = `control.${axis}.derivative`;
    return places.of(path).flatMap((place) => {
      const base = place.view.quantityOr(path, null);
      const parameter = place.view.catalog.parameter(path)?.parameter;
      if (base === null || base <= 0 || parameter?.kind !== 'quantity') return [];
      const held = factors.map((factor) => heldValue(place.view, path, factor * base) ?? factor * base);
      return [{ axis, path, place, base, held, unit: parameter.unit }];
    });
  });
  if (gains.length === 0) return [];
  return [
    {
      kind: 'factor',
      stage: null,
      packs: places.packs,
      values: factors,
      now: factors.indexOf(1),
      lines: (at) =>
        gains.map(({ path, place, held, base, unit }) =>
          places.line(path, written(held[at] ?? base, unit), place),
        ),
      shareOf: (at, axis, pack) => {
        const gain = gains.find((one) => one.axis === axis && one.place.packs.includes(pack));
        return gain === undefined ? 1 : (gain.held[at] ?? gain.base) / gain.base;
      },
    },
  ];
}

/** Four digits: a present value that has more is not written anew. */
function written(base: number, unit: string): string {
  return `${plainNumber(fromBase(base, unitOf(unit)), 4)} ${unit}`;
}
