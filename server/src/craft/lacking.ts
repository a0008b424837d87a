/** Why nothing comes of a computation: parameters that it asked for and that have no value. */
export class Lacking {
  constructor(
    /** No line sets them, and nothing is assumed for them. */
    readonly missing: readonly string[],
    /** A line sets them to something that can't be read or is refused. */
    readonly refused: readonly string[],
  ) {}

  isSame({ missing, refused }: Lacking): boolean {
    return sameItems(this.missing, missing) && sameItems(this.refused, refused);
  }
}

function sameItems(one: readonly string[], other: readonly string[]): boolean {
  return one.length === other.length && one.every((item, index) => item === other[index]);
}
