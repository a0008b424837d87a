import type { CancellationToken } from 'vscode-languageserver';
import type { Craft } from '../../craft/craft';
import { CraftView } from '../../craft/view';
import { lastRecorded, type RecordedBy } from '../../features/flight/recorded';
import type { DocumentEdit } from '../../language/document';
import { channelEdits } from '../../sheet/find/channel-edits';
import { channelPlan, channelWishOf, mostPilotsPlanned, sendsAt } from '../../sheet/find/channels';
import { type FlightWeighed, find } from '../../sheet/find/find';
import { readHold } from '../../sheet/find/hold-text';
import { noRecording } from '../../sheet/find/measured-text';
import { type Holds, usualHolds, wishFor } from '../../sheet/find/wish';
import type { AboutScript } from '../own-message';
import type { ChannelsAnswer, ChannelsAsked, FindAnswer, TypedHolds, ValuesAsked } from '../values-protocol';
import { readInFull } from './about-script';
import type { Services } from './row';
import { inSlices } from './slices';

/**
 * What to set. It is looked for on a copy of the craft, in slices, so that keystrokes are not kept waiting; who waits
 * sees how far it is, and can end it. Where a flight names a recording, the noise of the last is read first. Null where the
 * script is not open.
 */
export async function valuesFound(
  services: Services,
  { textDocument: { uri }, packs, holds: typed, moves, workDoneToken }: AboutScript & ValuesAsked,
  token: CancellationToken,
): Promise<FindAnswer | null> {
  const { session, wholeWorkspace } = services;
  await readInFull(session, uri, token);
  const snapshot = session.snapshot(uri);
  const version = session.workspace.get(uri)?.version;
  if (snapshot === undefined || version === undefined) return null;
  const { holds, faults } = holdsOf(typed);
  if (faults.length > 0) return { kind: 'faults', faults };
  const { script } = snapshot;
  const craft = snapshot.craft.copied();
  const check = (one: typeof craft) => session.workspace.check(one);
  // Before anything is waited for: the text may be edited meanwhile.
  const findings = snapshot.findings();
  const wish = wishFor(craft, { packs: packs.filter((pack) => craft.packs().includes(pack)), holds, moves });
  // Places in the text as it is now: it may be another one at the end.
  const counted = (edits: readonly DocumentEdit[]) =>
    edits.map(({ start, end, text }) => ({
      range: session.clientRange(script, { start, end }),
      newText: text,
    }));
  const progress = wholeWorkspace.progress(workDoneToken, 'Find a Value');
  const report = (share: number, doing: string) => progress.report(Math.round(100 * share), 100, doing);
  try {
    const flight = lastRecorded(craft);
    const first = flight === null ? 0 : reading;
    const measured =
      flight === null
        ? { noise: noRecording, loops: null }
        : await weighed(services, craft, flight, token, report);
    const work = find(craft, wish, findings, check, measured);
    const found = await inSlices(work, token, ({ share, doing }) =>
      report(first + (1 - first) * share, doing),
    );
    const isSame = session.workspace.get(uri)?.version === version;
    const { proposals, ...rest } = found;
    return {
      kind: 'found',
      version,
      ...rest,
      proposals: proposals.map(({ edits, text: _, ...one }) => ({
        ...one,
        edits: isSame ? counted(edits) : [],
      })),
    };
  } finally {
    progress.end();
  }
}

/** The share of the work that is to read a recording, as far as anybody can say. */
const reading = 0.3;

async function weighed(
  services: Services,
  craft: Craft,
  flight: RecordedBy,
  token: CancellationToken,
  report: (share: number, doing: string) => Promise<void>,
): Promise<FlightWeighed> {
  const { flightWeighed } = await import('./flight-weighed');
  return flightWeighed(services, craft, flight, token, (share, doing) => report(reading * share, doing));
}

/** The video channels of everybody who flies together. Null where the script is not open. */
export async function channelsFound(
  { session }: Services,
  { textDocument: { uri }, pilots, keepsOthers }: AboutScript & ChannelsAsked,
  token: CancellationToken,
): Promise<ChannelsAnswer | null> {
  await readInFull(session, uri, token);
  const snapshot = session.snapshot(uri);
  const version = session.workspace.get(uri)?.version;
  if (snapshot === undefined || version === undefined || pilots < 1 || pilots > mostPilotsPlanned)
    return null;
  const craft = snapshot.craft.copied();
  const view = new CraftView(craft, snapshot.pack);
  const work = channelPlan(craft.catalog, channelWishOf(view, pilots, keepsOthers), sendsAt(view));
  const plan = await inSlices(work, token, async () => {});
  return {
    version,
    ...plan,
    channels: plan.channels.map((channel) => ({
      ...channel,
      edits: channelEdits(craft, channel).map(({ start, end, text }) => ({
        range: session.clientRange(snapshot.script, { start, end }),
        newText: text,
      })),
    })),
  };
}

/** What was typed, and by hold what is wrong with it. */
function holdsOf(typed: TypedHolds): {
  readonly holds: Holds;
  readonly faults: readonly { readonly hold: keyof Holds; readonly why: string }[];
} {
  const faults: { hold: keyof Holds; why: string }[] = [];
  const read = (hold: keyof Holds): number | null => {
    const text = typed[hold];
    const value = text === null ? usualHolds[hold] : readHold(hold, text);
    if (typeof value !== 'string') return value;
    faults.push({ hold, why: value });
    return null;
  };
  const holds = {
    toneLeft: read('toneLeft'),
    phaseMargin: read('phaseMargin'),
    gainMargin: read('gainMargin'),
    minutes: read('minutes'),
  };
  return { holds, faults };
}
