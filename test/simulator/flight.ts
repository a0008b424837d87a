import { Controller, unshaped } from './controller';
import { gravity, type SimulatedCraft } from './craft';
import { Chain } from './filters';
import { dragFactor, hoverOutputs, hoverSpeeds, settling, thrustAt, turnsCraft } from './motors';
import { GyroNoise } from './noise';
import { PackInFlight } from './pack';
import { type Act, Pilot } from './pilot';
import { Random } from './random';

/** What is so at a moment; the same object in every step, filled anew. SI. */
export interface Moment {
  time: number;
  readonly isArmed: boolean;
  readonly act: Act['kind'];
  /** How it really turns; what the gyro says, and what the board's filters leave of that. */
  readonly rates: Float64Array;
  readonly unfiltered: Float64Array;
  readonly filtered: Float64Array;
  readonly wanted: Float64Array;
  readonly throttle: number;
  readonly outputs: Float64Array;
  readonly speeds: Float64Array;
  readonly voltage: number;
  readonly current: number;
  /** Since the last control frame, s. */
  readonly sinceFrame: number;
  readonly height: number;
  readonly climb: number;
  /** Along the craft's own upright, m/s². */
  readonly felt: number;
  /** C */
  readonly drawn: number;
}

/** Gusts: noise with a memory. */
class Gust {
  value = 0;
  constructor(
    readonly strength: number,
    readonly keep: number,
    readonly random: Random,
  ) {}
  next(): number {
    this.value =
      this.keep * this.value + this.strength * Math.sqrt(1 - this.keep ** 2) * this.random.normal();
    return this.value;
  }
}

/** What some values were so many steps before. */
class Late {
  readonly #past: readonly Float64Array[];
  #at = 0;

  constructor(steps: number, size: number) {
    this.#past = Array.from({ length: Math.round(steps) + 1 }, () => new Float64Array(size));
  }

  next(values: Float64Array): Float64Array {
    this.#past[this.#at]!.set(values);
    this.#at = (this.#at + 1) % this.#past.length;
    return this.#past[this.#at]!;
  }
}

