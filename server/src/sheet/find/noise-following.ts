import type { Working } from '../../figures/filter-chain';
import { chainGain, type DigitalFilter } from '../../physics/filter';
import { powerGains } from '../../physics/random-signal';
import type { MeasuredNoise, NoiseMoment } from '../../recording/measured-noise';

/** Who follows the motors in the flight: a notch for each, or some for all together. */
export type Follower = 'each motor' | 'all together';

const none = new Float64Array();

/** The filters as they stood at a moment: each motor's own by its own speed. */
export function momentFilters(
  working: Working,
  follower: Follower,
  { turns }: NoiseMoment,
): readonly DigitalFilter[] {
  if (follower === 'each motor') return turns.flatMap((one) => working.own(one));
  return working.own(turns.reduce((sum, one) => sum + one, 0) / turns.length);
}

/** By how much filters that move turn the power in each bin over a flight: at each moment what there was then counts. */
export function followingGains(
  { frequencies, axes, moments }: MeasuredNoise,
  filters: readonly (readonly DigitalFilter[])[],
): readonly Float64Array[] {
  const before = axes.map(() => new Float64Array(frequencies.length));
  const after = axes.map(() => new Float64Array(frequencies.length));
  const turned = powerGains(
    filters.map((own) => ({ filters: own })),
    frequencies,
  );
  for (const [at, moment] of moments.entries()) {
    const gains = turned[at] ?? none;
    for (const [place, powers] of moment.powers.entries()) {
      const [all, left] = [before[place] ?? none, after[place] ?? none];
      for (let bin = 0; bin < all.length; bin += 1) {
        all[bin] = (all[bin] ?? 0) + (powers[bin] ?? 0);
        left[bin] = (left[bin] ?? 0) + (powers[bin] ?? 0) * (gains[bin] ?? 1);
      }
    }
  }
  return after.map((left, place) =>
    left.map((power, at) => {
      const all = before[place]?.[at] ?? 0;
      return all > 0 ? power / all : 1;
    }),
  );
}

/** Of a tone that stands while the filters move; 1 where no moment is known. */
export function meanPowerGain(moments: readonly (readonly DigitalFilter[])[], frequency: number): number {
  if (moments.length === 0) return 1;
  const sum = moments.reduce((all, filters) => all + chainGain({ filters }, frequency) ** 2, 0);
  return sum / moments.length;
}
