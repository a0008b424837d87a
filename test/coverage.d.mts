/** Per cent by measure: lines, branches, functions. */
export type Shares = Readonly<Record<string, number>>;

export function raised(floor: Shares, reached: Shares): Shares;
export function belowFloor(floor: Shares, reached: Shares): readonly string[];
