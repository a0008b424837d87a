import type { FormattedLine } from './formatted-line';

type CodeForm = Extract<FormattedLine, { kind: 'code' }>;

/** Blanks between the longest line of a block and its comment. */
const commentGap = 2;
/** What is wider than this does not push the rest of its block to the right. */
const widestAligned = 60;

/** The texts of lines, with equals signs and trailing comments of each block in line. */
export function alignedTexts(forms: readonly FormattedLine[]): readonly string[] {
  return blocksOf(forms).flatMap(alignedBlock);
}

/** Blank lines and section headers end a block; comments of their own and odd lines don't. */
function blocksOf(forms: readonly FormattedLine[]): readonly (readonly FormattedLine[])[] {
  const blocks: FormattedLine[][] = [];
  let open: FormattedLine[] | null = null;
  for (const form of forms) {
    const isAlone = form.kind === 'blank' || form.opens;
    if (open === null || isAlone) {
      const block = [form];
      blocks.push(block);
      open = isAlone ? null : block;
    } else open.push(form);
  }
  return blocks;
}

function alignedBlock(block: readonly FormattedLine[]): readonly string[] {
  const lines = block.filter((form) => form.kind === 'code');
  const settings = lines.filter(({ right }) => right !== null);
  const equalsColumn = widest(settings.map(({ left }) => width(left)));
  const code = (form: CodeForm) =>
    form.right === null ? form.left : `${padded(form.left, equalsColumn)} = ${form.right}`;
  const widths = lines.flatMap((form) => (form.comment === null ? [] : [width(code(form))]));
  const commentColumn = widest(widths) + commentGap;
  return block.map((form) => {
    if (form.kind === 'blank') return '';
    if (form.kind === 'whole') return form.text;
    if (form.comment === null) return code(form);
    return padded(`${code(form)}${' '.repeat(commentGap)}`, commentColumn) + form.comment;
  });
}

/** The widest that others are put in line with. */
function widest(widths: readonly number[]): number {
  return widths.reduce((most, one) => (one <= widestAligned ? Math.max(most, one) : most), 0);
}

function padded(text: string, column: number): string {
  return text + ' '.repeat(Math.max(0, column - width(text)));
}

/** In characters as a person counts them, near enough; a mark at the start of a file has no width. */
function width(text: string): number {
  return [...text].length - (text.startsWith('\ufeff') ? 1 : 0);
}
