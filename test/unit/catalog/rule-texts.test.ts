import assert from 'node:assert/strict';
import { shippedData } from './shipped';

describe('the rule of a check', () => {
  const checks = shippedData()
    .bundle.checks.filter(({ group }) => group !== 'line')
    .flatMap((file) => file.checks);

  it('is written down for every check between lines: as conditions, or in words', () => {
    const untold = checks.filter((check) => check.by === 'code' && check.rule === undefined);
    assert.deepEqual(
      untold.map(({ id }) => id),
      [],
    );
  });

  it('is told once: no two checks have the same words', () => {
    const words = checks.flatMap((check) => (check.by === 'code' ? [check.rule ?? ''] : []));
    assert.deepEqual(
      words.filter((text, index) => words.indexOf(text) !== index),
      [],
    );
  });
});
