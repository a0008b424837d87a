import { strict as assert } from 'node:assert';
import { rendered } from './rendered-listing';

/** A listing, and what it says as `rendered` says it; both may be indented as a block. */
interface Case {
  readonly what: string;
  readonly text: string;
  readonly says: string;
}

/** A test for each listing: it is read as it says. */
export function holdReadings(cases: readonly Case[]): void {
  for (const { what, text, says } of cases)
    it(what, () => assert.equal(rendered(trimmed(text)), trimmed(says)));
}

/** A text block without its first line end and its indent. */
export function trimmed(block: string): string {
  const lines = block.replace(/^\n/, '').trimEnd().split('\n');
  const indents = lines.filter((line) => line.trim() !== '').map((line) => /^ */.exec(line)?.[0].length ?? 0);
  const indent = Math.min(...indents);
  return lines.map((line) => line.slice(indent)).join('\n');
}
