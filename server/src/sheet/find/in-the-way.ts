import { shortNumber } from '../../units/number-text';
import { offText } from './hold-text';
import type { Setup, Surveyed } from './search';
import type { Tuning } from './tuning';
import type { Holds } from './wish';

/** Why nothing of what may move meets a wish, a sentence each. */
export function inTheWay(tuning: Tuning, holds: Holds, surveyed: readonly Surveyed[]): readonly string[] {
  const [nearest] = [...surveyed].sort((one, other) => one.weighed.missed - other.weighed.missed);
  if (nearest === undefined) return [];
  if (nearest.weighed.missed > 0) return tonesLeft(tuning, holds, nearest.setup);
  const held = surveyed.filter(({ weighed }) => weighed.missed === 0);
  const clearest = nearestToMargins(tuning, held);
  return clearest === null ? [] : marginsLost(tuning, holds, clearest);
}

function withPack(pack: string | null): string {
  return pack === null ? '' : `, with pack ${pack}`;
}

function tonesLeft(tuning: Tuning, { toneLeft }: Holds, setup: Setup): readonly string[] {
  return tuning
    .readings(setup)
    .flatMap(({ pack, tones }) =>
      tones
        .filter(({ left }) => toneLeft !== null && left > toneLeft)
        .map(
          ({ title, left }) =>
            `${title}${withPack(pack)}: ${offText(left)} dB off it at best, ${offText(toneLeft ?? 0)} dB asked for.`,
        ),
    );
}

/** Of the setups that leave no more of the tones than asked, that with the most margin; not all are looked at. */
function nearestToMargins(tuning: Tuning, held: readonly Surveyed[]): Setup | null {
  const few = [...held].sort((one, other) => one.weighed.delay - other.weighed.delay).slice(0, 24);
  const rated = few.map(({ setup }) => ({ setup, phase: tuning.loops.narrowest(setup).phase?.phase ?? 0 }));
  return rated.sort((one, other) => other.phase - one.phase)[0]?.setup ?? null;
}

function marginsLost(
  tuning: Tuning,
  { phaseMargin, gainMargin, toneLeft }: Holds,
  setup: Setup,
): readonly string[] {
  const { phase, gain } = tuning.loops.narrowest(setup);
  const tones =
    toneLeft === null ? 'With what may move' : `With at least ${offText(toneLeft)} dB off the motors’ tones`;
  const lost: string[] = [];
  if (phase !== null && phase.phase < (phaseMargin ?? 0))
    lost.push(
      phase.phase === 0
        ? `${tones}, a loop would swing by itself${withPack(phase.pack)}, ${phase.place}.`
        : `${tones}, the phase margin is ${shortNumber(phase.phase)} deg at best${withPack(phase.pack)}, ${phase.place}; ${shortNumber(phaseMargin ?? 0)} deg asked for.`,
    );
  if (gain !== null && (gain.gain ?? 0) < (gainMargin ?? 1))
    lost.push(
      `${tones}, the gain margin is ${shortNumber(gain.gain ?? 1)} at best${withPack(gain.pack)}, ${gain.place}; ${shortNumber(gainMargin ?? 1)} asked for.`,
    );
  return lost.length > 0
    ? lost
    : [`${tones} and with these margins, every setup has a must-fix or a risk that the script lacks now.`];
}
