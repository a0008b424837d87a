import type { Acceptance, LineFix, Problem, Span } from './ast';
import { problem, replacement } from './problem';

const checkId = '[a-z]+(?:-[a-z]+)*/[a-z]+(?:-[a-z]+)*';
const whole = new RegExp(`^#\\s*accept\\s+(${checkId})\\s*:\\s*(\\S.*)$`);
/** The word in any letters, a colon that doesn't belong there, a check, and what parts it from the reason. */
const meant = new RegExp(
  `^(#\\s*)(accept)(\\s*:\\s*|\\s+)(${checkId})(?![a-z/-])(\\s*:\\s*|\\s+[-\\u2013\\u2014]\\s+|\\s+|$)([^]*)$`,
  'i',
);
const bare = /^#\s*accept\s*(?::.*)?$/i;
/** Something like a check: a group and a stroke. */
const looseId = /^#\s*accept(?:\s*:)?\s+([a-z-]+\/\S*)/i;
/** What people write where a reason is still to come. */
const noReason =
  /^(?:todo|tbd|fixme|xxx|reason|a reason|the reason|why this is fine here|\w|[^\p{L}\p{N}]*)$/iu;

const sentenceEnds = '.:!?…';

/** Whether a reason is only what people write where one is still to come, however it is ended. */
export function saysNothing(reason: string): boolean {
  let end = reason.length;
  while (end > 0 && sentenceEnds.includes(reason.charAt(end - 1))) end -= 1;
  return noReason.test(reason.slice(0, end));
}

interface ReadAcceptance {
  readonly acceptance: Acceptance | null;
  readonly problems: readonly Problem[];
}

/**
 * Reads `# accept <check-id>: <reason>`, behind which another comment may stand. One that only begins so is a problem,
 * not an acceptance.
 */
export function readAcceptance(line: string, comment: Span | null): ReadAcceptance {
  if (comment === null) return { acceptance: null, problems: [] };
  const text = withoutNext(line.slice(comment.start, comment.end)).trimEnd();
  const span = { start: comment.start, end: comment.start + text.length };
  const [, check, reason] = whole.exec(text) ?? [];
  if (check !== undefined && reason !== undefined && !saysNothing(reason)) {
    return { acceptance: { check, reason, ...span }, problems: [] };
  }
  const refused = refusal(text, span);
  return { acceptance: null, problems: refused === null ? [] : [refused] };
}

/** What stands before the next comment of a line: a mark between blanks begins one, `#2` doesn't. */
function withoutNext(text: string): string {
  const next = text.indexOf(' # ', 1);
  return next < 0 ? text : text.slice(0, next);
}

/** Why a comment is no acceptance though one was meant; null for ordinary prose, such as "accept the tree". */
function refusal(text: string, span: Span): Problem | null {
  const found = meant.exec(text);
  if (found !== null) return nearly(found, span);
  const [, given] = looseId.exec(text) ?? [];
  if (given !== undefined) {
    const name = given.replace(/:$/, '');
    return problem('line/acceptance-form', span, { lacks: `\`${name}\` is no check's whole id` });
  }
  return bare.test(text) ? problem('line/acceptance-form', span, { lacks: 'it names no check' }) : null;
}

/** A check is named; the reason is missing, or the form is a little off. */
function nearly(found: RegExpExecArray, span: Span): Problem {
  const [, mark = '', word = '', gap = '', given = '', colon = '', reason = ''] = found;
  const check = given.toLowerCase();
  const lacking = (lacks: string, fixes: readonly LineFix[] = []) =>
    problem('line/acceptance-form', span, { lacks }, fixes);
  if (reason === '') return lacking('it gives no reason');
  if (saysNothing(reason)) return lacking(`\`${reason}\` is no reason`);
  const form = `${mark.trim()} accept ${check}: ${reason}`;
  const fixes = [replacement('Write the acceptance as it is read', span, form)];
  if (word !== 'accept' || given !== check) return lacking('it is read in small letters only', fixes);
  if (gap.includes(':')) return lacking('the colon belongs behind the check, not behind `accept`', fixes);
  if (!colon.includes(':')) return lacking('a colon belongs between the check and the reason', fixes);
  return lacking('it is not in the form that is read', fixes);
}