/** Flies a craft in steps of its gyro, and shows each of them. */
export function fly(
  craft: SimulatedCraft,
  acts: readonly Act[],
  seed: number,
  show: (moment: Moment, step: number) => void,
): void {
  const random = new Random(seed);
  const { gyroRate, controlRate, gyroFilters } = craft.board;
  const { motors, output } = craft;
  const count = motors.length;
  const dt = 1 / gyroRate;
  const round = Math.round(gyroRate / controlRate);
  const pack = new PackInFlight(craft.pack, dt);
  const calm = hoverOutputs(craft, 0.95 * pack.open());
  const hovering = unshaped(craft.board.shape, calm.reduce((sum, one) => sum + one, 0) / count);
  const pilot = new Pilot(acts, hovering, 0.03, random);
  const controller = new Controller(craft);
  const chain = new Chain(gyroFilters, gyroRate, count);
  const hoverSpeed = hoverSpeeds(craft).reduce((sum, speed) => sum + speed, 0) / count;
  const noise = new GyroNoise(craft, hoverSpeed, random);
  const [keep, reach] = [Math.exp(-dt / craft.wind.seconds), leverage(craft)];
  const gusts = reach.map((torque) => new Gust(craft.wind.torque * torque, keep, random));
  const lift = new Gust(craft.wind.lift, keep, random);

  const lifting = thrustAt(craft, 1);
  const dragging = dragFactor(craft);
  const settledAt = settling(craft);
  const up = 1 - Math.exp(-dt / craft.lag.up);
  const down = 1 - Math.exp(-dt / craft.lag.down);
  const inertia = [craft.inertia.roll, craft.inertia.pitch, craft.inertia.yaw];
  const moment = {
    time: 0,
    isArmed: false,
    act: 'off' as Act['kind'],
    rates: new Float64Array(3),
    unfiltered: new Float64Array(3),
    filtered: new Float64Array(3),
    wanted: pilot.wanted,
    throttle: 0,
    outputs: controller.outputs,
    speeds: new Float64Array(count),
    voltage: pack.open(),
    current: craft.pack.standing,
    sinceFrame: 0,
    height: 0,
    climb: 0,
    felt: gravity,
    drawn: 0,
  };
  const { rates, unfiltered, filtered, speeds } = moment;
  const turned = new Late(craft.board.late.gyro * gyroRate, 3);
  const told = new Late(craft.board.late.output * gyroRate, count);
  const torques = new Float64Array(3);
  let [roll, pitch, lastFrame, nextFrame, gapLeft] = [0, 0, 0, 0, craft.link.gap];
  const whole = acts.reduce((sum, act) => sum + act.seconds, 0);
  const steps = Math.floor(whole * gyroRate);
  for (let step = 0; step < steps; step += 1) {
    const time = step * dt;
    moment.time = time;
    if (time >= nextFrame) {
      const isLost = random.unit() < craft.link.lost;
      if (!isLost) {
        pilot.look(time, { roll, pitch, height: moment.height, climb: moment.climb }, time - lastFrame);
        lastFrame = time;
      }
      nextFrame += craft.link.interval * random.between(0.97, 1.03);
      if (gapLeft > 0 && time > whole / 2) {
        nextFrame += gapLeft;
        gapLeft = 0;
      }
    }
    moment.sinceFrame = time - lastFrame;
    moment.isArmed = pilot.isArmed;
    moment.act = pilot.act;
    moment.throttle = pilot.throttle;

    unfiltered.set(turned.next(rates));
    let turning = 0;
    for (let motor = 0; motor < count; motor += 1) turning += (speeds[motor]! / hoverSpeed) ** 2 / count;
    noise.addTo(unfiltered, speeds, turning, dt);
    if (step % round === 0) chain.follow(speeds);
    for (let axis = 0; axis < 3; axis += 1) filtered[axis] = chain.run(axis, unfiltered[axis]!);
    if (step % round === 0) {
      if (pilot.isArmed) controller.step(pilot.wanted, filtered, speeds, pilot.throttle);
      else controller.outputs.fill(0);
    }
    const arrived = told.next(controller.outputs);

    // Motors: towards the speed at which volts and air agree, faster up than down.
    let current = craft.pack.standing;
    let thrust = 0;
    torques.fill(0);
    const air = moment.climb + lift.next();
    for (let motor = 0; motor < count; motor += 1) {
      const { aside, ahead, thrustShare } = motors[motor]!;
      const share = pilot.isArmed ? Math.max(output.idle, arrived[motor]!) : 0;
      const volts = share * moment.voltage;
      const speed = speeds[motor]!;
      const goal = settledAt(volts);
      const faster = (goal - speed) * (goal > speed ? up : down);
      // What turns the propeller and speeds it up.
      const torque = dragging * speed * speed + (craft.rotorInertia * faster) / dt;
      const drawn = craft.winding.idleCurrent + craft.winding.speedConstant * torque;
      if (drawn > 0) current += share * drawn;
      speeds[motor] = speed + faster;
      const still = thrustShare * lifting * speed * speed;
      // Air that already comes down through the disc is pushed less: about a tenth of the tips' speed ends it.
      const through = speed > 1 ? air / (0.09 * speed * craft.propeller.diameter) : 0;
      const one = still * Math.max(0.3, Math.min(1.4, 1 - through / 2));
      thrust += one;
      torques[0]! -= one * aside;
      torques[1]! += one * ahead;
      torques[2]! += turnsCraft(motors[motor]!) * torque;
    }

    // Body.
    const isHeld = moment.height <= 0 && thrust < craft.mass * gravity;
    for (let axis = 0; axis < 3; axis += 1) {
      const gust = gusts[axis]!.next();
      const damping = dampingShare * reach[axis]! * rates[axis]!;
      const torque = torques[axis]! + (moment.height > 0 ? gust : 0) - damping;
      rates[axis] = isHeld ? 0 : rates[axis]! + (torque / inertia[axis]!) * dt;
    }
    roll = isHeld ? 0 : roll + rates[0]! * dt;
    pitch = isHeld ? 0 : pitch + rates[1]! * dt;
    const upward = (thrust * Math.cos(roll) * Math.cos(pitch)) / craft.mass - gravity;
    const braked = 0.25 * moment.climb + 0.03 * moment.climb * Math.abs(moment.climb);
    moment.felt = isHeld ? gravity : thrust / craft.mass;
    moment.climb = isHeld ? 0 : moment.climb + (upward - braked) * dt;
    moment.height = Math.max(0, moment.height + moment.climb * dt);
    if (moment.height === 0 && moment.climb < 0) moment.climb = 0;

    pack.step(current);
    moment.current = current;
    moment.voltage = pack.voltage(current);
    moment.drawn = pack.drawn;
    show(moment, step);
  }
}

/**
 * Torque of the air against turning, a rad/s, as a share of `leverage`. Air that comes through a disc at a tenth of what
 * ends its thrust (as above) takes half of that: an arm of 8 cm at 1 rad/s about 0.5 %; as much again for the frame.
 */
export const dampingShare = 0.01;

/** Torque that two motors of four at their hovering thrust have about each axis, Nm. */
export function leverage(craft: SimulatedCraft): readonly number[] {
  const each = (craft.mass * gravity) / 4;
  const arm = (of: (index: number) => number) =>
    craft.motors.reduce((sum, _, index) => sum + Math.abs(of(index)), 0) / 2;
  const turning = dragFactor(craft) / thrustAt(craft, 1);
  return [
    each * arm((index) => craft.motors[index]!.aside),
    each * arm((index) => craft.motors[index]!.ahead),
    each * 2 * turning,
  ];
}
