import type { CraftView } from '../../craft/view';
import { figureOf } from '../../figures';
import { axisNames } from '../../figures/axis-names';
import { bodyOf } from '../../figures/body';
import { isCoaxial } from '../../figures/layouts';
import { flyingMass } from '../../figures/mass';
import { estimatedMotorLag, usualPropellerMass } from '../../figures/motor-lag';
import { motorPlateOf } from '../../figures/motor-plate';
import { motorMassOf } from '../../figures/motor-size';
import { nominalCell, packCount, packPath } from '../../figures/pack-in-view';
import { otherPowerOf, packSource } from '../../figures/pack-source';
import { propellerInUse } from '../../figures/propeller-in-use';

/** Something that a pilot can measure, and where it is written down. */
export interface Measurement {
  /** `weigh one propeller` */
  readonly what: string;
  /** How far off the reading may be: `to within 3 points`. */
  readonly within: string;
  /** The setting of it, of which the parameter says how it is measured. */
  readonly path: string;
  /** In SI, with the unit that a script has it in: what it is likely to be; null where that can't be told. */
  readonly likely: (view: CraftView) => number | null;
  readonly unit: string;
  /** How it is measured, where the parameter's own words are about something else. */
  readonly how?: string;
}

/** What can be measured of a craft with the pack in view and has not been. `flight`: a name that no flight has. */
export function measurementsFor(view: CraftView, flight: string): readonly Measurement[] {
  return [...noted(view, flight), ...ofParts(view)].filter(({ path }) => !view.isSet(path));
}

/** What is read off on a flight, unless it was read off with this pack before. */
function noted(view: CraftView, flight: string): readonly Measurement[] {
  const readings = [
    {
      setting: 'hover-throttle',
      what: 'note the throttle of a steady hover',
      within: 'to within 3 points',
      unit: '%',
      scale: 100,
    },
    {
      setting: 'hover-current',
      what: 'note the current of a steady hover',
      within: 'to within a tenth',
      unit: 'A',
      scale: 1,
    },
  ];
  return readings
    .filter(({ setting }) => !view.members('flight').some((name) => view.isSet(`flight.${name}.${setting}`)))
    .map(({ setting, scale, ...reading }) => ({
      ...reading,
      path: `flight.${flight}.${setting}`,
      likely: (of) => (figureOf(of, setting)?.likely ?? Number.NaN) / scale,
    }));
}

function ofParts(view: CraftView): readonly Measurement[] {
  const pack = packPath(view, 'resistance');
  return [
    {
      what: 'measure the motors’ winding with a bench supply and a meter',
      within: 'to within a seventh',
      path: 'motor.resistance',
      likely: (of) => motorPlateOf(of, [])?.resistance.likely ?? null,
      unit: 'ohm',
    },
    {
      what: 'measure what a motor draws without a propeller',
      within: 'as a meter shows it',
      path: 'motor.idle-current',
      likely: (of) => motorPlateOf(of, [])?.current.likely ?? null,
      unit: 'A',
    },
    ...(pack === null
      ? []
      : [
          {
            what: 'read the pack’s resistance off a charger',
            within: 'to within a quarter',
            path: pack,
            likely: (of: CraftView) => packSource(of, [])?.resistance.likely ?? null,
            unit: 'mohm',
          },
        ]),
    {
      what: 'measure what all but the motors draws',
      within: 'to within a tenth',
      path: 'power.standing-current',
      likely: standingCurrent,
      unit: 'A',
    },
    {
      what: 'measure the thrust of one propeller on a scale at a known speed',
      within: 'to within a twelfth',
      path: 'prop.thrust-coefficient',
      likely: thrustCoefficient,
      unit: '%',
      how: 'Mount one motor on a scale, behind a shield and with nobody in the plane of the propeller, note thrust and speed, and work the coefficient out.',
    },
    {
      what: 'weigh the propellers',
      within: 'on a kitchen scale',
      path: 'prop.mass',
      likely: usualPropellerMass,
      unit: 'g',
    },
    {
      what: 'weigh the motors',
      within: 'on a kitchen scale',
      path: 'motor.mass',
      likely: (of) => motorMassOf(of, [])?.likely ?? null,
      unit: 'g',
    },
    {
      what: 'read off a log how fast the motors follow',
      within: 'to within a fifth',
      path: 'motor.response-time',
      likely: (of) => estimatedMotorLag(of)?.value.likely ?? null,
      unit: 'ms',
    },
    ...axisNames.map((name) => ({
      what: `time the swings about ${name} on two threads`,
      within: 'to within a seventh',
      path: `craft.inertia.${name}`,
      likely: (of: CraftView) => bodyOf(of, name)?.value.inertia ?? null,
      unit: 'g*m^2',
    })),
  ];
}

/** Of propellers above each other it is no one propeller's: a stand would not tell it. */
function thrustCoefficient(view: CraftView): number | null {
  return isCoaxial(view.word('craft.layout') ?? '')
    ? null
    : (propellerInUse(view, [])?.thrustCoefficient ?? null);
}

function standingCurrent(view: CraftView): number | null {
  const [cells, cell, mass] = [packCount(view, 'cells'), nominalCell(view), flyingMass(view)];
  if (cells === null || cell === null || mass === null) return null;
  return otherPowerOf(view, cells * cell, mass, []).likely / (cells * cell);
}
