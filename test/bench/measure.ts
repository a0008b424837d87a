/** How long a thing takes: median and 95th percentile of many runs, in milliseconds. */
export interface Times {
  readonly median: number;
  readonly p95: number;
  readonly runs: number;
}

/** How thoroughly to measure. */
export type Runs = (full: number, quick: number) => number;

/** A line of the result, as `--json` gives it. */
export interface Measure {
  readonly name: string;
  readonly unit: string;
  readonly ours: number;
  readonly peer: number;
  readonly peerName: string;
  /** Ours over the peer's. */
  readonly ratio: number;
  /** The most that the ratio may be. */
  readonly goal: number;
  readonly met: boolean;
  readonly runs: number;
  readonly p95: number;
}

/**
 * Times `work` on its own, by what it takes of a processor: on a shared machine the clock tells of others. `prepare` makes
 * what it works on, untimed. The first tenth warms up and counts not.
 */
export function timed<T>(runs: number, prepare: (run: number) => T, work: (prepared: T) => void): Times {
  const times: number[] = [];
  const warming = Math.ceil(runs / 10);
  for (let run = 0; run < runs + warming; run += 1) {
    const prepared = prepare(run);
    const start = process.cpuUsage();
    work(prepared);
    const { user, system } = process.cpuUsage(start);
    if (run >= warming) times.push((user + system) / 1000);
  }
  return timesOf(times);
}

/** So many runs of one work follow each other: the first of them pays for what the other work left in the caches. */
const together = 8;

/**
 * Times several works in turn, a few runs of each, so that what else the machine does hits them alike. A work gives
 * the time that it took, ms. The first tenth warms up and counts not.
 */
export async function interleaved(
  runs: number,
  works: readonly ((run: number) => Promise<number> | number)[],
): Promise<readonly Times[]> {
  const taken: number[][] = works.map(() => []);
  const warming = Math.ceil(runs / 10);
  const all = Array.from({ length: runs + warming }, (_, run) => run);
  for (let first = 0; first < all.length; first += together) {
    for (const [index, work] of works.entries()) {
      for (const run of all.slice(first, first + together)) {
        const time = await work(run);
        if (run >= warming) taken[index]?.push(time);
      }
    }
  }
  return taken.map(timesOf);
}

/** How long something takes, ms. */
export async function elapsed(work: () => Promise<unknown> | unknown): Promise<number> {
  const start = performance.now();
  await work();
  return performance.now() - start;
}

/** The median and the 95th percentile of times that were taken elsewhere. */
export function timesOf(taken: readonly number[]): Times {
  const times = [...taken].sort((a, b) => a - b);
  const at = (share: number) => times[Math.min(times.length - 1, Math.floor(share * times.length))] ?? 0;
  return { median: at(0.5), p95: at(0.95), runs: times.length };
}

/** What was measured, against the most that is wanted, in the same unit. */
export function within(name: string, ours: Times, most: number, unit = 'ms'): Measure {
  return against(name, ours, 'the most that is wanted', { median: most, p95: most, runs: 1 }, 1, unit);
}

/** What runs at once on any machine, to hold other times against: a million sines added up. */
export function calibration(): Times {
  let sum = 0;
  const times = timed(
    20,
    () => 1_000_000,
    (count) => {
      for (let number = 0; number < count; number += 1) sum += Math.sin(number);
    },
  );
  if (!Number.isFinite(sum)) throw new Error('the sines did not add up');
  return times;
}

export function against(
  name: string,
  ours: Times,
  peerName: string,
  peer: Times,
  goal: number,
  unit = 'ms',
): Measure {
  const ratio = ours.median / peer.median;
  return {
    name,
    unit,
    ours: ours.median,
    peer: peer.median,
    peerName,
    ratio,
    goal,
    met: ratio <= goal,
    runs: ours.runs,
    p95: ours.p95,
  };
}
