/** Lines are read with one group each: groups within groups as one text. */
export function oneGroup(groups: readonly string[]): string {
  return groups.join('/');
}

/** The same as the list that a profile is asked with. */
export function groupsOfOne(group: string): readonly string[] {
  return group === '' ? [] : [group];
}

export function keyOf(group: string, name: string): string {
  return JSON.stringify([group, name]);
}
