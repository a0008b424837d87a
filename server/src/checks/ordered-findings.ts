import type { Finding } from './finding';
import { comesAfter, inScriptOrder } from './order';

/** As many are put together when all are sorted; twice as many at most later on. */
const together = 128;

/** To put one finding in its place costs about as much as to sort so many. */
const costOfOne = 16;

/** Neighbours in the order. An edit touches the few that it concerns. */
interface Chunk {
  readonly findings: Finding[];
}

/** Findings of one script in its order. Some come, some go; those that stay are never in another order than before. */
export class OrderedFindings {
  private chunks: Chunk[] = [];
  /** Where each finding is: of one whose line is gone nothing else would tell. */
  private readonly homes = new Map<Finding, Chunk>();
  private list: readonly Finding[] = [];

  /** All of them, after some went and others came: behind those that stand at the same place. */
  changed(gone: ReadonlySet<Finding>, come: readonly Finding[]): readonly Finding[] {
    if (gone.size === 0 && come.length === 0) return this.list;
    if ((gone.size + come.length) * costOfOne > this.homes.size) {
      const stayed = this.list.filter((finding) => !gone.has(finding));
      this.fill(inScriptOrder([...stayed, ...come]));
    } else {
      for (const finding of gone) this.takeOut(finding);
      for (const finding of inScriptOrder(come)) this.putIn(finding);
      this.list = this.joined();
    }
    return this.list;
  }

  /** All anew, so that no list that was given changes: to copy very many costs little, to look at each would not. */
  private joined(): readonly Finding[] {
    const list: Finding[] = [];
    for (const { findings } of this.chunks) list.push(...findings);
    return list;
  }

  private fill(findings: readonly Finding[]): void {
    this.list = findings;
    this.homes.clear();
    this.chunks = [];
    for (let from = 0; from < findings.length; from += together)
      this.chunks.push(this.chunkOf(findings.slice(from, from + together)));
  }

  private chunkOf(findings: Finding[]): Chunk {
    const chunk = { findings };
    for (const finding of findings) this.homes.set(finding, chunk);
    return chunk;
  }

  private takeOut(finding: Finding): void {
    const chunk = this.homes.get(finding);
    if (chunk === undefined) return;
    this.homes.delete(finding);
    chunk.findings.splice(chunk.findings.indexOf(finding), 1);
    if (chunk.findings.length === 0) this.chunks.splice(this.chunks.indexOf(chunk), 1);
  }

  private putIn(finding: Finding): void {
    const isNext = comesAfter(finding);
    const at = Math.min(
      firstWhere(this.chunks, ({ findings }) => findings.slice(-1).some(isNext)),
      this.chunks.length - 1,
    );
    const chunk = this.chunks[at];
    if (chunk === undefined) {
      this.fill([finding]);
      return;
    }
    chunk.findings.splice(firstWhere(chunk.findings, isNext), 0, finding);
    this.homes.set(finding, chunk);
    if (chunk.findings.length > 2 * together)
      this.chunks.splice(at + 1, 0, this.chunkOf(chunk.findings.splice(together)));
  }
}

/** The place of the first of which something holds, where it holds of all behind that one too. */
function firstWhere<T>(items: readonly T[], holds: (item: T) => boolean): number {
  let low = 0;
  let high = items.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const item = items[middle];
    if (item !== undefined && holds(item)) high = middle;
    else low = middle + 1;
  }
  return low;
}
