// A second reckoning of motors, propellers and pack, as plain and slow as may be: nothing of `server/src` is imported,
// so that an error there can not hide here.
import { flownByTheClock } from './plain-discharge';
import { plainInduced } from './plain-flight';
import { type PlausibleCraft, plain } from './plausible-craft';

/** Motors and pack at one place. */
export interface PlainPlace {
  readonly name: string;
  readonly throttle: number;
  readonly volts: number;
  readonly speed: number;
}

const air = plain.density;
const turn = 2 * Math.PI;

export function thrustOf(craft: PlausibleCraft, speed: number): number {
  return craft.thrustCoefficient * air * (speed / turn) ** 2 * craft.propeller ** 4;
}

export function dragOf(craft: PlausibleCraft, speed: number): number {
  return (craft.powerCoefficient * air * (speed / turn) ** 2 * craft.propeller ** 5) / turn;
}

/** What the volts see of a motor: more ohms than the winding has, and fewer turns a volt than are printed. */
export function plainMotor({ resistance, speedConstant }: PlausibleCraft) {
  return { resistance: Math.SQRT2 * resistance, speedConstant: 0.935_03 * speedConstant };
}

/** Half of what it draws without a load grows with its speed; measured at 10 V, or with a smaller pack. */
function idleAt(craft: PlausibleCraft, speed: number): number {
  const volts = Math.min(10, 3.7 * craft.cells);
  const measured = craft.speedConstant * (volts - craft.resistance * craft.idleCurrent);
  return craft.idleCurrent * (0.5 + (0.5 * speed) / measured);
}

function currentFor(craft: PlausibleCraft, volts: number, speed: number): number {
  const { resistance, speedConstant } = plainMotor(craft);
  return (volts - speed / speedConstant) / resistance;
}

/** Torque that is left to speed a motor up. */
export function torqueLeft(craft: PlausibleCraft, volts: number, speed: number): number {
  const working = currentFor(craft, volts, speed) - idleAt(craft, speed);
  return working / craft.speedConstant - dragOf(craft, speed);
}

