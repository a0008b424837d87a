/** Speed of light in a vacuum, m/s. Source: BIPM, SI Brochure (exact). */
const lightSpeed = 299_792_458;

/**
 * Loss (dB) over a free distance (m) at a frequency (Hz) between antennas of 0 dBi: 20 log(4 π d f / c).
 * Domain: both above 0. Source: Recommendation ITU-R P.525.
 */
export function freeSpaceLoss(distance: number, frequency: number): number {
  return 20 * Math.log10((4 * Math.PI * distance * frequency) / lightSpeed);
}

/**
 * Distance (m) at which a free path loses so many dB: the other way round.
 */
export function freeSpaceRange(loss: number, frequency: number): number {
  return (10 ** (loss / 20) * lightSpeed) / (4 * Math.PI * frequency);
}

/** Power (dBm) that arrives. Source: H. T. Friis, A Note on a Simple Transmission Formula, Proceedings of the IRE 34 (1946). */
export function receivedPower(sent: number, gains: number, loss: number): number {
  return sent + gains - loss;
}
