import type { RecordingProposal } from '../report';

/** Something that a recording shows, before it is said in the words of the table. */
export interface FoundInFlight {
  readonly id: string;
  readonly values: Readonly<Record<string, string>>;
  readonly proposals: readonly RecordingProposal[];
}
