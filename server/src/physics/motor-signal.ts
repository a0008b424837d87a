/** A digital command to a speed controller, and its answer where it gives one. Times in seconds, rates in bit/s. */
export interface DigitalSignal {
  readonly frameBits: number;
  readonly bitRate: number;
  /** Pause that must follow a frame. */
  readonly gap: number;
}

export interface SpeedAnswer {
  readonly turnAround: number;
  readonly bits: number;
  /** Bit rate of the answer relative to the command's. */
  readonly rateRatio: number;
}

/** Seconds that a frame takes on the wire: bits / rate. The pause and the answer come after it. */
export function frameSeconds({ frameBits, bitRate }: DigitalSignal): number {
  return frameBits / bitRate;
}

/**
 * Seconds by which a loop that works in rounds is late: the whole round (1 / rate, rate in Hz) in which a command is
 * computed, and half of the interval (s) for which it is held.
 * Source: a hold of T delays by T / 2, e.g. Åström and Wittenmark, Computer-Controlled Systems, from memory.
 */
export function computingWait(rate: number, interval: number): number {
  return 1 / rate + interval / 2;
}

/**
 * Seconds from the start of one command to the earliest start of the next:
 * bits / rate + pause, and with an answer also turn-around + answer bits / (rate × ratio).
 * Source of frame and bit rate: Espressif ESP-IDF, examples/peripherals/rmt/dshot_esc; answer from memory.
 */
export function digitalSignalTime(signal: DigitalSignal, answer: SpeedAnswer | null): number {
  const command = frameSeconds(signal) + signal.gap;
  if (answer === null) return command;
  return command + answer.turnAround + answer.bits / (signal.bitRate * answer.rateRatio);
}

/**
 * Speed of a motor without a load in rad/s: speed constant (rad/s a volt) × voltage (V) × throttle (0 to 1).
 * The ideal direct-current motor; real ones stay a few per cent below.
 */
export function noLoadSpeed(speedConstant: number, voltage: number, throttle = 1): number {
  return speedConstant * voltage * throttle;
}

/**
 * The sixteen bits of a digital motor command: eleven of the value (0 to 2047), one that asks for telemetry, and
 * a checksum of four, the exclusive or of the three groups of four bits before it. Throws outside the domain.
 * Source: Espressif ESP-IDF, examples/peripherals/rmt/dshot_esc, encoder.
 */
export function motorFrame(value: number, asksTelemetry: boolean): number {
  if (!Number.isInteger(value) || value < 0 || value > 2047)
    throw new RangeError(`${value} is no value of a command`);
  const payload = (value << 1) | (asksTelemetry ? 1 : 0);
  const checksum = (payload ^ (payload >> 4) ^ (payload >> 8)) & 0xf;
  return (payload << 4) | checksum;
}
