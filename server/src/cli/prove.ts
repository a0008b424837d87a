import { entriesOf } from '../board/entries';
import { type Proof, type ProofRow, prove } from '../board/prove';
import { counted } from '../features/hand-over';
import { chosenProfile } from './board-choice';
import { readCapture } from './captures';
import { oneScript } from './one-script';
import { readOptions } from './options';
import { exitCodes, UsageError } from './outcome';
import { type Terminal, visible } from './terminal';

/** `propsoff prove`: whether a board holds what a script says. */
export async function runProve(args: readonly string[], terminal: Terminal): Promise<number> {
  const { values, positionals } = readOptions(args, {
    board: { type: 'string' },
    pack: { type: 'string' },
    json: { type: 'boolean' },
    'ignore-extra': { type: 'boolean' },
  });
  const [path, capture] = positionals;
  if (path === undefined || capture === undefined || positionals.length > 2)
    throw new UsageError('prove takes a script and a capture');
  if (path === '-' && capture === '-') throw new UsageError('only one of the two can be standard input');
  const { view, around } = await oneScript('prove', path, values.pack, terminal);
  const { catalog } = around.additions;
  const profile = chosenProfile(catalog, values.board, view.board?.name ?? null);
  const { entries } = entriesOf(profile, view);
  const proof = prove(profile, catalog, entries, await readCapture(capture, terminal));
  terminal.out(values.json === true ? json(proof, profile.board.name, view.pack) : report(proof, capture));
  const isFine = values['ignore-extra'] === true ? isEqualButExtra(proof) : proof.isEqual;
  return isFine ? exitCodes.fine : exitCodes.findings;
}

function isEqualButExtra({ counts, truncated, unknown }: Proof): boolean {
  const { different, missing, repeated } = counts;
  return different + missing + repeated === 0 && truncated === null && unknown.length === 0;
}

function json(proof: Proof, board: string, pack: string | null): string {
  return `${JSON.stringify({ version: 1, board, pack, ...proof }, null, 2)}\n`;
}

const said: Readonly<Record<ProofRow['verdict'], (row: ProofRow) => string>> = {
  equal: () => 'equal',
  different: ({ wanted, held }) => `different: the script says ${wanted}, the board holds ${held}`,
  missing: ({ wanted }) => `missing: the script says ${wanted}, the board does not show it`,
  extra: ({ held }) => `extra: the board holds ${held}, the script does not set it`,
  repeated: ({ held }) => `repeated: it stands there again, as ${held}`,
};

function report(proof: Proof, capture: string): string {
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
    `${counted(counts.equal, 'setting')} equal, ${counts.different} different, ${counts.missing} missing, ${counts.extra} extra, ${counts.repeated} repeated.`,
    proof.isEqual
      ? 'The board holds what the script says.'
      : 'The board does not hold just what the script says.',
  ];
  return `${end.map(visible).join('\n')}\n`;
}
