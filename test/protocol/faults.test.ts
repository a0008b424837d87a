import assert from 'node:assert/strict';
import { pathToFileURL } from 'node:url';
import { isDeepStrictEqual } from 'node:util';
import { faults, lineOf, spokenOf } from '../support/faults';
import { withServer } from '../support/server';

const levels = ['must-fix', 'risk', 'note', 'tidy'];

describe('a faulty script, sent to the server', () => {
  it('comes back with what must be found in each', () =>
    withServer({}, async (server) => {
      for (const fault of faults) {
        const uri = pathToFileURL(fault.path).toString();
        await server.open(uri, fault.text, 1);
        // A script that includes another is checked again once that has been read: look until it is told.
        const deadline = Date.now() + 10_000;
        let found: readonly string[] = [];
        do {
          const { diagnostics } = await server.pushedFor(uri, 1);
          found = spokenOf(
            fault,
            diagnostics.map(({ code, severity = 1, range }) =>
              lineOf({ id: String(code), level: levels[severity - 1] ?? '', range }),
            ),
          );
          await new Promise((resolve) => setImmediate(resolve));
        } while (!isDeepStrictEqual(found, fault.expected) && Date.now() < deadline);
        assert.deepEqual(found, fault.expected, fault.name);
        await server.close(uri);
      }
    }));
});
