import { entriesOf } from '../../board/entries';
import { type Proof, type ProofRow, prove } from '../../board/prove';
import { counted } from '../../features/board/hand-over';
import { boardOption, command, jsonOption, nameOption, packOption } from '../command';
import { oneScript } from '../files/one-script';
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
    'Holds what a script says against a text captured from the board: equal, different, missing, there twice, or cut off.',
  ],
  options: {
    board: boardOption,
    pack: {
      ...packOption,
      about: 'the pack whose settings are proved; without it the first one of the script',
    },
    name: nameOption,
    json: jsonOption('prove', 'one JSON object'),
    'ignore-extra': {
      type: 'boolean',
      about: 'settings that the script does not make are listed but do not count',
    },
  },
  examples: [
    ['propsoff prove my.craft captured.txt', 'each setting that differs, at its line of the capture'],
    ['propsoff prove my.craft captured.txt --ignore-extra', 'the board may hold more'],
  ],
  exit: { fine: 'all is equal', findings: 'something differs, is missing, or was cut off' },
  run: async ({ values, positionals }, terminal) => {
    const [path, capture] = positionals;
    if (path === undefined || capture === undefined || positionals.length > 2)
      throw new UsageError('prove takes a script and a capture');
    if (path === '-' && capture === '-') throw new UsageError('only one of the two can be standard input');
    const wanted = { command: 'prove', path, name: values.name };
    const { view, around } = await oneScript(wanted, values.pack, terminal);
    const profile = await chosenProfile(around, values.board, view.craft.boardName());
    const { entries } = entriesOf(profile, view);
    const proof = prove(profile, around.additions.catalog, entries, await readCapture(capture, terminal));
    const isJson = values.json === true;
    await terminal.out(
      isJson ? json(proof, profile.board.name, view.pack) : report(proof, capture, view.pack),
    );
    const isFine = values['ignore-extra'] === true ? isEqualButExtra(proof) : proof.isEqual;
    return isFine ? exitCodes.fine : exitCodes.findings;
  },
});

function isEqualButExtra({ counts, truncated, unknown }: Proof): boolean {
  const { different, missing, repeated } = counts;
  return different + missing + repeated === 0 && truncated === null && unknown.length === 0;
}

function json(proof: Proof, board: string, pack: string | null): string {
  return jsonText({ version: 1, board, pack, ...proof });
}

const said: Readonly<Record<ProofRow['verdict'], (row: ProofRow) => string>> = {
  equal: () => 'equal',
  different: ({ wanted, held }) => `different: the script says ${wanted}, the board holds ${held}`,
  missing: ({ wanted }) => `missing: the script says ${wanted}, the board does not show it`,
  extra: ({ held }) => `extra: the board holds ${held}, the script does not set it`,
  repeated: ({ held }) => `repeated: it stands there again, as ${held}`,
};

function report(proof: Proof, capture: string, pack: string | null): string {
  const { rows, counts, truncated, unknown } = proof;
  const lines = rows
    .filter(({ verdict }) => verdict !== 'equal')
    .map((row) => {
      const where = row.line === null ? capture : `${capture}:${row.line + 1}`;
      const of = row.path === null ? '' : ` (${row.path})`;
      return `${where} ${row.group} ${row.name}${of} ${said[row.verdict](row)}`;
    });
  const end = [
    ...lines,
    ...unknown.map((line) => `${capture}:${line + 1} is no line that the profile knows`),
    ...(truncated === null ? [] : [`${capture} was cut off: ${truncated}`]),
    `${pack === null ? '' : `With pack ${pack}: `}${counted(counts.equal, 'setting')} equal, ${counts.different} different, ${counts.missing} missing, ${counts.extra} extra, ${counts.repeated} repeated.`,
    proof.isEqual
      ? 'The board holds what the script says.'
      : 'The board does not hold just what the script says.',
  ];
  return `${end.map(visible).join('\n')}\n`;
}
