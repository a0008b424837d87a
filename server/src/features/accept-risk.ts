import type { Finding } from '../checks/report/finding';
import type { PlacedLine } from '../craft/setting';
import { type Range, rangeInLine } from './range';
import type { FileEdits } from './text-edits';

/** Stands where the pilot's reason belongs. */
const reasonPlaceholder = 'why this is fine here';

/** What writes that a risk is accepted. */
interface WrittenAcceptance {
  readonly title: string;
  readonly edits: readonly FileEdits[];
  /** Words in the new text that the pilot has to replace with their own. */
  readonly placeholder: string;
}

/**
 * "Accept this risk": a comment on the line that raises it. Null for what is no risk, and where the line
 * accepts something already or tries to: a line has room for one acceptance.
 */
export function acceptance(finding: Finding): WrittenAcceptance | null {
  if (finding.level !== 'risk') return null;
  const { script, line } = acceptedOn(finding);
  const { statement } = line;
  if (statement.acceptance !== null || statement.problems.some(({ id }) => id === 'line/acceptance-form'))
    return null;
  const edit = acceptanceEdit(script.lineNumber(line), line, finding.check.id);
  return {
    title: `Accept this risk: ${finding.check.id}`,
    edits: [{ uri: script.uri, edits: [edit] }],
    placeholder: reasonPlaceholder,
  };
}

/**
 * The line whose comment counts. What an included script sets is reported at the include, with the line itself
 * as the first related place.
 */
function acceptedOn({ place, related }: Finding): PlacedLine {
  const [first] = related;
  const isElsewhere = place.line.statement.kind === 'include' && first?.place.script !== place.script;
  return isElsewhere && first !== undefined ? first.place : place;
}

/** A line with a comment keeps its words: they become part of the reason. */
function acceptanceEdit(
  number: number,
  { text, statement }: PlacedLine['line'],
  check: string,
): { readonly range: Range; readonly newText: string } {
  const words = `accept ${check}: ${reasonPlaceholder}`;
  const { comment } = statement;
  if (comment === null) {
    const start = text.trimEnd().length;
    const mark = start === 0 ? '# ' : ' # ';
    return { range: rangeInLine(number, { start, end: text.length }), newText: mark + words };
  }
  const [mark = '#'] = /^#+[ \t]*/.exec(text.slice(comment.start)) ?? [];
  const start = comment.start + mark.length;
  const isBare = start === comment.end;
  return {
    range: rangeInLine(number, { start: comment.start, end: start }),
    newText: `# ${words}${isBare ? '' : '; '}`,
  };
}
