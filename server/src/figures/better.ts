import { ofAxes } from './axis-names';

/** Which way of a figure is good for the craft or its pilot, everything else being equal. Common practice. */
const better: ReadonlyMap<string, 'more' | 'less'> = new Map([
  ...all('less', [
    'stick-delay',
    'loop-delay',
    'gyro-filter-delay',
    'derivative-filter-delay',
    'motor-lag',
    'flying-mass',
    'hover-throttle',
    'hover-current',
    'hover-power',
    'full-motor-current',
    'full-sag',
    'tip-mach',
    'disc-loading',
    'battery-lead-drop',
    'idle-tone-left',
    'hover-tone-left',
    'hover-blade-tone-left',
    'full-tone-left',
    'full-blade-tone-left',
    ...ofAxes('overshoot', 'noise-gain', 'delay-phase', 'step'),
  ]),
  ...all('more', [
    'thrust-to-weight-full',
    'thrust-to-weight',
    'drop-out-room',
    'least-voltage',
    'thrust-to-weight-landing',
    'minutes-to-landing',
    'minutes-to-warning',
    'minutes-to-landing-cold',
    'flying-minutes-to-landing',
    'flying-minutes-to-warning',
    'minutes-to-warning-cold',
    'range',
    'reach',
    'video-range',
    'video-margin',
    'log-minutes',
    ...ofAxes('phase-margin', 'gain-margin'),
  ]),
]);

/** Null where it depends on what the pilot wants. */
export function betterWay(figure: string): 'more' | 'less' | null {
  return better.get(figure) ?? null;
}

function all(
  way: 'more' | 'less',
  figures: readonly string[],
): readonly (readonly [string, 'more' | 'less'])[] {
  return figures.map((figure) => [figure, way] as const);
}
