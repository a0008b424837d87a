import { parseArgs } from 'node:util';
import { corpusOf } from './corpus';
import type { Find, Target } from './target';
import { shared, targets } from './targets';

// `npm run fuzz -- [--inputs 1000000] [--target name] [--seed n]`: tries inputs until something breaks.

const { values } = parseArgs({
  options: {
    inputs: { type: 'string', default: '100000' },
    target: { type: 'string' },
    seed: { type: 'string' },
  },
});

/** Inputs between two looks at the clock; each piece has a seed of its own, with which it can be replayed alone. */
const piece = 2000;

function numberOf(name: string, text: string): number {
  const value = Number(text);
  if (Number.isInteger(value) && value >= 0) return value;
  throw new Error(`--${name} takes a whole number, not "${text}"`);
}

function chosen(): readonly Target[] {
  if (values.target === undefined) return targets;
  const found = targets.filter(({ name }) => name === values.target);
  if (found.length > 0) return found;
  throw new Error(
    `there is no target ${values.target}; there are ${targets.map(({ name }) => name).join(', ')}`,
  );
}

const started = Date.now();
const seconds = () => `${Math.round((Date.now() - started) / 1000)} s`;

function show(text: string): void {
  if (process.stdout.isTTY) process.stdout.write(`\r\u001b[K${text}`);
  else process.stdout.write(`${text}\n`);
}

/** Runs one target piece by piece until it breaks or has had its share. */
async function tried(target: Target, inputs: number, seed: number): Promise<Find | null> {
  for (let done = 0; done < inputs; done += piece) {
    const find = await target.run(Math.min(piece, inputs - done), seed + done / piece);
    if (find !== null) return { ...find, inputs: done + find.inputs };
    const isShown = process.stdout.isTTY || done + piece >= inputs || (done / piece) % 25 === 24;
    if (isShown) show(`${target.name}: ${Math.min(inputs, done + piece)} of ${inputs} inputs, ${seconds()}`);
  }
  return null;
}

async function fromCorpus(target: Target): Promise<readonly Find[]> {
  const finds: Find[] = [];
  for (const { title, input } of corpusOf(target)) {
    try {
      await target.replay(input);
    } catch (error) {
      const told = error instanceof Error ? (error.stack ?? error.message) : String(error);
      const text = JSON.stringify(input, null, 2);
      finds.push({
        target: target.name,
        seed: 0,
        inputs: 0,
        input: text,
        error: `corpus: ${title}\n${told}`,
      });
    }
  }
  return finds;
}

function told({ target, seed, inputs, input, error }: Find): string {
  return [
    `\n=== ${target} broke after ${inputs} inputs`,
    error,
    `input, to be kept as test/fuzz/corpus/${target}/<what it is>.json:`,
    input,
    `again: npm run fuzz -- --target ${target} --seed ${seed} --inputs ${piece}`,
  ].join('\n');
}

async function main(): Promise<void> {
  const seed = values.seed === undefined ? Date.now() % 1_000_000_000 : numberOf('seed', values.seed);
  const shares = shared(numberOf('inputs', values.inputs), chosen());
  const finds: Find[] = [];
  for (const [target, inputs] of shares) {
    finds.push(...(await fromCorpus(target)));
    const find = await tried(target, inputs, seed);
    if (find !== null) finds.push(find);
    if (find !== null) show(`${target.name}: broke, ${seconds()}`);
  }
  for (const find of finds) console.log(told(find));
  const count = shares.reduce((sum, [, inputs]) => sum + inputs, 0);
  console.log(`\n${count} inputs, seed ${seed}, ${seconds()}: ${finds.length} found`);
  process.exit(finds.length > 0 ? 1 : 0);
}

main().catch((error: unknown) => {
  console.error(error instanceof Error ? error.message : error);
  process.exit(2);
});
