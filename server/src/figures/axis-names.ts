export const axisNames = ['roll', 'pitch', 'yaw'] as const;
export type AxisName = (typeof axisNames)[number];

/** Figures of every axis: `roll-step`, `pitch-step`, `yaw-step`. */
export function ofAxes(...what: readonly string[]): readonly string[] {
  return axisNames.flatMap((axis) => what.map((one) => `${axis}-${one}`));
}
