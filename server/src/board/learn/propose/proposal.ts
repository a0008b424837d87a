import type { PartHeld } from '../../../catalog/model/board-profile';

/**
 * How sure a proposal is. `sure` may be taken with all others that are, by one press; `likely` is shown first but
 * asked for; `possible` is one of several.
 */
export type Sureness = 'sure' | 'likely' | 'possible';

/** What a setting may stand for. */
export interface StandsFor {
  /** The catalogue's name: `switch.<function>.on`. */
  readonly parameter: string;
  /** Which one of its collection: `arm`, `2`. Null where it has none, and for a pack, which no board names. */
  readonly member: string | null;
  /** Which part of the parameter, where several settings hold it between them. */
  readonly part: PartHeld | null;
}

/** What may be, and what speaks for it. */
export interface Candidate extends StandsFor {
  /** A sentence. */
  readonly why: string;
}

export interface Proposal extends Candidate {
  readonly sureness: Sureness;
  /** The next two, the likelier first. */
  readonly rivals: readonly Candidate[];
}

/** The row's `means`: the path of a script, `switch.arm.on`; a pack stays open. */
export function meansOf({ parameter, member }: StandsFor): string {
  return member === null ? parameter : parameter.replace(/<[a-z]+>/, member);
}

const axes = /\.(roll|pitch|yaw)(?=\.|$)/;

/**
 * What is counted alike on every board: `control.*.proportional` for roll, pitch and yaw, `gyro.filter.*.cutoff` for
 * all of its filters. A parameter without such siblings is a family of its own.
 */
export function familyOf(parameter: string): string {
  return parameter.replace(/<[a-z]+>/, '*').replace(axes, '.*');
}
