import { inBase } from '../catalog/known-parameter';
import type { CraftView } from '../craft/view';
import { leadDrop } from '../physics/lead';
import type { Computed, FigureSource } from './figure';

const leadSettings = ['gauge', 'length', 'current'].map((setting) => `wire.battery-lead.${setting}`);

export const leadFigures: readonly FigureSource[] = [
  {
    id: 'battery-lead-drop',
    title: 'Lost in the battery lead',
    unit: 'V',
    from: leadSettings,
    concerns: (view) => leadSettings.some((path) => view.isSet(path)),
    compute: batteryLeadDrop,
  },
];

/** Ohms a metre of a lead's copper by its gauge; null where the gauge is not said or not in the table. */
export function leadResistance(view: CraftView, device: string): number | null {
  const number = view.count(`wire.${device}.gauge`);
  const gauge = number === null ? undefined : view.catalog.gauge(number);
  return gauge === undefined ? null : inBase(gauge.resistance);
}

function batteryLeadDrop(view: CraftView): Computed | null {
  const resistance = leadResistance(view, 'battery-lead');
  const length = view.quantity('wire.battery-lead.length');
  const current = view.quantity('wire.battery-lead.current');
  if (resistance === null || length === null || current === null) return null;
  const why = `2 × ${view.short(length, 'mm')} × ${view.short(resistance, 'mohm/m')} × ${view.short(current, 'A')}`;
  return { likely: leadDrop(length, resistance, current), why };
}
