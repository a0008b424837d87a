import { URI } from 'vscode-uri';
import { lastRecorded, type RecordedBy } from '../../features/flight/recorded';
import type { FoundValues, ProposalId } from '../../sheet/find/answer';
import { proposalTitles } from '../../sheet/find/answer';
import { type FlightWeighed, find } from '../../sheet/find/find';
import { heldText, readHold } from '../../sheet/find/hold-text';
import { type Holds, type MoveName, moveNames, moveWords, usualHolds, wishFor } from '../../sheet/find/wish';
import { command, jsonOption, nameOption } from '../command';
import { written } from '../files/mend';
import { oneScript } from '../files/one-script';
import { shownPath } from '../files/script-paths';
import { exitCodes, UsageError } from '../outcome';
import { foundText } from '../report/find-text';
import { Progress } from '../report/progress';
import { jsonText } from '../report/visible';
import type { Terminal } from '../terminal';

const proposalIds = Object.keys(proposalTitles).filter(isProposal);

/** `propsoff find`: what to set, for people or as data; one of the proposals written where it is wanted. */
export const findCommand = command({
  name: 'find',
  summary: 'what to set: three proposals between least delay and most quiet, or what stands in the way',
  usage: ['<script | -> [options]'],
  about: [
    'Filters cost delay and take the motors’ noise off. It looks for what costs least and what is quietest, and for what lies in the middle, of all with which everything that is asked for holds: how much is taken off the motors’ tones, margins at every operating point, minutes. Nothing is proposed that raises a must-fix or a risk.',
    `Asked for unless told otherwise: ${heldText(usualHolds)}. What may move: ${moveNames.map((name) => `${name} (${moveWords[name]})`).join('; ')}.`,
    'With some packs only these are tuned, in lines of their own. It works on a model of the craft: a test hover decides.',
  ],
  options: {
    pack: {
      type: 'string',
      multiple: true,
      value: 'name',
      about: 'a pack for which it must hold; said again for more; without it all of them',
    },
    tones: {
      type: 'string',
      value: 'dB',
      about: 'at least so much is taken off every motor tone; any: that is not asked for',
    },
    'phase-margin': {
      type: 'string',
      value: 'deg',
      about: 'the least phase margin, of every axis at every operating point; any: not asked for',
    },
    'gain-margin': {
      type: 'string',
      value: 'times',
      about: 'the least gain margin, likewise; any: not asked for',
    },
    minutes: {
      type: 'string',
      value: 'min',
      about: 'the least minutes hovering until it is time to land',
    },
    move: {
      type: 'string',
      multiple: true,
      value: 'what',
      words: moveNames,
      about: `what may move, said again for more: ${moveNames.join(', ')}; without it filters and notches`,
    },
    recording: {
      type: 'string',
      value: 'file',
      about:
        'a flight’s recording: its noise before the board’s filters, and how its motors answered, are weighed beside the model',
    },
    write: {
      type: 'string',
      value: 'proposal',
      words: proposalIds,
      about: `writes a proposal into the script: ${proposalIds.join(', ')}`,
    },
    all: { type: 'boolean', about: 'also every figure that moves' },
    name: nameOption,
    json: jsonOption('find', 'one JSON object'),
  },
  examples: [
    ['propsoff find my.craft', 'what to set'],
    ['propsoff find my.craft --pack cruise', 'whether one pack needs filtering, and how much'],
    ['propsoff find my.craft --tones 20 --phase-margin 45', 'quieter motors, wider margins'],
    ['propsoff find my.craft --recording flight.csv', 'weighed by the noise that was measured'],
    ['propsoff find my.craft --write middle', 'takes the proposal in the middle'],
  ],
  exit: { fine: 'something is proposed', findings: 'what is asked for can’t be had' },
  run: async ({ values, positionals }, terminal) => {
    const [path] = positionals;
    if (path === undefined || positionals.length > 1) throw new UsageError('find takes one script');
    const holds = holdsOf(values);
    const moves = (values.move ?? []).map(moveOf);
    const id = values.write;
    if (id !== undefined && !isProposal(id))
      throw new UsageError(`--write takes ${proposalIds.join(', ')}, not "${id}"`);
    const { craft, findings, workspace, file } = await oneScript(
      { command: 'find', path, name: values.name },
      undefined,
      terminal,
    );
    const packs = values.pack ?? [];
    const unknown = packs.find((pack) => !craft.packs().includes(pack));
    if (unknown !== undefined)
      throw new UsageError(
        craft.packs().length === 0
          ? `the script names no pack, and "${unknown}" is asked for`
          : `the script has no pack "${unknown}"; it has ${craft.packs().join(', ')}`,
      );
    const wish = wishFor(craft, { packs, holds, ...(moves.length === 0 ? {} : { moves }) });
    const measured =
      values.recording === undefined
        ? noneGiven(lastRecorded(craft))
        : await measuredIn(values.recording, path, craft, packs[0] ?? null, terminal);
    const work = find(craft, wish, findings, (one) => workspace.check(one), measured);
    const answer = new Progress(terminal).through(work);
    const { proposals, ways: _, ...told } = answer;
    if (id !== undefined) return writeOne(answer, id, file, terminal);
    await terminal.out(
      values.json === true
        ? jsonText({ version: 1, ...told, proposals: proposals.map(({ edits: _, text: __, ...one }) => one) })
        : foundText(answer, terminal, { isWhole: values.all === true }),
    );
    return proposals.length === 0 ? exitCodes.findings : exitCodes.fine;
  },
});

