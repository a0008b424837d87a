import type { Bench } from './group';
import { against, type Measure, timed } from './measure';

const lines = { small: 4000, large: 40_000 };
/** Ten times the lines may take a little more than ten times as long: caches are as small as they were. */
const linear = 12;

/** A listing that nobody knows, all in one group, made into a profile with proposals for each of its settings. */
export async function learnMeasures({ engine, catalog, runs }: Bench): Promise<readonly Measure[]> {
  const { confirmedAs, learned, learnedProfile, readListing } = engine;
  const work = (text: string) => {
    const found = readListing(text, null);
    learned(found, catalog);
    if (learnedProfile(found, 'kestrel', confirmedAs([]), catalog) === null)
      throw new Error('the listing was not understood');
  };
  const timesOf = (count: number) => timed(runs(5, 2), () => listing(count), work);
  const [small, large] = [timesOf(lines.small), timesOf(lines.large)];
  return [against('40,000 lines of a listing learned', large, '4,000 lines', small, linear)];
}

const words = ['gyro', 'filter', 'motor', 'limit', 'speed', 'pack', 'warn', 'voltage', 'receiver', 'rate'];

/** Three words of the trade to each name, every name another one. */
function listing(count: number): string {
  const word = (index: number) => words[index % words.length] ?? '';
  return Array.from({ length: count }, (_, index) => {
    const name = [word(index), word(Math.floor(index / 10)), word(Math.floor(index / 100)), index];
    return `${name.join(' ')} = ${index % 100}\n`;
  }).join('');
}
