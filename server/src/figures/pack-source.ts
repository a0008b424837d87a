import type { CraftView } from '../craft/view';
import { chemistryInView, nominalCell, packCount, packQuantity } from './pack-in-view';

/**
 * Resistance times charge of one cell, in ohm times ampere hour: packs for full throttle and packs for range.
 * Common practice, from what chargers show of fresh packs.
 */
const cellResistance = { quick: 0.007, lasting: 0.06 };
/** A pack that may be emptied faster than this, in 1/s, is one for full throttle: 20 C. */
const quickRating = 20 / 3600;

/** What the pack in view is to what hangs on it, half used. */
export interface PackSource {
  /** Without a load, V. */
  readonly voltage: number;
  /** ohm */
  readonly resistance: number;
  /** Share by which the resistance may be off. */
  readonly doubt: number;
}

/** `assumed`: gets what was assumed for it, in words. */
export function packSource(view: CraftView, assumed: string[]): PackSource | null {
  const cells = packCount(view, 'cells');
  const nominal = nominalCell(view);
  const charge = packQuantity(view, 'capacity');
  if (cells === null || nominal === null || charge === null || charge <= 0) return null;
  const given = packQuantity(view, 'resistance');
  if (given !== null && given > 0) return { voltage: cells * nominal, resistance: given, doubt: 0.2 };
  const usual = usualPackResistance(view);
  if (usual === null) return null;
  assumed.push(`a pack resistance of ${view.short(usual, 'mohm')}, as usual for its kind`);
  return { voltage: cells * nominal, resistance: usual, doubt: 0.5 };
}

/** What a fresh pack of the kind in view has from plug to plug, in ohm; null where its cells or charge are not known. */
export function usualPackResistance(view: CraftView): number | null {
  const cells = packCount(view, 'cells');
  const charge = packQuantity(view, 'capacity');
  if (cells === null || charge === null || charge <= 0) return null;
  const rating = packQuantity(view, 'discharge') ?? 0;
  const isQuick = rating >= quickRating && chemistryInView(view)?.name !== 'li-ion';
  return (cells * (isQuick ? cellResistance.quick : cellResistance.lasting)) / (charge / 3600);
}

/** Watts that the board, the receiver and the picture take of a small craft. Common practice. */
const usualOtherPower = 5;

/** What everything but the motors takes, W, of a pack of a voltage (V). */
export function otherPowerOf(view: CraftView, voltage: number, assumed: string[]): number {
  const standing = view.quantity('power.standing-current');
  if (standing !== null) return standing * voltage;
  assumed.push(`${usualOtherPower} W for everything but the motors`);
  return usualOtherPower;
}
