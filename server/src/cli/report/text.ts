import type { Catalog } from '../../catalog/catalog';
import { replacementText } from '../../catalog/replacements';
import { levels } from '../../checks/report/order';
import { levelColours, painted, type Terminal } from '../terminal';
import { type CheckedFile, countsOf, mostReported, notSeen } from './checked-file';
import { visible } from './visible';

/** The report for people: each finding with its line and a mark under it, then the counts where they are wanted. */
export async function textReport(
  checked: readonly CheckedFile[],
  { replacements }: Catalog,
  terminal: Terminal,
  { hasCounts = true }: { readonly hasCounts?: boolean } = {},
): Promise<string> {
  const broken = await lineBreaker(terminal.width);
  const ofFiles = await Promise.all(
    checked.map(async (file) => [
      ...(await findingTexts(file, terminal)),
      ...remarks(file, terminal).map(broken),
    ]),
  );
  const replaced = replacements.map((one) => broken(visible(replacementText(one))));
  const counts = hasCounts ? [broken(summary(checked, terminal))] : [];
  return [...ofFiles.flat(), ...replaced, ...counts].map((text) => `${text}\n`).join('');
}

/**
 * What breaks lines knows how wide emoji are, and takes 20 ms to load: a clean check that is written to a file or to a
 * program, as most are, does without.
 */
async function lineBreaker(width: number | null): Promise<(text: string) => string> {
  if (width === null) return (text) => text;
  const { wrapped } = await import('./wrapped');
  return (text) => wrapped(text, width);
}

async function findingTexts({ path, findings }: CheckedFile, terminal: Terminal): Promise<readonly string[]> {
  if (findings.length === 0) return [];
  const { findingText } = await import('./finding-text');
  return findings.map((finding) => findingText(path, finding, terminal));
}

/** What is to be known beside the findings. */
function remarks(file: CheckedFile, terminal: Terminal): readonly string[] {
  const { path, omitted } = file;
  const head = painted(visible(path), 'bold', terminal);
  const more = `${head} has ${omitted} more findings; the worst ${mostReported} are shown, and all are counted.`;
  return [...(omitted === 0 ? [] : [more]), ...notSeen(file).map((text) => `${head} ${visible(text)}`)];
}

function summary(checked: readonly CheckedFile[], terminal: Terminal): string {
  const counts = countsOf(checked);
  const count = checked.filter(({ isAddition }) => !isAddition).length;
  const scripts = count === 1 ? '1 script' : `${count} scripts`;
  const parts = levels.map((level) => painted(`${counts[level]} ${level}`, levelColours[level], terminal));
  return `${scripts} checked: ${parts.join(', ')}. Checks see the script, not the craft: propellers off at the bench.`;
}
