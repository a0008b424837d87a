import type { OnServerFault } from '../server';
import type { Session } from '../session';
import { boardAnswers } from './board-requests';
import { cardAnswers } from './card-requests';
import { compareAnswer } from './compare-requests';
import { flightAnswers } from './flight-requests';
import { hoverElsewhereAnswer } from './hover-elsewhere';
import { sheetAnswers } from './sheet-requests';

/** All that answers requests which wait for a person to open or start something. */
export function answersOnDemand(session: Session, onFault: OnServerFault) {
  return {
    ...boardAnswers(session, onFault),
    ...sheetAnswers(session, onFault),
    ...flightAnswers(session, onFault),
    ...cardAnswers(session, onFault),
    compare: compareAnswer(session, onFault),
    hoverElsewhere: hoverElsewhereAnswer(session, onFault),
  };
}
