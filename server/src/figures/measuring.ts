import { inBase } from '../catalog/known-parameter';
import type { CraftView } from '../craft/view';
import { currentLimitOfSensor, dividerLimit, dividerOutput } from '../physics/divider';
import type { Computed, FigureSource } from './figure';
import { fullCell, packCount } from './pack-in-view';
import { fine } from './why';

export const measuringFigures: readonly FigureSource[] = [
  {
    id: 'divider-at-full-pack',
    title: 'At the board’s converter, full pack',
    unit: 'V',
    from: ['power.divider-upper', 'power.divider-lower'],
    concerns: hasDivider,
    compute: atConverter,
  },
  {
    id: 'pack-input-limit',
    title: 'Highest pack voltage that the board can read',
    unit: 'V',
    from: ['power.reference-voltage', 'power.divider-upper', 'power.divider-lower'],
    concerns: hasDivider,
    compute: inputLimit,
  },
  {
    id: 'current-sensor-limit',
    title: 'Highest current that the board can read',
    unit: 'A',
    from: ['power.current-scale', 'power.current-offset', 'power.reference-voltage'],
    concerns: (view) => view.isSet('power.current-scale'),
    compute: sensorLimit,
  },
];

function hasDivider(view: CraftView): boolean {
  const isSaid = view.isSet('power.divider-upper') || view.isSet('power.divider-lower');
  return isSaid || boardDivider(view) !== null;
}

export interface Divider {
  readonly upper: number;
  readonly lower: number;
  /** Whose resistors these are. */
  readonly from: 'script' | 'board';
}

/** The pack divider: as the script says it, else as the board has it. Ohms. Null where neither is known. */
export function dividerOf(view: CraftView): Divider | null {
  const isSaid = view.isSet('power.divider-upper') || view.isSet('power.divider-lower');
  if (!isSaid) return boardDivider(view);
  const upper = view.quantity('power.divider-upper');
  const lower = view.quantity('power.divider-lower');
  return upper === null || lower === null ? null : { upper, lower, from: 'script' };
}

/** The resistors of the board's profile; null where nobody described both. */
export function boardDivider({ hardware }: CraftView): Divider | null {
  const { dividerUpper, dividerLower } = hardware.packInput ?? {};
  if (dividerUpper === undefined || dividerLower === undefined) return null;
  return { upper: inBase(dividerUpper), lower: inBase(dividerLower), from: 'board' };
}

/** Full scale of the converter in volts: the script's, else the board's; null where nobody has described it. */
export function referenceVoltage(view: CraftView): number | null {
  if (view.isSet('power.reference-voltage')) return view.quantity('power.reference-voltage');
  const own = view.hardware.packInput?.reference;
  return own === undefined ? null : inBase(own);
}

/** `15 kohm over 1.5 kohm` */
export function dividerText(view: CraftView, { upper, lower }: Divider): string {
  return `${view.short(upper, 'kohm')} over ${view.short(lower, 'kohm')}`;
}

function atConverter(view: CraftView): Computed | null {
  const divider = dividerOf(view);
  const cell = fullCell(view);
  const cells = packCount(view, 'cells');
  if (divider === null || cell === null || cells === null) return null;
  return {
    likely: dividerOutput(cells * cell, divider.upper, divider.lower),
    why: `${fine(cells * cell, 'V')} × ${fine(divider.lower, 'kohm')} / ${bothText(divider)}`,
    assumed: assumedOf(divider),
  };
}

function inputLimit(view: CraftView): Computed | null {
  const divider = dividerOf(view);
  const reference = referenceVoltage(view);
  if (divider === null || reference === null) return null;
  return {
    likely: dividerLimit(reference, divider.upper, divider.lower),
    why: `${fine(reference, 'V')} × ${bothText(divider)} / ${fine(divider.lower, 'kohm')}`,
    assumed: assumedOf(divider),
  };
}

function bothText({ upper, lower }: Divider): string {
  return `(${fine(upper, 'kohm')} + ${fine(lower, 'kohm')})`;
}

function assumedOf({ from }: Divider): readonly string[] {
  return from === 'board' ? ["the divider of the board's profile"] : [];
}

function sensorLimit(view: CraftView): Computed | null {
  const reference = referenceVoltage(view);
  const scale = view.quantity('power.current-scale');
  const offset = view.quantity('power.current-offset');
  if (reference === null || scale === null || offset === null || scale <= 0) return null;
  const why = `(${view.short(reference, 'V')} - ${view.shown('power.current-offset')}) / ${view.shown('power.current-scale')}`;
  return { likely: currentLimitOfSensor(reference, scale, offset), why };
}
