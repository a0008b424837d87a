const piece = 1 << 15;

/** Numbers whose count nobody knows before the end: they grow in pieces and are never copied while they do. */
export class GrowingColumn<A extends Float32Array | Float64Array> {
  private full: A[] = [];
  private last: A;
  private used = 0;

  constructor(private readonly make: (length: number) => A) {
    this.last = make(piece);
  }

  push(value: number): void {
    if (this.used === piece) {
      this.full.push(this.last);
      this.last = this.make(piece);
      this.used = 0;
    }
    this.last[this.used] = value;
    this.used += 1;
  }

  /** All of them in one; the pieces are given up, so that two columns of memory are held at most. */
  whole(): A {
    const whole = this.make(this.full.length * piece + this.used);
    for (const [at, one] of this.full.entries()) whole.set(one, at * piece);
    whole.set(this.last.subarray(0, this.used), this.full.length * piece);
    this.full = [];
    this.last = this.make(0);
    return whole;
  }
}

export function growing32(): GrowingColumn<Float32Array> {
  return new GrowingColumn((length) => new Float32Array(length));
}

export function growing64(): GrowingColumn<Float64Array> {
  return new GrowingColumn((length) => new Float64Array(length));
}
