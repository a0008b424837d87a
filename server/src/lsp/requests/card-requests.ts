import { keptReadings } from '../../features/flight/keep-readings';
import { freeName } from '../../features/flight/note-flight';
import type { Snapshot } from '../../features/snapshot';
import { benchCard } from '../../sheet/bench-card/bench-card';
import { benchCardMarkdown } from '../../sheet/bench-card/markdown';
import { benchCardPage } from '../../sheet/bench-card/page';
import type { benchCardRequest, keepReadingsRequest } from '../protocol';
import type { OnServerFault } from '../server';
import type { Session } from '../session';
import { notedFlight } from './flight-requests';
import type { Answers } from './on-demand';
import { answeringInFull } from './request';

export interface CardAnswers {
  readonly benchCard: Answers<typeof benchCardRequest>;
  readonly keepReadings: Answers<typeof keepReadingsRequest>;
}

/** The bench card, and what was read off on it. */
export function cardAnswers(session: Session, onFault: OnServerFault): CardAnswers {
  return {
    benchCard: answeringInFull(session, onFault, 'bench card', ({ snapshot }) => {
      if (snapshot.craft.readAs() === 'empty') return null;
      const card = cardOf(snapshot);
      return { card, page: benchCardPage(card), markdown: benchCardMarkdown(card) };
    }),
    keepReadings: answeringInFull(
      session,
      onFault,
      'keeping readings',
      ({ snapshot }, { readings, today }) => {
        const kept = keptReadings(cardOf(snapshot), readings, snapshot.catalog, today);
        if (kept.faults.length > 0) return { faults: kept.faults };
        const day = `${kept.isFlown ? 'day' : 'bench'}-${today}`;
        const name = freeName(snapshot.craft.members('flight'), day);
        return notedFlight(session, snapshot, { name, pack: snapshot.pack, answers: kept.answers });
      },
    ),
  };
}

function cardOf(snapshot: Snapshot) {
  return benchCard(snapshot.craft, snapshot.findings(), snapshot.pack);
}