export function steadySpeed(craft: PlausibleCraft, volts: number): number {
  let [low, high] = [0, volts * craft.speedConstant];
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if (torqueLeft(craft, volts, middle) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** What a motor takes, W: its shaft, its friction and the heat of its winding. */
function powerAt(craft: PlausibleCraft, current: number, speed: number): number {
  return (speed * current) / craft.speedConstant + craft.resistance * current ** 2;
}

/** Share of the pack's voltage times the motors' current that their controllers lose. */
const controllerLoss = 0.025;

/** What a pack has of its resistance within the first second of a load, and after some ten. */
const [atOnce, inFlight] = [1, 1.2];

/** Of the pack and of usual leads of one of 2 Ah, ohm. */
function ahead(craft: PlausibleCraft, share: number): number {
  return share * craft.packResistance + 0.006 / 2 ** 0.7;
}

/** What the pack gives with four motors that turn at a speed and draw a current each, A. */
function drawnFrom(craft: PlausibleCraft, volts: number, current: number, speed: number): number {
  return 4 * (powerAt(craft, current, speed) / volts + controllerLoss * current);
}

/** The pack's voltage under a throttle, by going back and forth until it stays. */
function sagged(craft: PlausibleCraft, open: number, throttle: number, share: number): number {
  let [low, high] = [0, open];
  for (let step = 0; step < 60; step += 1) {
    const volts = (low + high) / 2;
    const speed = steadySpeed(craft, throttle * volts);
    const drawn = drawnFrom(craft, volts, currentFor(craft, throttle * volts, speed), speed);
    if (open - ahead(craft, share) * drawn > volts) low = volts;
    else high = volts;
  }
  return (low + high) / 2;
}

/** The throttle at which a pack lets it hover; null: none does. */
function hoverThrottle(craft: PlausibleCraft, open: number): number | null {
  const weight = (craft.mass + craft.packMass) * plain.gravity;
  const lift = (throttle: number) =>
    4 * thrustOf(craft, steadySpeed(craft, throttle * sagged(craft, open, throttle, inFlight)));
  if (lift(1) < weight) return null;
  let [low, high] = [0, 1];
  for (let step = 0; step < 40; step += 1) {
    const middle = (low + high) / 2;
    if (lift(middle) < weight) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** A craft in the hover, or at a throttle, with a pack of so many volts without a load; null where it can't hover. */
export function plainState(craft: PlausibleCraft, open: number, asked: number | 'hover') {
  const throttle = asked === 'hover' ? hoverThrottle(craft, open) : asked;
  if (throttle === null) return null;
  const volts = sagged(craft, open, throttle, asked === 'hover' ? inFlight : atOnce);
  const speed = steadySpeed(craft, throttle * volts);
  const current = currentFor(craft, throttle * volts, speed);
  return {
    throttle,
    volts,
    speed,
    current,
    thrust: 4 * thrustOf(craft, speed),
    drawn: drawnFrom(craft, volts, current, speed),
    efficiency: (dragOf(craft, speed) * speed) / powerAt(craft, current, speed),
  };
}

function currentAt(craft: PlausibleCraft, speed: number): number {
  return idleAt(craft, speed) + craft.speedConstant * dragOf(craft, speed);
}

/** Minutes in the hover from full until a cell shows the landing voltage, or a share of the charge is left; of 2 Ah. */
export function plainHoverMinutes(
  craft: PlausibleCraft,
  table: readonly number[],
  leftAtLeast: number,
): number {
  const lift = ((craft.mass + craft.packMass) * plain.gravity) / 4;
  const speed = turn * Math.sqrt(lift / (craft.thrustCoefficient * air * craft.propeller ** 4));
  const current = currentAt(craft, speed);
  const motor = plainMotor(craft);
  const needed = speed / motor.speedConstant + motor.resistance * current;
  const { seconds } = flownByTheClock(
    { cells: craft.cells, table, resistance: ahead(craft, inFlight), capacity: 2 },
    { power: 4 * powerAt(craft, current, speed), current: 4 * controllerLoss * current },
    { lowest: Math.max(craft.cells * plain.landing, needed), leftAtLeast, step: 0.2 },
  );
  return seconds / 60;
}

/** In the hover, midway and at 90 %, with a full pack and with one that shows its landing voltage in the hover. */
export function plainPlaces(craft: PlausibleCraft): readonly PlainPlace[] {
  const full = craft.cells * plain.full;
  const atFull = placesWith(craft, full, 'pack full');
  const landing = craft.cells * plain.landing;
  const hover = atFull[0];
  if (hover === undefined) return [];
  const { speed } = hover;
  const current = currentAt(craft, speed);
  const sag = ahead(craft, inFlight) * drawnFrom(craft, landing, current, speed);
  return [...atFull, ...placesWith(craft, landing + sag, 'pack due to land')];
}

function placesWith(craft: PlausibleCraft, open: number, pack: string): readonly PlainPlace[] {
  const hover = hoverThrottle(craft, open);
  if (hover === null) return [];
  const throttles: (readonly [string, number])[] = [['in the hover', hover]];
  if (hover < 0.9)
    throttles.push(
      ['midway from the hover to the top', (hover + 0.9) / 2],
      ['at 90 % of the usable output', 0.9],
    );
  return throttles.map(([name, throttle]) => {
    const volts = sagged(craft, open, throttle, throttle === hover ? inFlight : atOnce);
    return { name: `${name}, ${pack}`, throttle, volts, speed: steadySpeed(craft, throttle * volts) };
  });
}

/** What the air does to it in level flight. */
export interface PlainAir {
  /** N s/m, m² */
  readonly linear: number;
  readonly area: number;
  /** m a turn at which its propellers lose their thrust. */
  readonly advance: number;
  readonly inflowRise: number;
}

/** Power from a pack of so many volts without a load in level flight, W; null where it can't. */
export function plainFlightPower(
  craft: PlausibleCraft,
  through: PlainAir,
  speed: number,
  open: number,
): number | null {
  const weight = (craft.mass + craft.packMass) * plain.gravity;
  const discs = Math.PI * craft.propeller ** 2;
  const forces = { weight, discs, density: air, linear: through.linear, area: through.area };
  const drag = through.linear * speed + 0.5 * air * through.area * speed ** 2;
  const tilt = Math.atan(drag / weight);
  const thrust = weight / Math.cos(tilt);
  const induced = plainInduced(thrust, forces, speed, tilt);
  const standing = plainInduced(thrust, forces, 0, 0);
  const still = Math.sqrt((2 * craft.thrustCoefficient) / Math.PI) * craft.propeller;
  const advance = Math.max(through.advance, 1.25 * still);
  const coming = speed * Math.sin(tilt) + induced;
  const lift = (turns: number) =>
    (4 * thrustOf(craft, turn * turns) * (advance - coming / turns)) / (advance - still);
  let [low, high] = [coming / advance, 5000];
  for (let step = 0; step < 80; step += 1) {
    const middle = (low + high) / 2;
    if (lift(middle) < thrust) low = middle;
    else high = middle;
  }
  const omega = turn * low;
  const hoverOmega = turn * Math.sqrt(weight / (4 * thrustOf(craft, turn)));
  const hoverPower = 4 * dragOf(craft, hoverOmega) * hoverOmega;
  const ideal = weight * plainInduced(weight, forces, 0, 0);
  const induction = Math.min(1.15 * ideal, 0.9 * hoverPower);
  const tip = (omega * craft.propeller) / 2;
  const shaft =
    induction * ((thrust * induced) / ideal) * (1 + through.inflowRise * (1 - (induced / standing) ** 2)) +
    drag * speed +
    ((hoverPower - induction) * thrust * omega * (1 + 3 * ((speed * Math.cos(tilt)) / tip) ** 2)) /
      (weight * hoverOmega);
  const current = idleAt(craft, omega) + (craft.speedConstant * shaft) / 4 / omega;
  const motor = plainMotor(craft);
  const needed = omega / motor.speedConstant + motor.resistance * current;
  let [least, most] = [open / 2, open];
  for (let step = 0; step < 60; step += 1) {
    const volts = (least + most) / 2;
    if (open - ahead(craft, inFlight) * drawnFrom(craft, volts, current, omega) > volts) least = volts;
    else most = volts;
  }
  const volts = (least + most) / 2;
  const drawn = drawnFrom(craft, volts, current, omega);
  return needed > volts || Math.abs(open - ahead(craft, inFlight) * drawn - volts) > 1e-6
    ? null
    : volts * drawn;
}
