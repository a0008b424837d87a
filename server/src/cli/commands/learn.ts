import { canBeConfirmed } from '../../board/learn/confirm';
import { learnedProfile } from '../../board/learn/learned-profile';
import { profileText } from '../../board/learn/profile-text';
import { withText } from '../../board/learn/teach/taught-profile';
import { readListing } from '../../board/listing/read-listing';
import { boardNameFault } from '../../board/profile/board-name';
import type { Catalog } from '../../catalog/catalog';
import { type Learned, learned } from '../../features/board/learning';
import { command, jsonOption } from '../command';
import { currentFolder } from '../files/here';
import { readCapture } from '../files/scripts';
import { exitCodes, UsageError } from '../outcome';
import { jsonText } from '../report/visible';
import { commandIn, leftText, takeLessons } from './learn-lessons';

/** `propsoff learn`: a profile to standard output, what its settings may stand for to standard error. */
export const learnCommand = command({
  name: 'learn',
  summary: 'a board profile from a listing of any form',
  usage: ['<capture | -> [options]'],
  about: [
    "A board profile from a listing of any form, to standard output; what its settings may stand for, to standard error. Only what is confirmed is named; the rest are settings of the board's own.",
  ],
  options: {
    name: { type: 'string', value: 'name', about: 'what the board is called; without it my-board' },
    confirm: {
      type: 'string',
      multiple: true,
      value: 'setting=parameter',
      about: 'what a setting stands for; said once for each that is right',
    },
    line: {
      type: 'string',
      multiple: true,
      value: 'number=kind',
      about:
        'what a line is that was not understood: setting, comment or heading; behind it, where the line does not show it, the value, the mark or the group',
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
  ],
  exit: { fine: 'a profile was made', findings: 'no line of the listing looks like a setting' },
  run: async ({ values, positionals }, terminal) => {
    const [path] = positionals;
    if (path === undefined || positionals.length > 1) throw new UsageError('learn takes one capture');
    const name = values.name ?? 'my-board';
    const fault = boardNameFault(name);
    if (fault !== null) throw new UsageError(fault);
    const { catalog } = (await currentFolder()).additions;
    const confirmed = readConfirmed(values.confirm ?? [], catalog);
    const found = readListing(await readCapture(path, terminal), null);
    const { listing, said } = takeLessons(found, values.line ?? []);
    const understood = learned(listing, catalog);
    const made = learnedProfile(listing, name, confirmed, catalog);
    if (made === null) {
      for (const line of [understood.summary, ...leftText(listing)]) terminal.tell(line);
      return exitCodes.findings;
    }
    const omits = values['omits-defaults'] === true ? { omitsDefaults: true as const } : {};
    const profile = withText(made.profile, { ...commandIn(values.command, listing), ...omits });
    if (values.json === true) await terminal.out(jsonText({ version: 1, ...understood }));
    else {
      await terminal.out(profileText(profile));
      const missed = [...confirmed.keys()].filter((key) => !made.mapped.includes(key));
      for (const line of [...said, ...report(understood, confirmed, missed), ...leftText(listing)])
        terminal.tell(line);
    }
    return exitCodes.fine;
  },
});

/** For the person who confirms: what may stand for what. */
function report(
  { summary, rows }: Learned,
  confirmed: ReadonlyMap<string, string>,
  missed: readonly string[],
): readonly string[] {
  const open = rows.filter(({ key }) => !confirmed.has(key));
  return [
    summary,
    ...missed.map((key) => `not taken: ${key}: no such setting, or its parameter can’t be held so`),
    ...open.map(({ key, value, proposals }) => {
      const may = proposals.slice(0, 3).map(({ parameter, meaning }) => `${parameter} (${meaning})`);
      return `${key} ${value}: ${may.length === 0 ? 'nothing near' : `perhaps ${may.join(', ')}`}`;
    }),
    'Say --confirm "setting=parameter" for each that is right; nothing is taken by itself.',
  ];
}

function readConfirmed(given: readonly string[], catalog: Catalog): ReadonlyMap<string, string> {
  return new Map(
    given.map((text) => {
      const at = text.lastIndexOf('=');
      const [key, parameter] = [text.slice(0, at), text.slice(at + 1)];
      if (at < 1) throw new UsageError(`--confirm takes "setting=parameter", not "${text}"`);
      if (!catalog.parameters.has(parameter)) throw new UsageError(`there is no parameter ${parameter}`);
      if (!canBeConfirmed(catalog, parameter))
        throw new UsageError(
          `${parameter} is held in several settings or members: name it in the profile by hand`,
        );
      return [key, parameter] as const;
    }),
  );
}
