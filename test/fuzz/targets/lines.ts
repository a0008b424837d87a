import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { parseLine } from '../../../server/src/language/parser';
import { craftScript } from '../../support/craft-scripts';
import { scriptText } from '../../support/script-text';
import { anyText, slipped } from '../inputs/texts';
import { target } from '../target';

const oneLine = (texts: fc.Arbitrary<string>) => texts.map((text) => text.split(/[\r\n]/)[0] ?? '');

/** Single lines, as anywhere and as under `own`: the lexer and the parser. */
export const lines = target(
  { name: 'lines', share: 500, holds: 'a line is read, and every mark and fix lies inside it' },
  fc.oneof(oneLine(anyText), oneLine(slipped(craftScript)), oneLine(slipped(scriptText))),
  (line) => {
    for (const isOwn of [false, true]) isReadWithin(line, isOwn);
  },
);

function isReadWithin(line: string, isOwn: boolean): void {
  const statement = parseLine(line, isOwn);
  for (const { start, end, fixes } of statement.problems) {
    assert.ok(start >= 0 && start <= end && end <= Math.max(1, line.length), `${start}..${end}`);
    for (const { edits } of fixes)
      for (const edit of edits)
        assert.ok(edit.start >= 0 && edit.start <= edit.end && edit.end <= line.length, JSON.stringify(edit));
  }
  if (statement.comment !== null) assert.equal(line[statement.comment.start], '#');
  assert.deepEqual(parseLine(line, isOwn), statement, 'a line is read the same twice');
}
