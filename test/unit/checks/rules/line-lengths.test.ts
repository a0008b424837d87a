import assert from 'node:assert/strict';
import { craftOf, findingsIn } from '../../../support/findings';

describe('checks: line, with long lines and other scripts', () => {
  it('line/too-long tells about a line of more than a hundred thousand characters, and lets others pass', () => {
    const found = (length: number) => findingsIn(`craft.note = "${'x'.repeat(length)}"`).map(({ id }) => id);
    assert.ok(found(100_000).includes('line/too-long'));
    assert.ok(!found(99_000).includes('line/too-long'));
  });

  const ids = (text: string, files: Readonly<Record<string, string>>) =>
    findingsIn(text, files).map(({ id, marked }) => [id, marked]);

  it('line/include-faulty tells about lines to be mended in what is included, and lets sound ones pass', () => {
    const include = 'include "club.craft"';
    assert.deepEqual(ids(include, { 'club.craft': 'motor.poles = 13.5' }), [
      ['line/include-faulty', '"club.craft"'],
    ]);
    assert.deepEqual(ids(include, { 'club.craft': 'motor.poles = 14' }), []);
  });

  it('line/include-too-deep tells about the seventeenth script, and lets the sixteenth pass', () => {
    const scripts = (count: number) =>
      Object.fromEntries(
        Array.from({ length: count }, (_, index) => [
          `club${index}.craft`,
          index + 1 < count ? `include "club${index + 1}.craft"` : 'let quiet = 90 Hz',
        ]),
      );
    const problems = (count: number) =>
      craftOf('include "club0.craft"', scripts(count))
        .layers()
        .problems.map(({ problem }) => problem.id);
    assert.deepEqual(problems(16), []);
    assert.deepEqual(problems(17), ['line/include-too-deep']);
    assert.deepEqual(ids('include "club0.craft"', scripts(17)), [['line/include-faulty', '"club0.craft"']]);
  });
});
