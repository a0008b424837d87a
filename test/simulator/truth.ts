import type { SimulatedCraft } from './craft';
import type { Moment } from './flight';
import { hoverOutputs } from './motors';
import { PackInFlight, resistanceAfter } from './pack';

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
}

/** Watches a flight for what can't be said before it is flown. */
export class TruthKeeper {
  #volts = 0;
  #hovering = 0;
  #longest = 0;
  #drawn = 0;
  readonly #speeds: Float64Array;

  constructor(readonly craft: SimulatedCraft) {
    this.#speeds = new Float64Array(craft.motors.length);
  }

  readonly watch = (moment: Moment): void => {
    this.#drawn = moment.drawn;
    if (moment.sinceFrame > this.#longest) this.#longest = moment.sinceFrame;
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
      hoverThrottle: mean,
      hoverVoltage,
      harder: outputs.map((output) => output / mean - 1),
      frameInterval: craft.link.interval,
      longestGap: this.#longest,
      meanSpeeds: [...this.#speeds].map((sum) => sum / this.#hovering),
    };
  }
}
