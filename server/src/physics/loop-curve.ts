import { type Along, type Complex, roomFor } from './complex';
import { type DigitalFilter, notchPlace } from './filter';
import { respondingAlong } from './filter-along';
import { type Axis, type ControlPath, openLoop } from './loop';

/** A loop along rising frequencies (Hz), and anywhere between them. */
export interface LoopCurve extends Along {
  readonly frequencies: readonly number[];
  readonly at: (frequency: number) => Complex;
}

/** A stretch of frequencies, Hz, from above 0. */
export interface Band {
  readonly from: number;
  readonly to: number;
}

/** Steps a decade in which a band is looked through. */
const stepsPerDecade = 16;

/** Any loop along the frequencies of a band. */
export function curveOf(at: (frequency: number) => Complex, band: Band): LoopCurve {
  const frequencies = evenly(band);
  const values = frequencies.map(at);
  return { frequencies, re: values.map(({ re }) => re), im: values.map(({ im }) => im), at };
}

/**
 * An axis along the frequencies of a band: `openLoop` at each of them, in plain numbers, for a sheet asks for tens of
 * loops at a hundred frequencies.
 */
export function axisCurve(axis: Axis, band: Band): LoopCurve {
  const { frequencies, seen, derived } = tableOf(axis.path, band);
  const { gains, authority, motorLag, reactionLead } = axis;
  const { proportional, integral, derivative } = gains;
  const { re, im } = roomFor(frequencies);
  for (let step = 0; step < frequencies.length; step += 1) {
    const pulse = 2 * Math.PI * (frequencies[step] ?? 0);
    // Proportional, integral and derivative part.
    const braked = derivative * pulse;
    const heldRe = proportional - braked * (derived.im[step] ?? 0);
    const heldIm = braked * (derived.re[step] ?? 0) - integral / pulse;
    const seenRe = seen.re[step] ?? 0;
    const seenIm = seen.im[step] ?? 0;
    const commandRe = heldRe * seenRe - heldIm * seenIm;
    const commandIm = heldRe * seenIm + heldIm * seenRe;
    // The motors: (1 + lead s) / (1 + lag s); then the body: 1 / s.
    const lagged = pulse * motorLag;
    const ahead = pulse * reactionLead;
    const size = authority / ((1 + lagged * lagged) * pulse);
    const torqueRe = size * (1 + ahead * lagged);
    const torqueIm = size * (ahead - lagged);
    re[step] = commandRe * torqueIm + commandIm * torqueRe;
    im[step] = commandIm * torqueIm - commandRe * torqueRe;
  }
  return { frequencies, re, im, at: (frequency) => openLoop(axis, frequency) };
}

/** What filters and waits do along the frequencies of a band: all axes have them in common. */
interface Table {
  readonly band: Band;
  readonly frequencies: readonly number[];
  readonly seen: Along;
  readonly derived: Along;
}

const tables = new WeakMap<ControlPath, Table>();

function tableOf(path: ControlPath, band: Band): Table {
  const known = tables.get(path);
  if (known?.band === band) return known;
  const { gyroFilters, derivativeFilters, delay } = path;
  const frequencies = closeAtNotches(band, [...gyroFilters, ...derivativeFilters]);
  const respond = respondingAlong(frequencies);
  const seen = respond(gyroFilters, delay);
  const derived = respond(derivativeFilters, 0);
  const table: Table = { band, frequencies, seen, derived };
  tables.set(path, table);
  return table;
}

const grids = new WeakMap<Band, readonly number[]>();

function evenly(band: Band): readonly number[] {
  const known = grids.get(band);
  if (known !== undefined) return known;
  const { from, to } = band;
  const count = Math.max(1, Math.ceil(Math.log10(to / from) * stepsPerDecade));
  const grid = Array.from({ length: count + 1 }, (_, step) => from * (to / from) ** (step / count));
  grids.set(band, grid);
  return grid;
}

/** Where a notch turns the phase, in widths from its middle: the even steps would go past it. */
const flanks = [-2, -1, -0.5, 0.5, 1, 2];

function closeAtNotches(band: Band, filters: readonly DigitalFilter[]): readonly number[] {
  const even = evenly(band);
  const near: number[] = [];
  for (const filter of new Set(filters)) {
    const place = notchPlace(filter);
    if (place === null) continue;
    for (const flank of flanks) near.push(place.centre + flank * place.width);
  }
  const inside = near.filter((frequency) => frequency > band.from && frequency < band.to);
  return inside.length === 0 ? even : merged(even, Float64Array.from(inside).sort());
}

/** Two rising lists as one. */
function merged(one: readonly number[], other: Float64Array): readonly number[] {
  const all: number[] = [];
  let at = 0;
  for (const value of one) {
    for (let next = other[at]; next !== undefined && next < value; next = other[at]) {
      all.push(next);
      at += 1;
    }
    all.push(value);
  }
  return all;
}
