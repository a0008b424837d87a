import { learnedProfile } from '../../board/learn/learned-profile';
import { profileText } from '../../board/learn/profile-text';
import type { Confirmation, Confirmed } from '../../board/learn/said';
import { withText } from '../../board/learn/teach/taught-profile';
import { readListing } from '../../board/listing/read-listing';
import { boardNameFault } from '../../board/profile/board-name';
import { type Learned, learned } from '../../features/board/learning';
import { command, jsonOption } from '../command';
import { readConfirmed } from '../files/confirmed';
import { type KnownListing, type MeasuredListing, withFlown } from '../files/flown-listing';
import { currentFolder } from '../files/here';
import { readCapture } from '../files/scripts';
import { exitCodes, UsageError } from '../outcome';
import { learnedText } from '../report/learned-text';
import { measuredCountsText } from '../report/measured-counts-text';
import { jsonText } from '../report/visible';
import type { Terminal } from '../terminal';
import { commandIn, doubtText, leftText, takeLessons } from './learn-lessons';

/** `propsoff learn`: a profile to standard output, what its settings may stand for to standard error. */
export const learnCommand = command({
  name: 'learn',
  summary: 'a board profile from a listing of any form',
  usage: ['<capture | -> [options]'],
  about: [
    "A board profile from a listing of any form, to standard output; what its settings may stand for, to standard error. Only what is confirmed is named; the rest are settings of the board's own.",
    '--confirm takes more behind the parameter. How the value counts: unit Hz; scale 0.1, what the board’s 1 is in that unit; offset 5, what the board shows for nothing; plain, in the parameter’s own unit as it stands; step 1 Hz; limits 20 Hz..500 Hz; base 16; table 1=25 mW,2=100 mW; words soft=first-order,0=none, the board’s word first. Which part it holds: part low, high, row or column; at 50 % of a curve; entry 2 of a list; number-of rear-left, where in a list that stands; has buzzer, whether a list has it; cell 30, in rows of 30; value 2, of several values in the setting; bit 3, of a number whose binary digits say on or off, 0 for the lowest; bits 0=buzzer,3=lights, all of those that speak of a list.',
  ],
  options: {
    name: { type: 'string', value: 'name', about: 'what the board is called; without it my-board' },
    confirm: {
      type: 'string',
      multiple: true,
      value: 'setting=parameter …',
      about: 'what a setting stands for, and how it counts; said once for each that is right',
    },
    line: {
      type: 'string',
      multiple: true,
      value: 'number=kind',
      about:
        'what a line is that was not understood: setting, comment or heading; behind it, where the line does not show it, its value or name=value, what a comment begins with, or the group',
    },
    command: {
      type: 'string',
      value: 'example',
      about:
        'what you would type to set one setting as it stands in the listing; same: a line of the listing',
    },
    'omits-defaults': {
      type: 'boolean',
      about: 'the board lists only what differs from its defaults',
    },
    role: {
      type: 'string',
      multiple: true,
      value: 'setting=parameter',
      about: 'what a setting plays the part of, where nobody knows how it is counted',
    },
    port: {
      type: 'string',
      multiple: true,
      value: 'setting=port',
      about: 'the port whose role a setting says, such as ports/3=uart3',
    },
    'port-word': {
      type: 'string',
      multiple: true,
      value: 'word=parameter',
      about: 'the board’s word for a role of a port, such as rx=receiver.port, or free=unused',
    },
    sure: { type: 'boolean', about: 'take all proposals that are sure' },
    recording: {
      type: 'string',
      value: 'file',
      about: 'a flight with these settings: what its gains were tells how they count; with --craft',
    },
    craft: { type: 'string', value: 'script', about: 'the script of the craft that was flown' },
    flight: { type: 'string', value: 'number', about: 'which flight of the file; without it the longest' },
    flown: {
      type: 'boolean',
      about: 'the listing is what the board held in that flight: take what the recording says',
    },
    json: jsonOption(
      'learn',
      'what was understood and the proposals, as one JSON object, instead of the profile',
    ),
  },
  examples: [
    ['propsoff learn captured.txt', 'what may stand for what, with the reasons'],
    ['propsoff learn captured.txt --command same', 'the board takes the lines that it lists'],
    [
      'propsoff learn captured.txt --name finch > finch.json',
      'begin a profile; its place is the folder boards',
    ],
    [
      "propsoff learn captured.txt --confirm 'calm/first-cut=gyro.filter.1.cutoff unit Hz scale 0.1'",
      'say what a setting means and how it is counted',
    ],
    [
      "propsoff learn captured.txt --role 'lean/grip=control.roll.proportional'",
      'a gain whose scale nobody knows: it is compared, and nothing is computed from it',
    ],
    [
      'propsoff learn captured.txt --recording flight.csv --craft my.craft',
      'what the board’s gains were in a flight, and so how they count',
    ],
  ],
  exit: { fine: 'a profile was made', findings: 'no line of the listing looks like a setting' },
  run: async ({ values, positionals }, terminal) => {
    const [path] = positionals;
    if (path === undefined || positionals.length > 1) throw new UsageError('learn takes one capture');
    const name = values.name ?? 'my-board';
    const fault = boardNameFault(name);
    if (fault !== null) throw new UsageError(fault);
    const { catalog } = (await currentFolder()).additions;
    const confirming = readConfirmed(values, catalog);
    const found = readListing(await readCapture(path, terminal), null);
    const { listing, said } = takeLessons(found, values.line ?? []);
    const understood = learned(listing, catalog);
    const sure = values.sure === true ? withSure(confirming, understood) : confirming;
    const measured = await measuredIn(values, { listing, understood, confirmed: sure, catalog }, terminal);
    const confirmed = measured === null || values.flown !== true ? sure : withFlown(sure, measured.families);
    const made = learnedProfile(listing, name, confirmed, catalog);
    if (made === null) {
      for (const line of [understood.summary, ...doubtText(listing), ...leftText(listing)])
        terminal.message(line);
      return exitCodes.findings;
    }
    const { outcomes } = made;
    const omits = values['omits-defaults'] === true ? { omitsDefaults: true as const } : {};
    const profile = withText(made.profile, { ...commandIn(values.command, listing), ...omits });
    if (values.json === true)
      await terminal.out(
        jsonText({ version: 1, ...understood, outcomes, measured: measured?.families ?? null }),
      );
    else {
      await terminal.out(profileText(profile));
      const portKeys = new Set(confirmed.ports.ports.keys());
      const told =
        measured === null ? [] : measuredCountsText(measured, { path, isTaken: values.flown === true });
      for (const line of [
        ...said,
        ...learnedText(understood, outcomes, portKeys),
        ...told,
        ...doubtText(listing),
        ...leftText(listing),
      ])
        terminal.message(line);
    }
    return exitCodes.fine;
  },
});

