import { groundOf } from '../../board/learn/learned-profile';
import { learnedSettings, settingName } from '../../board/learn/learned-settings';
import { measuredCounts, type TakenFor } from '../../features/board/measured-counts';
import { flightTakenText } from '../../recording/flight-taken';
import type { Terminal } from '../terminal';
import type { KnownListing, MeasuredListing } from './flown-listing';
import { oneScript } from './one-script';
import { openedRecording } from './opened-recording';
import { flownView, reported } from './run-recording';

interface AskedFlight {
  readonly path: string;
  readonly craft: string;
  readonly flight: string | undefined;
}

/** Reads the recording of a flight and holds the listing's gains against it. */
export async function measuredListing(
  { path, craft, flight }: AskedFlight,
  known: KnownListing,
  terminal: Terminal,
): Promise<MeasuredListing> {
  const script = await oneScript({ command: 'learn', path: craft }, undefined, terminal);
  const words = script.around.additions.catalog.recordings;
  const opened = await openedRecording(
    { path, craft, layout: undefined, said: [], rate: undefined },
    words,
    terminal,
  );
  const view = flownView(script, { path });
  const report = await reported(opened, { flight, view, words }, terminal);
  const { listing, catalog } = known;
  const all = learnedSettings(listing);
  const ground = groundOf(listing, all, catalog);
  const { gains } = report;
  return {
    families: gains.told === null ? [] : measuredCounts(takenOf(known), gains.told, ground),
    why: gains.told === null ? `${gains.reason} ${gains.advice}` : null,
    flown: flightTakenText(path, report, flight === undefined ? null : report.flight),
    craft,
  };
}

/** What was said of a setting, else what it surely or likely is. */
function takenOf({ listing, understood, confirmed }: KnownListing): readonly TakenFor[] {
  const rows = new Map(understood.rows.map((row) => [row.key, row]));
  return learnedSettings(listing).flatMap((setting): readonly TakenFor[] => {
    const key = settingName(setting);
    const said = confirmed.settings.get(key);
    if (said !== undefined)
      return said.flatMap(({ means, item }) => (item === undefined ? [{ setting, means }] : []));
    const row = rows.get(key);
    const [first] = row?.proposals ?? [];
    const isNear = row?.sureness === 'sure' || row?.sureness === 'likely';
    return isNear && first !== undefined && first.part === null ? [{ setting, means: first.parameter }] : [];
  });
}
