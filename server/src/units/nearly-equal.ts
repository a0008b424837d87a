/** Whether two values are the same but for the dust that binary arithmetic leaves behind. */
export function nearlyEqual(one: number, other: number): boolean {
  return Math.abs(one - other) <= 1e-9 * Math.max(Math.abs(one), Math.abs(other));
}