/** What a recording says of the listing's gains; null where none is asked. Reading one is a part by itself. */
async function measuredIn(
  values: {
    readonly recording?: string;
    readonly craft?: string;
    readonly flight?: string;
    readonly flown?: boolean;
  },
  known: KnownListing,
  terminal: Terminal,
): Promise<MeasuredListing | null> {
  const { recording, craft, flight, flown } = values;
  if (recording === undefined) {
    if (flown === true || craft !== undefined || flight !== undefined)
      throw new UsageError(
        '--flown, --craft and --flight say more of --recording: name the file of the flight',
      );
    return null;
  }
  if (craft === undefined)
    throw new UsageError('--recording needs --craft, the script of the craft: it says where its motors sit');
  const { measuredListing } = await import('../files/measured-listing');
  return measuredListing({ path: recording, craft, flight }, known, terminal);
}

/** What is sure, of settings of which nothing is said; what asks how it is counted is taken by its role. */
function withSure(confirmed: Confirmed, { rows }: Learned): Confirmed {
  const sure = rows.flatMap(
    ({ key, sureness, proposals: [first] }): (readonly [string, readonly Confirmation[]])[] => {
      if (sureness !== 'sure' || first === undefined || confirmed.settings.has(key)) return [];
      const { parameter, part } = first;
      return [[key, [{ means: parameter, ...(part === null ? {} : { parts: [part] }) }]]];
    },
  );
  return { ...confirmed, settings: new Map([...confirmed.settings, ...sure]) };
}
