import assert from 'node:assert/strict';
import { linesToWrite } from '../../../server/src/features/lines-to-write';
import { craftOf, findingsOf } from '../../support/findings';

/** The text with the lines, and a | where the first value goes. */
function written(text: string, ...paths: readonly string[]): string {
  const craft = craftOf(text);
  const lines = linesToWrite(craft, paths);
  assert.ok(lines);
  craft.changed(craft.root.edit(lines.edits));
  const all = craft.root.document.text().split('\n');
  const { line, character } = lines.at;
  all[line] = `${all[line]?.slice(0, character)}|${all[line]?.slice(character)}`;
  return all.join('\n');
}

describe('lines that a pilot is to fill in', () => {
  it('go below the others of their section, one below the other', () => {
    const text = '[motor]\nkv = 3800 rpm/V\n\n[prop]\nblades = 3\n';
    assert.equal(
      written(text, 'motor.resistance', 'motor.idle-current', 'prop.pitch'),
      [
        '[motor]',
        'kv = 3800 rpm/V',
        'resistance   = |# Winding resistance between two wires, in ohm',
        'idle-current = # No-load current, in A',
        '',
        '[prop]',
        'blades = 3',
        'pitch = # Pitch, in in',
        '',
      ].join('\n'),
    );
  });

  it('get sections at the end where there are none', () => {
    assert.equal(
      written('[prop]\nblades = 3', 'esc.signal', 'control.roll.proportional'),
      [
        '[prop]',
        'blades = 3',
        '',
        '[esc]',
        'signal = |# Motor signal',
        '',
        '[control.roll]',
        'proportional = # Proportional gain of roll, in %/(deg/s)',
        '',
      ].join('\n'),
    );
  });

  it('make a pack where the craft has none', () => {
    assert.equal(
      written('', 'pack.<name>.cells', 'pack.<name>.mass'),
      '[pack.first]\ncells = |# Cells in series\nmass  = # Mass of the pack, in g\n',
    );
  });

  it('are told of until they are filled in, and are nothing for what there is not', () => {
    const craft = craftOf('[motor]\nkv = 3800 rpm/V\n');
    craft.changed(craft.root.edit(linesToWrite(craft, ['motor.resistance'])?.edits ?? []));
    const found = findingsOf(craft).filter(({ check }) => check.id === 'line/value-missing');
    assert.equal(found.length, 1);
    assert.equal(linesToWrite(craft, ['motor.colour']), null);
  });
});
