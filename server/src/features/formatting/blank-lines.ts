import { byteOrderMark, type FormattedLine } from './formatted-line';

/** Which lines, by their index, go and which get a blank line in front. */
export interface BlankLinePlan {
  readonly removed: ReadonlySet<number>;
  readonly spacedBefore: ReadonlySet<number>;
}

/** Whether the lines reach the start and the end of their document. */
export interface Reach {
  readonly start: boolean;
  readonly end: boolean;
}

/**
 * At most one blank line between lines, none at the start or the end, and one before a section's header and
 * the comments that stand right on top of it. A document of nothing but blank lines stays as it is.
 */
export function planBlankLines(forms: readonly FormattedLine[], reach: Reach): BlankLinePlan {
  const removed = new Set<number>();
  const spacedBefore = new Set<number>();
  const tops = sectionTops(forms);
  let last = -1;
  for (const [index, form] of forms.entries()) {
    if (form.kind === 'blank') continue;
    const blanks = index - last - 1;
    const isFirst = last < 0;
    if (!isFirst && tops.has(index) && blanks === 0) spacedBefore.add(index);
    // Of several blank lines the first one stays; so does one in front of a mark that would begin the file without it.
    const kept = isFirst && reach.start && !beginsWithMark(form) ? 0 : 1;
    for (let blank = last + 1 + kept; blank < index; blank += 1) removed.add(blank);
    last = index;
  }
  if (reach.end && last >= 0) for (let blank = last + 1; blank < forms.length; blank += 1) removed.add(blank);
  return { removed, spacedBefore };
}

function beginsWithMark(form: FormattedLine): boolean {
  return form.kind === 'whole' && form.text.startsWith(byteOrderMark);
}

/** The first line of each section: its header, or the first of the comments right on top of it. */
function sectionTops(forms: readonly FormattedLine[]): ReadonlySet<number> {
  const tops = new Set<number>();
  let comments = 0;
  for (const [index, form] of forms.entries()) {
    if (form.kind !== 'blank' && form.opens) tops.add(index - comments);
    comments = form.kind === 'whole' && form.isComment ? comments + 1 : 0;
  }
  return tops;
}
