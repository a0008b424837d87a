import { strict as assert } from 'node:assert';
import { parseLine } from '../../../server/src/language/parser';

const line = 'kind = none  # accept tune/derivative-unfiltered: one short test hover';

describe('an acceptance', () => {
  it('names a check and gives the reason', () => {
    const { acceptance } = parseLine(line);
    assert.deepEqual(acceptance, {
      check: 'tune/derivative-unfiltered',
      reason: 'one short test hover',
      start: 13,
      end: line.length,
    });
  });

  it('may have more or fewer blanks, which are no part of the reason', () => {
    for (const comment of ['#accept a/b:why', '#   accept   a/b  :   why  ', '# accept a/b: why\t']) {
      const { acceptance } = parseLine(`x = off ${comment}`);
      assert.deepEqual([acceptance?.check, acceptance?.reason], ['a/b', 'why'], comment);
    }
  });

  it('ends where another comment begins, which a number sign within words does not', () => {
    const beside = 'kind = none # accept a/b: calm in hall #2 # since the spring';
    const { acceptance } = parseLine(beside);
    assert.deepEqual(
      [acceptance?.reason, beside.slice(acceptance?.start, acceptance?.end)],
      ['calm in hall #2', '# accept a/b: calm in hall #2'],
    );
    assert.equal(parseLine('kind = none # calm # accept a/b: why').acceptance, null);
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

  const told: readonly [comment: string, lacks: string, made: string | null][] = [
    ['# accept', 'it names no check', null],
    ['# accept: why', 'it names no check', null],
    ['# accept a/b', 'it gives no reason', null],
    ['# accept a/b:', 'it gives no reason', null],
    ['# accept a/: why', "`a/` is no check's whole id", null],
    ['# accept a/b: ...', '`...` is no reason', null],
    ['# accept a/b: …', '`…` is no reason', null],
    ['# accept a/b: TODO', '`TODO` is no reason', null],
    ['# accept a/b: todo.', '`todo.` is no reason', null],
    ['# accept a/b: x', '`x` is no reason', null],
    ['# accept a/b: reason', '`reason` is no reason', null],
    ['# accept a/b: why this is fine here', '`why this is fine here` is no reason', null],
    ['#Accept a/b: one hover', 'it is read in small letters only', '# accept a/b: one hover'],
    ['# ACCEPT A/B: one hover', 'it is read in small letters only', '# accept a/b: one hover'],
    [
      '# accept: a/b: one hover',
      'the colon belongs behind the check, not behind `accept`',
      '# accept a/b: one hover',
    ],
    [
      '# accept: a/b one hover',
      'the colon belongs behind the check, not behind `accept`',
      '# accept a/b: one hover',
    ],
    ['# accept a/b one hover', 'a colon belongs between the check and the reason', '# accept a/b: one hover'],
    [
      '# accept a/b - one hover',
      'a colon belongs between the check and the reason',
      '# accept a/b: one hover',
    ],
  ];
  for (const [comment, lacks, made] of told) {
    it(`tells what is amiss, and mends the form: ${comment}`, () => {
      const line = `x = off ${comment}`;
      const { acceptance, problems } = parseLine(line);
      assert.equal(acceptance, null);
      assert.deepEqual(
        problems.map(({ id, values }) => [id, values.lacks]),
        [['line/acceptance-form', lacks]],
      );
      const edits = problems[0]?.fixes.flatMap((fix) => fix.edits) ?? [];
      assert.deepEqual(
        edits.map(({ start, end, newText }) => line.slice(0, start) + newText + line.slice(end)),
        made === null ? [] : [`x = off ${made}`],
      );
    });
  }

  for (const reason of ['why', 'hall only', 'todo after the race', '测试', 'fine']) {
    it(`has any real reason: ${reason}`, () => {
      assert.equal(parseLine(`x = off # accept a/b: ${reason}`).acceptance?.reason, reason);
    });
  }
});
