import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** One file of formulas with what it computes and the checks against something published that prove it. */
export interface FormulaProof {
  readonly file: string;
  /** Names of the functions that others may call. */
  readonly functions: readonly string[];
  /** Functions that no proof calls. */
  readonly unproved: readonly string[];
  /** Titles of the proofs; each names its source. */
  readonly proofs: readonly string[];
}

/** Every file of `server/src/physics` with its proofs in `test/reference`. */
export function proofsOf(root: string): readonly FormulaProof[] {
  const folder = join(root, 'server/src/physics');
  const tests = readdirSync(join(root, 'test/reference'))
    .filter((name) => name.endsWith('.test.ts'))
    .map((name) => readFileSync(join(root, 'test/reference', name), 'utf8'));
  return readdirSync(folder)
    .filter((name) => name.endsWith('.ts'))
    .sort()
    .flatMap((file) => {
      const text = readFileSync(join(folder, file), 'utf8');
      const functions = [...text.matchAll(/^export function (\w+)/gm)].map((match) => match[1] ?? '');
      const about = tests.filter((test) => test.includes(`physics/${file.replace(/\.ts$/, '')}'`));
      const unproved = functions.filter(
        (name) => !about.some((test) => new RegExp(`\\b${name}\\b`).test(test)),
      );
      return functions.length === 0 ? [] : [{ file, functions, unproved, proofs: about.flatMap(titlesIn) }];
    });
}

/** What stands in parentheses at the end of a title is the source; titles without one repeat their group's. */
function titlesIn(test: string): readonly string[] {
  const titles = [...test.matchAll(/\b(?:describe|it)\(\s*(['`])((?:\\.|(?!\1).)*)\1/gs)].map(
    (match) => match[2]?.replace(/\\(.)/g, '$1') ?? '',
  );
  return titles.filter((title) => /\([^()]*(?:\([^()]*\)[^()]*)*\)$/.test(title) && !title.includes('${'));
}

/** Every formula with what proves it, as a page in Markdown: `test/reference/PROOFS.md`. */
export function proofsPage(root: string): string {
  const rows = proofsOf(root).map(({ file, functions, proofs }) => {
    const named = functions.map((name) => `\`${name}\``).join(', ');
    return [`- \`${file}\`: ${named}`, ...proofs.map((title) => `  - ${title}`)].join('\n');
  });
  return `${beforeProofs}\n\n${rows.join('\n')}\n`;
}

const beforeProofs = `# Proof of the numbers

Every computed quantity has at least one check in this folder against something published, or against a rule that any textbook has; what is from memory or common practice says so. Figures of a craft (\`server/src/figures/\`) put these together and are checked by hand in \`test/unit/figures/\`. \`npm run reference\` makes this page from the formulas of \`server/src/physics/\` and the titles of the tests; a test fails while they differ.`;
