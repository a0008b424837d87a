import type { Motor } from '../physics/motor';
import { type Carried, changed, withDrive, withPack } from './carried';
import { controllerLoss } from './controller-loss';
import { massFactor } from './mass';
import { motorDoubts } from './motor-doubts';
import { kvFactor, type MotorPlate } from './motor-plate';
import type { PackSource, Spread } from './pack-source';
import type { PropellerSpread } from './propeller-in-use';
import { type Doubt, doubtOf, eitherWay } from './uncertain';

export interface DriveSpreads {
  readonly propeller: PropellerSpread;
  readonly source: PackSource;
  readonly plate: MotorPlate;
  /** W */
  readonly otherPower: Spread;
}

/** All that is known only so far of a drive and of what it carries. */
export function driveDoubts(spreads: DriveSpreads): readonly Doubt<Carried>[] {
  const { propeller, source, plate, otherPower } = spreads;
  return [
    ...propellerDoubts(propeller),
    ...motorDoubts(plate).map(ofMotor),
    doubtOf('the motors’ kv', eitherWay(kvFactor), (model, by) => {
      const { motor } = model.drive;
      return withDrive(model, { motor: { ...motor, speedConstant: by * motor.speedConstant } });
    }),
    ...packDoubts(source),
    doubtOf('what the electronics draw', otherPower, (model, by) =>
      withDrive(model, { otherPower: by * model.drive.otherPower }),
    ),
    doubtOf('what the speed controllers lose', controllerLoss, (model, by) =>
      withDrive(model, { controllerLoss: by * model.drive.controllerLoss }),
    ),
    doubtOf('the mass', eitherWay(massFactor), (model, by) => changed(model, { weight: by * model.weight })),
  ];
}

/** Blades that lift more than thought drag more, too: the first doubt moves both as far as they go together. */
function propellerDoubts({ thrust, power, correlation }: PropellerSpread): readonly Doubt<Carried>[] {
  const apart = Math.sqrt(1 - correlation ** 2);
  const together = correlation * (Math.log(power) / Math.log(thrust));
  return [
    doubtOf('the propellers’ thrust', eitherWay(thrust), (model, by) =>
      withPropeller(model, by, by ** together),
    ),
    doubtOf('the propellers’ drag', eitherWay(power ** apart), (model, by) => withPropeller(model, 1, by)),
  ];
}

function withPropeller(model: Carried, moreThrust: number, morePower: number): Carried {
  const { propeller } = model.drive;
  const thrustCoefficient = moreThrust * propeller.thrustCoefficient;
  const powerCoefficient = morePower * propeller.powerCoefficient;
  return withDrive(model, {
    propeller: { diameter: propeller.diameter, thrustCoefficient, powerCoefficient },
  });
}

/** The same of the whole. */
function ofMotor({ of, at }: Doubt<Motor>): Doubt<Carried> {
  return { of, at: (model, way) => withDrive(model, { motor: at(model.drive.motor, way) }) };
}

function packDoubts({ resistance, inFlight, leads, charge, cold }: PackSource): readonly Doubt<Carried>[] {
  const ofResistance = (model: Carried, by: number) =>
    withPack(model, { resistance: by * model.pack.resistance });
  const ofCharge = (model: Carried, by: number) => changed(model, { charge: by * model.charge });
  const doubts: readonly Doubt<Carried>[] = [
    doubtOf('the pack’s resistance', resistance, ofResistance),
    doubtOf('what the pack’s resistance grows by in flight', inFlight, (model, by) =>
      withPack(model, { inFlight: by * model.pack.inFlight }),
    ),
    doubtOf('the resistance of leads and plugs', leads, (model, by) =>
      withPack(model, { leads: by * model.pack.leads }),
    ),
    doubtOf('the pack’s charge', charge, ofCharge),
    ...(cold === null
      ? []
      : [
          doubtOf('what the cold adds to the pack’s resistance', cold.resistance, ofResistance),
          doubtOf('what the cold leaves of the pack’s charge', cold.charge, ofCharge),
        ]),
  ];
  return doubts.map((doubt) => ({ ...doubt, isOfPack: true }));
}
