import { writeFileSync } from 'node:fs';
import { differences, type Kind, pathOf, readReviewed, standing, writtenReviewed } from './reviewed';

/**
 * Shows what nobody has reviewed and what stands in a list for nothing:
 *
 *     npx tsx test/unit/originality/review.ts
 *
 * With a reason, once every line was asked its question, it goes into the lists under that reason, and what
 * stands for nothing goes out: `… review.ts --add "Spans of motors sold for craft of 10 g to 25 kg"`. With
 * `--only boards` in front it does so for one list.
 */
function review(words: readonly string[]): void {
  const only = after(words, '--only');
  const why = after(words, '--add');
  const kinds = Object.keys(standing).filter((kind): kind is Kind => kind in standing);
  for (const kind of kinds.filter((one) => only === undefined || one === only)) {
    if (why !== undefined) add(kind, why);
    const { unreviewed, stale } = differences(kind);
    const lines = [...unreviewed.map((text) => `+ ${text}`), ...stale.map((text) => `- ${text}`)];
    if (lines.length > 0) process.stdout.write(`${kind}\n${lines.join('\n')}\n\n`);
  }
}

function add(kind: Kind, why: string): void {
  const { unreviewed, stale } = differences(kind);
  const gone = new Set(stale);
  const kept = readReviewed(kind).map((group) => ({
    ...group,
    lines: group.lines.filter((text) => !gone.has(text)),
  }));
  const known = kept.some((group) => group.why === why);
  const groups = known
    ? kept.map((group) => (group.why === why ? { why, lines: [...group.lines, ...unreviewed] } : group))
    : [...kept, { why, lines: unreviewed }];
  writeFileSync(pathOf(kind), writtenReviewed(groups));
}

function after(words: readonly string[], option: string): string | undefined {
  const at = words.indexOf(option);
  return at < 0 ? undefined : words[at + 1];
}

review(process.argv.slice(2));
