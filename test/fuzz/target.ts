import fc from 'fast-check';

/** What broke a target, made as small as it could be, with all that is needed to see it again. */
export interface Find {
  readonly target: string;
  /** The seed with which it is found at once. */
  readonly seed: number;
  /** How many inputs it took. */
  readonly inputs: number;
  /** The input as JSON; a file of that text in the target's corpus is looked at in every run. */
  readonly input: string;
  readonly error: string;
}

/** One part of Propsoff that takes in what others wrote, with what must hold whatever that is. */
export interface Target {
  readonly name: string;
  /** What must hold, in a few words. */
  readonly holds: string;
  /** Of the inputs of a run, how many go here: a part of the sum of all shares. */
  readonly share: number;
  /** Tries inputs; what broke, or null. */
  readonly run: (inputs: number, seed: number) => Promise<Find | null>;
  /** Looks at one input of the corpus again; rejects when it still breaks. */
  readonly replay: (input: unknown) => Promise<void>;
}

/** Inputs are plain data, so that each can be kept as a file. */
export function target<Input>(
  about: Pick<Target, 'name' | 'holds' | 'share'>,
  inputs: fc.Arbitrary<Input>,
  check: (input: Input) => void | Promise<void>,
): Target {
  const property = fc.asyncProperty(inputs, async (input) => void (await check(input)));
  return {
    ...about,
    async run(numRuns, seed) {
      const details = await fc.check(property, { numRuns, seed });
      if (!details.failed) return null;
      const { errorInstance, counterexample } = details;
      const error =
        errorInstance instanceof Error
          ? (errorInstance.stack ?? errorInstance.message)
          : String(errorInstance);
      const input = JSON.stringify(counterexample?.[0], null, 2) ?? '';
      return { target: about.name, seed, inputs: details.numRuns, input, error };
    },
    replay: async (input) => void (await check(input as Input)),
  };
}
