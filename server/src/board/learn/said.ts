import type { Counts, PartHeld } from '../../catalog/model/board-profile';

/** What a pilot says of one setting, or of one value of several that stand in it. */
export interface Confirmation {
  /** A path with its members, or one of a pack: `gyro.filter.1.cutoff`, `pack.<name>.cells`. */
  readonly means: string;
  /** Whether it only plays that part: nobody knows its scale. */
  readonly isRole?: boolean;
  /** The parts of the parameter that its values hold, one for each; none where it holds the whole. */
  readonly parts?: readonly PartHeld[];
  /** The place of the value, from 1, where several stand in the setting. */
  readonly item?: number;
  /** The binary digit of its number, from 0 for the lowest, where each says on or off. */
  readonly bit?: number;
  /** The same for several words of a list at once: the digit of each. */
  readonly bits?: Readonly<Record<string, number>>;
  /** Unit, scale, offset or table; {}: in the parameter's own unit, as it stands. */
  readonly counted?: Pick<Counts, 'unit' | 'scale' | 'offset' | 'table'>;
  /** What is said besides: it takes the place of what would be proposed. */
  readonly more?: Pick<Counts, 'step' | 'limits' | 'base'>;
  /** By the parameter's words, the board's. */
  readonly spelled?: Readonly<Record<string, string>>;
}

/** What a pilot says of the roles of ports, on a board with a setting for each port. */
export interface PortsSaid {
  /** The port, by the key of its setting. */
  readonly ports: ReadonlyMap<string, string>;
  /** The parameter by the board's word; null: the port is unused. */
  readonly words: ReadonlyMap<string, string | null>;
}

/** What a pilot says that settings stand for, by their keys. */
export interface Confirmed {
  readonly settings: ReadonlyMap<string, readonly Confirmation[]>;
  readonly ports: PortsSaid;
}

export const nothingConfirmed: Confirmed = {
  settings: new Map(),
  ports: { ports: new Map(), words: new Map() },
};

/** Settings of which only the parameter was said. */
export function confirmedAs(pairs: Iterable<readonly [key: string, parameter: string]>): Confirmed {
  const settings = new Map([...pairs].map(([key, means]) => [key, [{ means }]] as const));
  return { ...nothingConfirmed, settings };
}
