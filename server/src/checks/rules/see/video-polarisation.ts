import { videoCarrier } from '../../../figures/video';
import type { CodeRule } from '../../rule';

/** Below this, in Hz, the wrong sense still helps; further apart the filters of the goggles do. */
const neighbourly = 30e6;

/** Pilots side by side on the air whose antennas could shut each other out, and don't. */
export const videoPolarisationRules: readonly CodeRule[] = [
  {
    ids: ['see/same-sense'],
    scope: 'craft',
    check(view, report) {
      const at = 'video.antenna-polarisation';
      const sense = view.word(at);
      const own = videoCarrier(view);
      if (own === null || sense === null || sense === 'linear') return;
      for (const pilot of view.members('radio-club.other')) {
        const other = view.quantity(`radio-club.other.${pilot}.frequency`);
        const theirs = `radio-club.other.${pilot}.antenna-polarisation`;
        if (other === null || view.word(theirs) !== sense) continue;
        const apart = Math.abs(own.frequency - other);
        if (apart >= neighbourly) continue;
        report({
          id: 'see/same-sense',
          at,
          values: { sense, pilot, apart: view.exact(apart, 'MHz') },
          related: [{ at: theirs, message: `${pilot} turns the same way.` }],
        });
      }
    },
  },
];
