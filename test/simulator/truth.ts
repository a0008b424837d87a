import { unshaped } from './controller';
import type { SimulatedCraft } from './craft';
import type { Moment } from './flight';
import type { Hovering } from './linear';
import { hoverOutputs } from './motors';
import { PackInFlight, resistanceAfter } from './pack';
import type { Act } from './pilot';

/** What an estimate must come to; SI, charge in C. */
export interface Truth {
  /** Hz, of the frame. */
  readonly tones: readonly number[];
  readonly orders: readonly number[];
  readonly lag: { readonly up: number; readonly down: number };
  readonly openVoltage: number;
  readonly resistanceAtOneSecond: number;
  readonly resistanceAtTenSeconds: number;
  readonly usedCharge: number;
  /** 0 to 1, in still air with the pack as it was while hovering. */
  readonly hoverThrottle: number;
  /** Volts in the hover, mean. */
  readonly hoverVoltage: number;
  /** How much harder than all together each motor works in the hover, a share. */
  readonly harder: readonly number[];
  readonly frameInterval: number;
  readonly longestGap: number;
  readonly meanSpeeds: readonly number[];
  /** About which state it was flown: means while it was steered, or hovered. */
  readonly flown: Hovering;
}

/** Watches a flight for what can't be said before it is flown. */
export class TruthKeeper {
  #volts = 0;
  #hovering = 0;
  #longest = 0;
  #drawn = 0;
  readonly #speeds: Float64Array;
  readonly #flown = { volts: 0, throttle: 0, moments: 0 };
  readonly #flownSpeeds: Float64Array;

  constructor(readonly craft: SimulatedCraft) {
    this.#speeds = new Float64Array(craft.motors.length);
    this.#flownSpeeds = new Float64Array(craft.motors.length);
  }

  readonly watch = (moment: Moment): void => {
    this.#drawn = moment.drawn;
    if (moment.sinceFrame > this.#longest) this.#longest = moment.sinceFrame;
    if (!isSteered(moment.act)) return;
    this.#flown.volts += moment.voltage;
    this.#flown.throttle += moment.throttle;
    this.#flown.moments += 1;
    for (let motor = 0; motor < this.#speeds.length; motor += 1)
      this.#flownSpeeds[motor]! += moment.speeds[motor]!;
    if (moment.act !== 'hover') return;
    this.#volts += moment.voltage;
    this.#hovering += 1;
    for (let motor = 0; motor < this.#speeds.length; motor += 1)
      this.#speeds[motor]! += moment.speeds[motor]!;
  };

  truth(): Truth {
    const { craft } = this;
    const { pack } = craft;
    const hoverVoltage = this.#volts / this.#hovering;
    const outputs = hoverOutputs(craft, hoverVoltage);
    const mean = outputs.reduce((sum, output) => sum + output, 0) / outputs.length;
    return {
      tones: craft.shaking.frame.map(({ frequency }) => frequency),
      orders: [1, craft.propeller.blades],
      lag: craft.lag,
      openVoltage: new PackInFlight(pack, 1).open(),
      resistanceAtOneSecond: resistanceAfter(pack, 1),
      resistanceAtTenSeconds: resistanceAfter(pack, 10),
      usedCharge: this.#drawn,
      hoverThrottle: unshaped(craft.board.shape, mean),
      hoverVoltage,
      harder: outputs.map((output) => output / mean - 1),
      frameInterval: craft.link.interval,
      longestGap: this.#longest,
      meanSpeeds: [...this.#speeds].map((sum) => sum / this.#hovering),
      flown: {
        volts: this.#flown.volts / this.#flown.moments,
        throttle: this.#flown.throttle / this.#flown.moments,
        speeds: [...this.#flownSpeeds].map((sum) => sum / this.#flown.moments),
      },
    };
  }
}

function isSteered(act: Act['kind']): boolean {
  return act === 'hover' || act === 'moves' || act === 'steps' || act === 'sweep';
}
