import { tellingIn } from '../../features/board/finding-words';
import { keptReadings } from '../../features/flight/keep-readings';
import { freeName } from '../../features/flight/note-flight';
import type { Snapshot } from '../../features/snapshot';
import { benchCard } from '../../sheet/bench-card/bench-card';
import { benchCardMarkdown } from '../../sheet/bench-card/markdown';
import { benchCardPage } from '../../sheet/bench-card/page';
import type { BenchCardAnswer, FlightNoted, ReadingFault, ReadingsToKeep } from '../protocol';
import { noteFlights } from './flight';
import type { Context } from './row';

export function benchCardOf({ snapshot }: Context): BenchCardAnswer | null {
  if (snapshot.craft.readAs() === 'empty') return null;
  const card = cardOf(snapshot);
  return { card, page: benchCardPage(card), markdown: benchCardMarkdown(card) };
}

/** What was read off becomes the notes of flights, or of a day on the bench: one for each pack. */
export function keepReadings(
  context: Context,
  { readings, today }: ReadingsToKeep,
): FlightNoted | { readonly faults: readonly ReadingFault[] } | null {
  const { snapshot } = context;
  const { flights, faults } = keptReadings(cardOf(snapshot), readings, snapshot.catalog, today);
  if (faults.length > 0) return { faults };
  const taken = [...snapshot.craft.members('flight')];
  const sections = flights.map(({ isFlown, answers }) => {
    const name = freeName(taken, `${isFlown ? 'day' : 'bench'}-${today}`);
    taken.push(name);
    return { name, answers };
  });
  return noteFlights(context, sections, flights.at(-1)?.pack ?? null);
}

function cardOf(snapshot: Snapshot) {
  return benchCard(snapshot.craft, snapshot.findings(), snapshot.craft.packs(), tellingIn(snapshot));
}
