import { parseArgs } from 'node:util';
import { prove } from './prove';
import { tableOf } from './score';

// `npx tsx test/sweeps/flights/print.ts --flights 40 --of order`, with `--every 3` of each third: how well estimates tell what
// simulated flights know, and each case of one of them.

const { values } = parseArgs({
  options: {
    from: { type: 'string', default: '1' },
    flights: { type: 'string', default: '40' },
    every: { type: 'string', default: '1' },
    of: { type: 'string' },
  },
});

const short = (value: number) => value.toPrecision(4);

prove(
  { from: Number(values.from), count: Number(values.flights), every: Number(values.every) },
  ({ quantity, seed, truth, span }) => {
    if (values.of === undefined || !quantity.includes(values.of)) return;
    const told =
      span === null ? 'withheld' : `${short(span.likely)} [${short(span.low)}, ${short(span.high)}]`;
    const isOutside = span !== null && (truth < span.low || truth > span.high);
    console.log(
      `flight ${seed}, ${quantity}: ${short(truth)} is told as ${told}${isOutside ? ', OUTSIDE' : ''}`,
    );
  },
).then(
  ({ scores, standing }) =>
    console.log(`${tableOf(scores)}\n${standing.mistaken} of ${standing.told} standing tones do not stand`),
  (error: unknown) => {
    console.error(error);
    process.exitCode = 1;
  },
);
