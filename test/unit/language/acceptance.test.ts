import { strict as assert } from 'node:assert';
import { parseLine } from '../../../server/src/language/parser';

const line = 'shape = off   # accept tune/derivative-unfiltered: one short test hover';

describe('an acceptance', () => {
  it('names a check and gives the reason', () => {
    const { acceptance } = parseLine(line);
    assert.deepEqual(acceptance, {
      check: 'tune/derivative-unfiltered',
      reason: 'one short test hover',
      start: 14,
      end: line.length,
    });
  });

  it('may have more or fewer blanks, which are no part of the reason', () => {
    for (const comment of ['#accept a/b:why', '#   accept   a/b  :   why  ', '# accept a/b: why\t']) {
      const { acceptance } = parseLine(`x = off ${comment}`);
      assert.deepEqual([acceptance?.check, acceptance?.reason], ['a/b', 'why'], comment);
    }
  });

  it('may stand on a line of its own, on a section, on a constant or on an include', () => {
    for (const start of ['', '[gyro] ', 'let a = 5 ', 'include "a.craft" ']) {
      assert.equal(parseLine(`${start}# accept a/b: why`).acceptance?.check, 'a/b');
    }
  });

  for (const comment of [
    '# accept a/b',
    '# accept a/b:',
    '# accept a/b:   ',
    '# accept a/b because',
    '# accept a/: why',
    '# accept',
    '# accept :',
  ]) {
    it(`is not one, and says so: ${comment}`, () => {
      const { acceptance, problems } = parseLine(`x = off ${comment}`);
      assert.equal(acceptance, null);
      assert.deepEqual(
        problems.map(({ id }) => id),
        ['line/acceptance-form'],
      );
    });
  }

  for (const comment of [
    '# accepted: works',
    '# accept the tree',
    '# we accept a/b: why',
    '# a/b: why',
    '#',
  ]) {
    it(`is no business of prose: ${comment}`, () => {
      const { acceptance, problems } = parseLine(`x = off ${comment}`);
      assert.equal(acceptance, null);
      assert.deepEqual(problems, []);
    });
  }

  it('in a text is a text', () => {
    assert.equal(parseLine('name = "# accept a/b: why"').acceptance, null);
  });
});
