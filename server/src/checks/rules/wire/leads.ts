import { inBase } from '../../../catalog/known-parameter';
import type { CraftView } from '../../../craft/view';
import { figureOf } from '../../../figures';
import { leadResistance } from '../../../figures/leads';
import { supplyPathOf } from '../../../figures/supply';
import { heatingRate, leadDrop, leadHeat } from '../../../physics/lead';
import type { CodeRule, RuleFix } from '../../rule';

/** Above this many times what its gauge usually bears, a lead is a fuse. Common practice. */
const overheats = 2;
/** Share of a supply that a lead may lose. Common practice. */
const mostLost = 0.05;

const tooThin: CodeRule = {
  ids: ['wire/lead-too-thin', 'wire/lead-overheats'],
  scope: 'pack',
  check(view, report) {
    for (const device of view.members('wire')) {
      const number = view.count(`wire.${device}.gauge`);
      const gauge = number === null ? undefined : view.catalog.gauge(number);
      const current = view.quantity(`wire.${device}.current`);
      if (gauge === undefined || current === null) continue;
      const usual = inBase(gauge.usualCurrent);
      if (current <= usual * (1 + 1e-9)) continue;
      const resistance = inBase(gauge.resistance);
      const values = {
        lead: leadName(device),
        current: view.shown(`wire.${device}.current`),
        gauge: String(gauge.number),
        usual: gauge.usualCurrent,
        heat: view.amount(leadHeat(resistance, current), 'W'),
        rate: view.amount(heatingRate(resistance, current), 'K'),
        thicker: thickerGauge(view, current),
      };
      const id = current > overheats * usual ? 'wire/lead-overheats' : 'wire/lead-too-thin';
      report({ id, at: `wire.${device}.gauge`, values });
    }
  },
};

/** The thinnest gauge that usually bears a current; empty where none of the table does. */
function thickerGauge(view: CraftView, current: number): string {
  const fit = [...view.catalog.gauges.values()].filter(({ usualCurrent }) => inBase(usualCurrent) >= current);
  const thinnest = Math.max(...fit.map(({ number }) => number));
  return fit.length === 0 ? '' : String(thinnest);
}

function leadName(device: string): string {
  const words = device.replaceAll('-', ' ');
  return words.endsWith('lead') ? words : `${words} lead`;
}

const drop: CodeRule = {
  ids: ['wire/lead-drop'],
  scope: 'pack',
  check(view, report) {
    for (const device of view.members('wire')) {
      const resistance = leadResistance(view, device);
      const length = view.quantity(`wire.${device}.length`);
      const current = view.quantity(`wire.${device}.current`);
      const supply = supplyVoltage(view, device);
      if (resistance === null || length === null || current === null || supply === null) continue;
      const lost = leadDrop(length, resistance, current);
      if (lost <= mostLost * supply) continue;
      const values = {
        lead: leadName(device),
        lost: view.amount(lost, 'V'),
        share: view.amount(lost / supply, '%'),
        supply: view.amount(supply, 'V'),
        length: view.shown(`wire.${device}.length`),
        gauge: view.shown(`wire.${device}.gauge`),
        current: view.shown(`wire.${device}.current`),
      };
      const most = (mostLost * supply) / (2 * length * current);
      report({
        id: 'wire/lead-drop',
        at: `wire.${device}.length`,
        values,
        fixes: thickerLead(view, device, most),
      });
    }
  },
};

/** The thinnest gauge of at most so many ohms a metre. */
function thickerLead(view: CraftView, device: string, most: number): readonly RuleFix[] {
  const fit = [...view.catalog.gauges.values()].filter(({ resistance }) => inBase(resistance) <= most);
  if (fit.length === 0) return [];
  const to = String(Math.max(...fit.map(({ number }) => number)));
  const look = 'that the wire is changed';
  return [{ title: 'Write AWG {to}, for a thicker wire', set: `wire.${device}.gauge`, to, look }];
}

/** Volts at the near end of a lead; the leads of pack and motors have the pack's. */
function supplyVoltage(view: CraftView, device: string): number | null {
  const at = supplyPathOf(view, device);
  const given = at === null ? null : view.quantity(at);
  if (given !== null) return given;
  const onPack = device.endsWith('-lead') || (at !== null && view.word(at) === 'pack');
  return onPack ? (figureOf(view, 'pack-nominal-voltage')?.likely ?? null) : null;
}

export const leadRules: readonly CodeRule[] = [tooThin, drop];