/** `flight`: the last that names a recording in the script. */
function noneGiven(flight: RecordedBy | null): FlightWeighed {
  const advice =
    flight === null
      ? 'Log the gyro before the board’s filters, at 500 rows a second or more, and name the file: --recording flight.csv.'
      : `Flight ${flight.flight} names one: --recording ${shownPath(URI.parse(flight.uri).fsPath)} weighs by it.`;
  return { noise: { told: null, reason: 'No recording was given.', advice }, loops: null };
}

/** What reads recordings is loaded with the first of them. */
async function measuredIn(
  ...asked: Parameters<typeof import('../files/recording-weighed').recordingWeighed>
): Promise<FlightWeighed> {
  const { recordingWeighed } = await import('../files/recording-weighed');
  return recordingWeighed(...asked);
}

async function writeOne(
  answer: FoundValues,
  id: ProposalId,
  file: Parameters<typeof written>[0] & { readonly path: string },
  terminal: Terminal,
): Promise<number> {
  const proposal = answer.proposals.find((one) => one.id === id);
  if (proposal === undefined) {
    for (const reason of [answer.answer, ...answer.inTheWay]) terminal.message(reason);
    if (answer.proposals.length > 0)
      terminal.message(`There is no other than ${answer.proposals.map((one) => one.id).join(', ')}.`);
    return exitCodes.findings;
  }
  if (file.path === '-') {
    await terminal.out(proposal.text);
    return exitCodes.fine;
  }
  const why = await written(file, proposal.text);
  if (why !== null) {
    terminal.message(`${file.path} ${why}`);
    return exitCodes.couldNotRun;
  }
  for (const { path, packs, before, after } of proposal.settings)
    terminal.message(
      `${file.path}: ${path}${packs.length === 0 ? '' : ` @ ${packs.join(', ')}`}: ${before ?? 'not set'} → ${after}`,
    );
  terminal.message(answer.caution);
  return exitCodes.fine;
}

type HoldOptions = Readonly<Partial<Record<'tones' | 'phase-margin' | 'gain-margin' | 'minutes', string>>>;

function holdsOf(given: HoldOptions): Holds {
  const read = (name: keyof Holds, option: keyof HoldOptions): number | null => {
    const text = given[option];
    if (text === undefined) return usualHolds[name];
    const held = readHold(name, text);
    if (typeof held === 'string') throw new UsageError(`--${option} ${held}`);
    return held;
  };
  return {
    toneLeft: read('toneLeft', 'tones'),
    phaseMargin: read('phaseMargin', 'phase-margin'),
    gainMargin: read('gainMargin', 'gain-margin'),
    minutes: read('minutes', 'minutes'),
  };
}

function moveOf(word: string): MoveName {
  const found = moveNames.find((name) => name === word);
  if (found === undefined) throw new UsageError(`--move takes ${moveNames.join(', ')}, not "${word}"`);
  return found;
}

function isProposal(word: string): word is ProposalId {
  return word in proposalTitles;
}
