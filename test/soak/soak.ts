import { type Reading, soaked } from './session';
import { faultsOf, megabytes, mostGrowth } from './verdict';

// `npm run soak`: 100,000 edits and 1,000 openings, with what is left in the server along the way.

function row({ phase, done, heap, handles, listeners }: Reading): string {
  const columns = [phase.padEnd(9), `${done}`.padStart(7), megabytes(heap).padStart(9)];
  return [...columns, `${handles}`.padStart(8), `${listeners}`.padStart(10)].join('');
}

async function main(): Promise<void> {
  console.log('after        done  heap, MB handles listeners');
  const result = await soaked({
    edits: 100_000,
    openings: 1000,
    readings: 10,
    onReading: (reading) => console.log(row(reading)),
  });
  const faults = faultsOf(result);
  const bound = `the heap may grow by ${megabytes(mostGrowth)} MB from the second reading on`;
  console.log(faults.length === 0 ? `flat: ${bound}` : `${faults.join('\n')}\n(${bound})`);
  process.exitCode = faults.length > 0 ? 1 : 0;
}

main().catch((error: unknown) => {
  console.error(error);
  process.exitCode = 2;
});
