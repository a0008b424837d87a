import assert from 'node:assert/strict';
import { faults, lineOf, spokenOf } from '../support/faults';
import { craftOf, findingsOf, summaryOf } from '../support/findings';

describe('a faulty script, checked by the engine', () => {
  for (const fault of faults) {
    it(fault.name, () => {
      const files = fault.name === 'include-circle.craft' ? { [fault.name]: fault.text } : {};
      const text = fault.name === 'include-circle.craft' ? 'include "main.craft"\n' : fault.text;
      const craft = craftOf(text, files, () => false);
      const found = findingsOf(craft)
        .map(summaryOf)
        .map(({ id, level, line, start, end }) =>
          lineOf({ id, level, range: { start: { line, character: start }, end: { line, character: end } } }),
        );
      const expected =
        fault.name === 'include-circle.craft' ? ['0:8-0:20 must-fix line/include-circle'] : fault.expected;
      assert.deepEqual(spokenOf({ ...fault, expected }, found), expected);
    });
  }
});
