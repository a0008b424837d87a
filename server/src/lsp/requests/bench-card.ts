import { boardRenderer } from '../../features/board/finding-words';
import { keptReadings } from '../../features/flight/keep-readings';
import { freeName } from '../../features/flight/note-flight';
import { readingFault } from '../../features/flight/reading-fault';
import { linesToWrite } from '../../features/lines-to-write';
import type { Snapshot } from '../../features/snapshot';
import { benchCard } from '../../sheet/bench-card/bench-card';
import { benchCardMarkdown } from '../../sheet/bench-card/markdown';
import { benchCardPage } from '../../sheet/bench-card/page';
import type { CardTaken } from '../../sheet/bench-card/taken';
import type {
  BenchCardAnswer,
  ReadingFault,
  ReadingsKept,
  ReadingsToKeep,
  ReadingTyped,
} from '../flight-protocol';
import type { ScriptContext } from './about-script';
import { noteFlights } from './flight';

export function benchCardOf(
  { snapshot }: ScriptContext,
  { taken }: { readonly taken?: CardTaken | undefined },
): BenchCardAnswer | null {
  if (snapshot.craft.readAs() === 'empty') return null;
  const card = cardOf(snapshot);
  return { card, page: benchCardPage(card, taken), markdown: benchCardMarkdown(card, taken) };
}

/** Asked for as a reading is typed. */
export function readingTyped({ snapshot }: ScriptContext, { typed, ...kind }: ReadingTyped): string | null {
  return readingFault(snapshot.catalog, kind, typed);
}

/** What was read off becomes the notes of flights, or of a day on the bench, one for each pack; and settings. */
export function keepReadings(
  context: ScriptContext,
  { ticked, readings, today }: ReadingsToKeep,
): ReadingsKept | { readonly faults: readonly ReadingFault[] } | null {
  const { session, snapshot } = context;
  const { catalog, craft, script } = snapshot;
  const { flights, settings, faults } = keptReadings(cardOf(snapshot), { ticked, readings }, catalog, today);
  if (faults.length > 0) return { faults };
  const names = [...craft.members('flight')];
  const sections = flights.map(({ isFlown, answers, comments }) => {
    const name = freeName(names, `${isFlown ? 'day' : 'bench'}-${today}`);
    names.push(name);
    return { name, answers, comments };
  });
  const noted = noteFlights(context, sections, flights.at(-1)?.pack ?? null);
  const lines = linesToWrite(craft, [...settings.keys()], settings);
  const version = session.workspace.get(snapshot.uri)?.version;
  if (version === undefined || (noted === null && lines === null)) return null;
  const written = (lines?.edits ?? []).map(({ start, end, text }) => ({
    range: session.clientRange(script, { start, end }),
    newText: text,
  }));
  const flown = noted === null ? [] : [{ range: noted.range, newText: noted.newText }];
  return { version, edits: [...flown, ...written], record: noted?.record ?? null };
}

function cardOf(snapshot: Snapshot) {
  return benchCard(snapshot.craft, snapshot.findings(), snapshot.craft.packs(), boardRenderer(snapshot));
}
