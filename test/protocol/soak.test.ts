import assert from 'node:assert/strict';
import { soaked } from '../soak/session';
import { faultsOf } from '../soak/verdict';

describe('a server that is used for long', () => {
  it('holds no more than before, and is gone at its end; `npm run soak` takes longer (F08, I01)', async function () {
    this.timeout(300_000);
    assert.deepEqual(faultsOf(await soaked({ edits: 3000, openings: 60, readings: 6 })), []);
  });

  it('would be found out if it held more', () => {
    const readings = [1, 1, 1.1, 4.2, 4.3, 4.4].flatMap((times, index) =>
      (['edits', 'openings'] as const).map((phase) => ({
        phase,
        done: index,
        heap: times * 1e6,
        handles: 3,
        listeners: phase === 'edits' ? 9 : 9 + index,
      })),
    );
    assert.deepEqual(faultsOf({ readings, exitCode: 1, isLeft: true }), [
      'after edits the heap holds 3.20 MB more',
      'after openings the heap holds 3.20 MB more',
      'after openings there are 2 listeners more',
      'the server ended with 1',
      'the server’s process is left',
    ]);
  });
});
