import { TextLines } from '../../board/layer/text-lines';
import { settingText } from '../../board/listing/setting-text';
import type { BesideChange } from '../../board/proving/beside';
import type { CaptureComparison } from '../../board/proving/compare';
import type { Proof, ProofRow, Verdict } from '../../board/proving/prove';
import { type LeftOut, leftOutName } from '../../board/writing/left-out';
import { code, escaped } from '../markdown';
import { counted } from './hand-over';

/** What a capture shows, in words for a person. */
export interface DescribedProof {
  /** What was not compared, a table of all that is not equal, and the counts; Markdown. */
  readonly markdown: string;
  /** One line each for the places in the capture; 0-based. */
  readonly problems: readonly { readonly line: number; readonly message: string }[];
  readonly isWhole: boolean;
  readonly summary: string;
  /** A question: whether the board lists only what differs from its defaults; null where nothing speaks for it. */
  readonly question: string | null;
}

const verdictWords: Readonly<Record<Verdict, string>> = {
  different: 'different',
  beside: 'other words beside it',
  missing: 'missing',
  twice: 'there again',
  default: 'left at its default',
  extra: 'not set by the script',
  equal: 'equal',
};

/** A sentence for one that a capture can't show. */
export function notComparedText(left: LeftOut): string {
  return `${leftOutName(left)}: ${left.reason ?? 'nobody has said which setting of the board it is'}`;
}

/** What a line says otherwise beside its value. */
export function besideText({ was, is }: BesideChange): string {
  return `says ${is} beside the same value, and said ${was} before`;
}

/** What is to be asked where about half is missing. */
export function omitsQuestion({ counts }: Proof): string {
  return `${counts.missing} settings are missing, which is about half: does this board list only what differs from its defaults? If not, the capture is a part of a listing.`;
}

/** What is said where nothing of the craft stands in a capture that holds settings; null otherwise. */
export function otherBoardText({ counts }: Proof): string | null {
  const { equal, different, beside, missing, extra } = counts;
  if (equal + different + beside > 0 || missing === 0 || extra === 0) return null;
  return `None of the ${counted(missing, 'setting')} of the script stands in the capture, which holds ${extra} others: it seems to be of another board. Capture this one’s, or name the profile of the board that it is.`;
}

/** The counts in a sentence, after what it comes to. */
export function proofSummary({ counts, notCompared, excepted, isWhole }: Proof): string {
  const result = isWhole
    ? 'The board holds what the script says.'
    : 'The board does not hold just what the script says, or can’t be held against all of it.';
  const all = [
    ...(notCompared.length === 0 ? [] : [`${notCompared.length} not compared`]),
    `${counted(counts.equal, 'setting')} equal`,
    `${counts.different} different`,
    ...(counts.beside === 0 ? [] : [`${counts.beside} with other words beside the value`]),
    `${counts.missing} missing`,
    `${counts.twice} there twice`,
    ...(counts.default === 0 ? [] : [`${counts.default} left at the default`]),
    `${counts.extra} not set by the script`,
    ...(excepted.length === 0 ? [] : [`${excepted.length} knowingly left: ${excepted.join(', ')}`]),
  ];
  return `${result} ${all.join(', ')}.`;
}

/** Said where an echo can't be told from a listing. */
export const likeEcho =
  'An echo of what was pasted would look the same: hold only what the board listed by itself against the script.';

/** Describes a proof, what was not compared first. `about`: what was compared, in a few words. */
export function describedProof(
  { proof, listing, isLikeEcho }: Extract<CaptureComparison, { kind: 'proof' }>,
  about: string,
): DescribedProof {
  const lines = new TextLines(listing.text);
  const summary = proofSummary(proof);
  const question = proof.seemsToOmit ? omitsQuestion(proof) : null;
  const unequal = proof.rows.filter(({ verdict }) => verdict !== 'equal');
  const table = [
    '| Setting of the board | Parameter | The script says | The board holds | Verdict | Line |',
    '| --- | --- | --- | --- | --- | --- |',
    ...unequal.map((row) => tableRow(row, lines)),
  ];
  const parts = [
    `# ${escaped(about)}`,
    notComparedPart(proof),
    `**${summary.slice(0, summary.indexOf('.') + 1)}**${escaped(summary.slice(summary.indexOf('.') + 1))}`,
    proof.cutOff === null ? '' : `**The capture was cut off:** ${proof.cutOff}.`,
    unreadPart(proof),
    question ?? '',
    otherBoardText(proof) ?? '',
    isLikeEcho ? likeEcho : '',
    unequal.length === 0 ? '' : table.join('\n'),
    'Propellers off while a pack is connected. A proof shows what the board holds, not that the craft is fit to fly.',
  ];
  return {
    markdown: parts.filter((part) => part !== '').join('\n\n'),
    problems: problemsOf(proof, lines),
    isWhole: proof.isWhole,
    summary,
    question,
  };
}

function notComparedPart({ notCompared }: Proof): string {
  if (notCompared.length === 0) return '';
  return ['**Not compared:**', ...notCompared.map((one) => `- ${escaped(notComparedText(one))}`)].join('\n');
}

function unreadPart({ left }: Proof): string {
  if (left.length === 0) return '';
  return `Lines that could not be read: ${left.map(({ number }) => number + 1).join(', ')}.`;
}

function tableRow(row: ProofRow, lines: TextLines): string {
  const { path, wanted, held, verdict, at, beside } = row;
  const cells = [
    escaped(settingText(row)),
    path === null ? '' : cell(path),
    wanted === null ? '' : cell(beside === null ? wanted : `${wanted} (${beside.was})`),
    held === null ? '' : cell(beside === null ? held : `${held} (${beside.is})`),
    verdictWords[verdict],
    at === null ? '' : String(lines.placeAt(at.start).line + 1),
  ];
  return `| ${cells.join(' | ')} |`;
}

/** As code; a bar would end the cell, even there. */
function cell(text: string): string {
  return code(text).replaceAll('|', '\\|');
}

function problemsOf({ rows, left, cutOff }: Proof, lines: TextLines): DescribedProof['problems'] {
  const missing = rows.filter(({ verdict }) => verdict === 'missing').map(settingText);
  return [
    ...(cutOff === null ? [] : [{ line: 0, message: `The capture was cut off: ${cutOff}.` }]),
    ...(missing.length === 0 ? [] : [{ line: 0, message: `Missing here: ${missing.join(', ')}.` }]),
    ...rows.flatMap((row) => problemOf(row, lines)),
    ...left.map(({ number, reason }) => ({ line: number, message: reason })),
  ];
}

function problemOf({ verdict, wanted, at, beside }: ProofRow, lines: TextLines): DescribedProof['problems'] {
  if (at === null) return [];
  const line = lines.placeAt(at.start).line;
  switch (verdict) {
    case 'different':
      return [{ line, message: `The script says ${wanted ?? ''}.` }];
    case 'beside':
      return beside === null ? [] : [{ line, message: `This line ${besideText(beside)}.` }];
    case 'extra':
      return [{ line, message: 'The script does not set this.' }];
    case 'twice':
      return [{ line, message: 'This setting stands there again.' }];
    default:
      return [];
  }
}
