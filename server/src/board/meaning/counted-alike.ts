/** What roll, pitch and yaw have in common stands for each of them. */
const axis = /([.-])(?:roll|pitch|yaw)(?=\.|$)/;
/** From where and to where is said in one unit. */
const end = /-(?:from|to)$/;
const filter = /^(?:gyro|derivative)\.filter\.[^.]+\..*$/;

/**
 * Parameters that a board surely counts alike: those of roll, pitch and yaw, all frequencies of all filters, both ends
 * of a stretch, the same of every switch or element. `name`: the catalogue's. Two of different dimensions are never of
 * one family.
 */
export function countedAlike(name: string, dimensionName: string | undefined): string {
  const shared = filter.test(name) ? 'filter' : name.replace(axis, '$1<axis>').replace(end, '-<end>');
  return `${shared} ${dimensionName ?? ''}`;
}
