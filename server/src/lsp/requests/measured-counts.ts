import type { CancellationToken } from 'vscode-languageserver';
import { settingName } from '../../board/learn/learned-settings';
import { fileName } from '../../craft/include-path';
import { groundFor, meaningRows } from '../../features/board/meanings';
import { measuredCounts, type TakenFor } from '../../features/board/measured-counts';
import { flightTakenText } from '../../recording/flight-taken';
import type { RecordingReport } from '../../recording/report';
import { canonicalUri } from '../../workspace/canonical-uri';
import type { NotSaid } from '../board-protocol';
import type { BoardInHand, CountsMeasured, FlightAsked } from '../learn-protocol';
import { type HeldBoard, heldBoard } from './board-in-hand';
import { answerRecording } from './recording';
import type { Services } from './row';

/** What a recorded flight tells of how a board counts its gains; it proposes, and a person confirms. */
export async function countsMeasured(
  services: Services,
  { of, flown }: { readonly of: BoardInHand; readonly flown: FlightAsked },
  token: CancellationToken,
): Promise<CountsMeasured | NotSaid> {
  const { session } = services;
  const held = await heldBoard(session, of);
  if (held.kind === 'refused') return held;
  const { script, recording } = flown;
  const asked = { uri: recording, script, flight: null, layout: null, confirmsAnew: false };
  const answer = await answerRecording(services, asked, token);
  if (answer.kind === 'refused') return answer;
  if (answer.kind === 'columns')
    return {
      kind: 'refused',
      message: `Nobody has confirmed what the columns of ${fileName(recording)} hold: Open Recording asks it once for each logger.`,
    };
  const { catalog } = session.workspace;
  const { gains } = answer.report;
  if (gains.told === null) return { kind: 'refused', message: `${gains.reason} ${gains.advice}` };
  const ground = groundFor(held.board, held.settings, new Map(), catalog);
  return {
    kind: 'measured',
    rests: restsOn(services, of, flown, answer.report),
    families: measuredCounts(takenFor(services, held), gains.told, ground),
  };
}

/** Settings that are gains of which nobody has said how they count, or that surely or likely are. */
function takenFor({ session }: Services, { board, settings, listing }: HeldBoard): readonly TakenFor[] {
  const rows = new Map(
    meaningRows(board, settings, session.workspace.catalog, listing).map((row) => [row.key, row]),
  );
  return settings.flatMap((setting): readonly TakenFor[] => {
    const row = rows.get(settingName(setting));
    if (row === undefined || row.port !== null || row.isShared) return [];
    if (row.said !== null) return row.said.isRole ? [{ setting, means: row.said.means }] : [];
    const [first] = row.choices;
    const isNear = row.sureness === 'sure' || row.sureness === 'likely';
    return isNear && first !== undefined && first.part === null && first.row === null
      ? [{ setting, means: first.means }]
      : [];
  });
}

/** The text and the flight by their names, and whether the script says itself that they belong together. */
function restsOn(
  { session }: Services,
  { fileName: text, uri }: BoardInHand,
  flown: FlightAsked,
  report: RecordingReport,
): string {
  const included = session.snapshot(flown.script)?.craft.boardText()?.uri;
  const isIncluded = uri !== null && included !== undefined && canonicalUri(uri) === canonicalUri(included);
  const script = fileName(flown.script);
  const said = isIncluded ? `, which ${script} includes,` : '';
  const apart = isIncluded ? '' : ` ${script} does not include it.`;
  return `Right only if ${text}${said} was on the board in flight ${flown.flight} of ${script} (${flightTakenText(fileName(flown.recording), report, null)}).${apart}`;
}
