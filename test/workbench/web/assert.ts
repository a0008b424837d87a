/** Node's strict assertions, as far as the tests use them, where there is no Node. */
import { assert as chai } from 'chai';

async function rejects(run: () => Promise<unknown>): Promise<void> {
  const outcome = await run().then(
    () => 'resolved',
    () => 'rejected',
  );
  chai.strictEqual(outcome, 'rejected');
}

export const strict = {
  ok: chai.isOk,
  equal: chai.strictEqual,
  deepEqual: chai.deepEqual,
  match: chai.match,
  rejects,
};
