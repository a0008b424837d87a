import type { Proof, ProofRow } from '../../board/prove';
import { code, escaped } from '../markdown';
import { counted } from './hand-over';

/** What a capture shows, in words for a person. */
export interface ToldProof {
  /** A table of all that is not equal, and the counts; Markdown. */
  readonly markdown: string;
  /** One line each for the places in the capture; 0-based. */
  readonly problems: readonly { readonly line: number; readonly message: string }[];
  readonly isEqual: boolean;
  readonly summary: string;
}

const verdicts: Readonly<Record<ProofRow['verdict'], string>> = {
  equal: 'equal',
  different: 'different',
  missing: 'missing',
  extra: 'not set by the script',
  repeated: 'there again',
};

/** Tells a proof. `about`: what was compared, in a few words. */
export function toldProof(proof: Proof, about: string): ToldProof {
  const { rows, counts, truncated, unknown, isEqual } = proof;
  const summary = `${counted(counts.equal, 'setting')} equal, ${counts.different} different, ${counts.missing} missing, ${counts.extra} not set by the script, ${counts.repeated} there twice.`;
  const result = isEqual
    ? 'The board holds what the script says.'
    : 'The board does not hold just what the script says.';
  const unequal = rows.filter(({ verdict }) => verdict !== 'equal');
  const table =
    unequal.length === 0
      ? []
      : [
          '| Setting of the board | Parameter | The script says | The board holds | Verdict | Line |\n| --- | --- | --- | --- | --- | --- |',
          ...unequal.map(tableRow),
        ];
  return {
    markdown: [
      `# ${escaped(about)}`,
      `**${result}** ${summary}`,
      ...(truncated === null ? [] : [`**The capture was cut off:** ${truncated}.`]),
      ...(unknown.length === 0
        ? []
        : [`Lines that are no setting of this board: ${unknown.map((line) => line + 1).join(', ')}.`]),
      table.join('\n'),
      'Propellers off while a pack is connected. A proof shows what the board holds, not that the craft is fit to fly.',
    ]
      .filter((part) => part !== '')
      .join('\n\n'),
    problems: problemsOf(proof),
    isEqual,
    summary: `${result} ${summary}`,
  };
}

function tableRow({ group, name, path, wanted, held, verdict, line }: ProofRow): string {
  const cells = [
    escaped(`${group} ${name}`.trim()),
    path === null ? '' : cell(path),
    wanted === null ? '' : cell(wanted),
    held === null ? '' : cell(held),
    verdicts[verdict],
    line === null ? '' : String(line + 1),
  ];
  return `| ${cells.join(' | ')} |`;
}

/** As code; a bar would end the cell, even there. */
function cell(text: string): string {
  return code(text).replaceAll('|', '\\|');
}

function problemsOf({ rows, unknown, truncated }: Proof): ToldProof['problems'] {
  const told = rows.flatMap((row) => {
    if (row.line === null || row.verdict === 'equal') return [];
    return [{ line: row.line, message: messages[row.verdict](row) }];
  });
  const missing = rows
    .filter(({ verdict }) => verdict === 'missing')
    .map(({ group, name }) => `${group} ${name}`.trim());
  return [
    ...(truncated === null ? [] : [{ line: 0, message: `The capture was cut off: ${truncated}.` }]),
    ...(missing.length === 0 ? [] : [{ line: 0, message: `Missing here: ${missing.join(', ')}.` }]),
    ...told,
    ...unknown.map((line) => ({ line, message: 'This is no line that the board’s profile knows.' })),
  ];
}

const messages: Readonly<Record<Exclude<ProofRow['verdict'], 'equal'>, (row: ProofRow) => string>> = {
  different: ({ wanted }) => `The script says ${wanted}.`,
  missing: ({ name }) => `${name} is missing.`,
  extra: () => 'The script does not set this.',
  repeated: () => 'This setting stands there again.',
};
