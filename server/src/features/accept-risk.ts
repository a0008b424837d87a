import { isAboutAcceptances } from '../checks/report/acceptances';
import type { Finding } from '../checks/report/finding';
import { isOfIncluded } from '../checks/report/place';
import type { PlacedLine } from '../craft/setting';
import { type Range, rangeInLine, type TextEdit } from './range';
import type { FileEdits } from './text-edits';

/** Stands where the pilot's reason belongs. */
export const reasonPlaceholder = 'why this is fine here';

/** What writes that a risk is accepted. */
interface WrittenAcceptance {
  readonly title: string;
  readonly edits: readonly FileEdits[];
}

/**
 * "Accept this risk", or this note: a comment on the line that raises it. Null for what must be fixed, for what is only
 * tidy, and where the line accepts something already or tries to: a line has room for one acceptance.
 */
export function acceptance(finding: Finding): WrittenAcceptance | null {
  if (!isAcceptable(finding)) return null;
  const { script, line } = acceptedOn(finding);
  const { statement } = line;
  if (statement.acceptance !== null || statement.problems.some(({ id }) => id === 'line/acceptance-form'))
    return null;
  const edit = acceptanceEdit(script.lineNumber(line), line, finding.check.id);
  return {
    title: `Accept this ${finding.level}: ${finding.check.id}`,
    edits: [{ uri: script.uri, edits: [edit] }],
  };
}

/** Whether a line may accept a finding that it has not accepted yet. */
export function isAcceptable({ check, level, accepted }: Finding): boolean {
  return accepted === null && (level === 'risk' || level === 'note') && !isAboutAcceptances(check);
}

/**
 * The line whose comment counts. What an included script sets is reported at the include, with the line itself
 * as the first related place.
 */
function acceptedOn(finding: Finding): PlacedLine {
  const { place, related } = finding;
  return isOfIncluded(finding) ? (related[0]?.place ?? place) : place;
}

/** A line with a comment keeps it, as one of its own behind the acceptance. */
function acceptanceEdit(number: number, { text, statement }: PlacedLine['line'], check: string): TextEdit {
  const words = `accept ${check}: ${reasonPlaceholder}`;
  const { comment } = statement;
  if (comment === null) {
    const start = text.trimEnd().length;
    const mark = start === 0 ? '# ' : ' # ';
    return toTypeOver(rangeInLine(number, { start, end: text.length }), mark + words);
  }
  const [mark = '#'] = /^#+[ \t]*/.exec(text.slice(comment.start)) ?? [];
  const start = comment.start + mark.length;
  const isBare = start === comment.end;
  const range = rangeInLine(number, { start: comment.start, end: start });
  return toTypeOver(range, `# ${words}${isBare ? '' : ' # '}`);
}

function toTypeOver(range: Range, newText: string): TextEdit {
  const start = newText.indexOf(reasonPlaceholder);
  const stops = [{ start, end: start + reasonPlaceholder.length, choices: [] }];
  return { range, newText, stops };
}
