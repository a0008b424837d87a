import type { Craft } from '../../craft/craft';
import { type Position, type Range, rangeOf } from '../range';
import type { Snapshot } from '../snapshot';
import type { FileEdits } from '../text-edits';
import { craftsNaming, namedAt, occurrencesAcross } from './named-at';
import type { NamedThing, Occurrence } from './occurrences';
import { refusalOf } from './rename-refusal';

export interface Refused {
  /** A sentence for the pilot. */
  readonly refused: string;
}

export interface Renamable {
  readonly range: Range;
  readonly placeholder: string;
}

export interface Renamed {
  /** Edits by script, each script once; none where the name stays. */
  readonly files: readonly FileEdits[];
}

/** Whether what stands at a position can be given another name: constants and packs can. */
export function prepareRename(snapshot: Snapshot, position: Position): Renamable | Refused {
  const here = renamableAt(snapshot, position);
  if ('refused' in here) return here;
  return { range: rangeOf(here.place), placeholder: here.named.name };
}

/**
 * Gives a constant or a pack another name in all scripts of the craft, and of the other crafts that share
 * one of them. Names that are taken or that a script can't hold are refused before anything changes.
 */
export function rename(
  snapshot: Snapshot,
  position: Position,
  newName: string,
  others: Iterable<Craft> = [],
): Renamed | Refused {
  const here = renamableAt(snapshot, position);
  if ('refused' in here) return here;
  const { named } = here;
  if (newName === named.name) return { files: [] };
  const crafts = craftsNaming(snapshot, named, others);
  const refused = refusalOf(snapshot, crafts, { kind: named.kind, name: newName });
  if (refused !== null) return { refused };
  return { files: editsByFile(occurrencesAcross(crafts, named, snapshot), newName) };
}

function renamableAt(snapshot: Snapshot, position: Position): Occurrence | Refused {
  const here = namedAt(snapshot, position);
  return here !== undefined && isRenamable(here.named)
    ? here
    : { refused: 'Only constants and packs can be renamed.' };
}

function isRenamable({ kind }: NamedThing): boolean {
  return kind === 'constant' || kind === 'pack';
}

function editsByFile(occurrences: readonly Occurrence[], newText: string): readonly FileEdits[] {
  const files = new Map<string, FileEdits['edits']>();
  for (const { place } of occurrences) {
    const { uri } = place.script;
    files.set(uri, [...(files.get(uri) ?? []), { range: rangeOf(place), newText }]);
  }
  return [...files].map(([uri, edits]) => ({ uri, edits }));
}
