import type { Acceptance, Problem, Span } from './ast';
import { problem } from './problem';

const marked = /^#\s*accept(?:\s+|$)/;
const whole = /^#\s*accept\s+([a-z]+(?:-[a-z]+)*\/[a-z]+(?:-[a-z]+)*)\s*:\s*(\S.*)$/;
const looseId = /^#\s*accept\s+([a-z-]+\/[a-z-]*)/;

/** Reads `# accept <check-id>: <reason>`. A comment that only begins so is a problem, not an acceptance. */
export function readAcceptance(
  line: string,
  comment: Span | null,
): { readonly acceptance: Acceptance | null; readonly problems: readonly Problem[] } {
  if (comment === null) return { acceptance: null, problems: [] };
  const text = line.slice(comment.start, comment.end).trimEnd();
  if (!marked.test(text)) return { acceptance: null, problems: [] };
  const span = { start: comment.start, end: comment.start + text.length };
  const found = whole.exec(text);
  if (found !== null) {
    return { acceptance: { check: found[1] ?? '', reason: found[2] ?? '', ...span }, problems: [] };
  }
  // "# accept the tree" is ordinary prose; only what names a check, or nothing at all, was meant as one.
  const isMeant = looseId.test(text) || /^#\s*accept\s*:?\s*$/.test(text);
  return { acceptance: null, problems: isMeant ? [problem('line/acceptance-form', span)] : [] };
}
