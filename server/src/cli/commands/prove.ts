import { TextLines } from '../../board/layer/text-lines';
import { settingText } from '../../board/listing/setting-text';
import { compareWithCapture } from '../../board/proving/compare';
import type { Proof, ProofRow, Verdict } from '../../board/proving/prove';
import { entriesOf } from '../../board/writing/entries';
import {
  besideText,
  likeEcho,
  notComparedText,
  omitsQuestion,
  otherBoardText,
  proofSummary,
} from '../../features/board/proof-text';
import { includedText } from '../../workspace/included-text';
import { boardOption, command, jsonOption, nameOption, packOption } from '../command';
import { needsIncludes, oneScript } from '../files/one-script';
import { readCapture } from '../files/scripts';
import { exitCodes, UsageError } from '../outcome';
import { jsonText, visible } from '../report/visible';
import { chosenProfile } from './board-choice';

/** `propsoff prove`: whether a board holds what a script says. */
export const proveCommand = command({
  name: 'prove',
  summary: 'does the board hold what the script says?',
  usage: ['<script | -> <capture | -> [options]'],
  about: [
    'Holds what a script says against a text captured from the board: what could not be compared first, then what is different, missing, there twice, or cut off.',
  ],
  options: {
    board: boardOption,
    pack: {
      ...packOption,
      about: 'the pack whose settings are proved; without it the first one of the script',
    },
    name: nameOption,
    json: jsonOption('prove', 'one JSON object'),
    except: {
      type: 'string',
      multiple: true,
      value: 'path',
      about: 'a setting that is knowingly left; said once for each, and repeated in the report',
    },
    'ignore-extra': {
      type: 'boolean',
      about: 'settings that the script does not make are listed but do not count',
    },
    'omits-defaults': {
      type: 'boolean',
      about: 'the board lists only what differs from its defaults; its profile can say so for good',
    },
  },
  examples: [
    ['propsoff prove my.craft captured.txt', 'each setting that differs, at its line of the capture'],
    ['propsoff prove my.craft captured.txt --ignore-extra', 'the board may hold more'],
  ],
  exit: {
    fine: 'the board holds all that the script says',
    findings: 'something could not be compared, differs, is missing, there twice or extra, or was cut off',
  },
  run: async ({ values, positionals }, terminal) => {
    const [path, capture] = positionals;
    if (path === undefined || capture === undefined || positionals.length > 2)
      throw new UsageError('prove takes a script and a capture');
    if (path === '-' && capture === '-') throw new UsageError('only one of the two can be standard input');
    const wanted = { command: 'prove', path, name: values.name };
    const script = await oneScript(wanted, values.pack, terminal);
    needsIncludes(script);
    const { view, around, workspace } = script;
    const named = values.board ?? view.craft.boardName() ?? undefined;
    const profile = named === undefined ? null : await chosenProfile(around, named, null);
    const entries = entriesOf(profile, view);
    if (profile === null && entries.entries.length === 0) await chosenProfile(around, undefined, null);
    const except = new Set(values.except ?? []);
    const strange = [...except].find((one) => !view.isSet(one));
    if (strange !== undefined) throw new UsageError(`--except ${strange}: the script sets no such thing`);
    const compared = compareWithCapture({
      profile,
      captured: includedText(workspace, view.craft),
      entries,
      capture: await readCapture(capture, terminal),
      except,
      ignoresExtra: values['ignore-extra'] === true,
      omitsDefaults: values['omits-defaults'] === true,
    });
    if (compared.kind === 'refused') throw new UsageError(`${capture}: ${compared.reason}`);
    const { proof } = compared;
    const lines = new TextLines(compared.listing.text);
    await terminal.out(
      values.json === true
        ? json(proof, lines, profile?.name ?? null, view.pack)
        : report(proof, lines, capture, view.pack),
    );
    if (compared.isLikeEcho) terminal.message(likeEcho);
    return proof.isWhole ? exitCodes.fine : exitCodes.findings;
  },
});

function json(proof: Proof, lines: TextLines, board: string | null, pack: string | null): string {
  const { notCompared, excepted, rows, counts, cutOff, left, seemsToOmit, isWhole } = proof;
  return jsonText({
    version: 1,
    board,
    pack,
    isWhole,
    notCompared: notCompared.map(({ path, title, reason }) => ({ path, title, reason })),
    excepted,
    cutOff,
    seemsToOmit,
    unread: left.map(({ number }) => number),
    counts,
    rows: rows.map(({ at, ...row }) => ({ ...row, line: at === null ? null : lines.placeAt(at.start).line })),
  });
}

const said: Readonly<Record<Verdict, (row: ProofRow) => string>> = {
  equal: () => 'equal',
  different: ({ wanted, held }) => `different: the script says ${wanted}, the board holds ${held}`,
  beside: ({ beside }) => (beside === null ? 'equal' : besideText(beside)),
  missing: ({ wanted }) => `missing: the script says ${wanted}, the board does not show it`,
  twice: ({ held }) => `there twice: it stands there again, as ${held}`,
  default: ({ wanted }) => `left at its default, which is ${wanted} as the script says`,
  extra: ({ held }) => `extra: the board holds ${held}, the script does not set it`,
};

const omitsHelp =
  'If it does, add --omits-defaults, or have its profile say it: "omitsDefaults": true in its "text", as learn --omits-defaults writes it.';

function report(proof: Proof, lines: TextLines, capture: string, pack: string | null): string {
  const { notCompared, rows, left, cutOff, seemsToOmit } = proof;
  const otherBoard = otherBoardText(proof);
  const all = [
    ...notCompared.map((one) => `not compared: ${notComparedText(one)}`),
    ...rows.filter(({ verdict }) => verdict !== 'equal').map((row) => rowText(row, lines, capture)),
    ...left.map(({ number, reason }) => `${capture}:${number + 1} could not be read: ${reason}`),
    ...(cutOff === null ? [] : [`${capture} was cut off: ${cutOff}`]),
    ...(otherBoard === null ? [] : [otherBoard]),
    ...(seemsToOmit ? [`${omitsQuestion(proof)} ${omitsHelp}`] : []),
    `${pack === null ? '' : `With pack ${pack}: `}${proofSummary(proof)}`,
  ];
  return `${all.map(visible).join('\n')}\n`;
}

function rowText(row: ProofRow, lines: TextLines, capture: string): string {
  const where = row.at === null ? capture : `${capture}:${lines.placeAt(row.at.start).line + 1}`;
  const of = row.path === null ? '' : ` (${row.path})`;
  return `${where} ${settingText(row)}${of} ${said[row.verdict](row)}`;
}
