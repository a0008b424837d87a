/** Draws that look random and are the same each time. Source: mulberry32, public domain. */
export class Lot {
  private state: number;

  constructor(seed: number) {
    this.state = seed | 0;
  }

  /** From 0, below 1. */
  share(): number {
    this.state = (this.state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(this.state ^ (this.state >>> 15), 1 | this.state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  }

  whole(below: number): number {
    return Math.floor(this.share() * below);
  }

  chance(share: number): boolean {
    return this.share() < share;
  }

  one<Item>(list: readonly Item[]): Item {
    const drawn = list[this.whole(list.length)];
    if (drawn === undefined) throw new Error('there is nothing to draw from');
    return drawn;
  }

  /** So many different ones, in the order of the list. */
  some<Item>(list: readonly Item[], count: number): readonly Item[] {
    const left = [...list.keys()];
    while (left.length > count) left.splice(this.whole(left.length), 1);
    return left.flatMap((index) => list.slice(index, index + 1));
  }
}
