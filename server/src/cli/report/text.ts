import type { Catalog } from '../../catalog/catalog';
import { replacementText } from '../../catalog/replacements';
import { levels } from '../../checks/report/order';
import { notLookedAt } from '../../craft/read-as';
import { levelColours, painted, type Terminal } from '../terminal';
import { type CheckedFile, countsOf, mostReported } from './checked-file';
import { visible } from './visible';

/** The report for people: each finding with its line and a mark under it, then the counts. */
export async function textReport(
  checked: readonly CheckedFile[],
  { replacements }: Catalog,
  terminal: Terminal,
): Promise<string> {
  const broken = await lineBreaker(terminal.width);
  const ofFiles = await Promise.all(
    checked.map(async (file) => [
      ...(await findingTexts(file, terminal)),
      ...remarks(file, terminal).map(broken),
    ]),
  );
  const replaced = replacements.map((one) => broken(visible(replacementText(one))));
  return `${[...ofFiles.flat(), ...replaced, broken(summary(checked, terminal))].join('\n')}\n`;
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

/** The finding that says the same. */
const saysPart = 'safe/read-as-part';

/** What is to be known beside the findings: what was no whole craft is never passed over as if all had been looked at. */
function remarks({ path, readAs, findings, omitted }: CheckedFile, terminal: Terminal): readonly string[] {
  const head = painted(visible(path), 'bold', terminal);
  const more = `${head} has ${omitted} more findings; the worst ${mostReported} are shown, and all are counted.`;
  const unchecked =
    readAs === null || findings.some(({ id }) => id === saysPart) ? null : notLookedAt(readAs);
  return [...(omitted === 0 ? [] : [more]), ...(unchecked === null ? [] : [`${head} ${unchecked}`])];
}

function summary(checked: readonly CheckedFile[], terminal: Terminal): string {
  const counts = countsOf(checked);
  const count = checked.filter(({ isAddition }) => !isAddition).length;
  const scripts = count === 1 ? '1 script' : `${count} scripts`;
  const parts = levels.map((level) => painted(`${counts[level]} ${level}`, levelColours[level], terminal));
  return `${scripts} checked: ${parts.join(', ')}. Checks see the script, not the craft: propellers off at the bench.`;
}
