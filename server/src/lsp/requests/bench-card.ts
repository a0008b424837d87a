import { keptReadings } from '../../features/flight/keep-readings';
import { freeName } from '../../features/flight/note-flight';
import type { Snapshot } from '../../features/snapshot';
import { benchCard } from '../../sheet/bench-card/bench-card';
import { benchCardMarkdown } from '../../sheet/bench-card/markdown';
import { benchCardPage } from '../../sheet/bench-card/page';
import type { BenchCardAnswer, FlightNoted, ReadingFault, ReadingsToKeep } from '../protocol';
import { noteFlight } from './flight';
import type { Context } from './row';

export function benchCardOf({ snapshot }: Context): BenchCardAnswer | null {
  if (snapshot.craft.readAs() === 'empty') return null;
  const card = cardOf(snapshot);
  return { card, page: benchCardPage(card), markdown: benchCardMarkdown(card) };
}

/** What was read off becomes the note of a flight, or of a day on the bench. */
export function keepReadings(
  context: Context,
  { readings, today }: ReadingsToKeep,
): FlightNoted | { readonly faults: readonly ReadingFault[] } | null {
  const { snapshot } = context;
  const kept = keptReadings(cardOf(snapshot), readings, snapshot.catalog, today);
  if (kept.faults.length > 0) return { faults: kept.faults };
  const day = `${kept.isFlown ? 'day' : 'bench'}-${today}`;
  const name = freeName(snapshot.craft.members('flight'), day);
  return noteFlight(context, { name, pack: snapshot.pack, answers: kept.answers });
}

function cardOf(snapshot: Snapshot) {
  return benchCard(snapshot.craft, snapshot.findings(), snapshot.pack);
}
