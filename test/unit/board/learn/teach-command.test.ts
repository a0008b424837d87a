import assert from 'node:assert/strict';
import { teachCommand } from '../../../../server/src/board/learn/teach/teach-command';
import { readListing } from '../../../../server/src/board/listing/read-listing';

const flat = ['lamp colour ~> amber', 'lamp power ~> 12 W', 'lamp ~> 3', 'name ~> "Mossy"', 'rope ~> 12'];
const grouped = ['[harbour]', 'rope ~> 12', 'lamp ~> 4', '[quay]', 'rope ~> 7', 'crane ~> 9'];
const nested = [
  'sea {',
  ' harbour {',
  '  rope ~> 12',
  '  lamp ~> 4',
  ' }',
  ' quay {',
  '  rope ~> 7',
  ' }',
  '}',
];
const pathed = ['harbour/rope: 12', 'harbour/lamp: 4', 'quay/rope: 7', 'quay/crane: 9'];

/** What an example comes to, or why it does not. */
function taught(lines: readonly string[], example: string): unknown {
  const { settings, forms } = readListing(lines.join('\n'), null);
  const made = teachCommand(example, settings, forms);
  return made.kind === 'taught' ? made.command : made.reason;
}

describe('the form of a command, from one example', () => {
  it('has the setting’s name and value where they stand', () => {
    assert.deepEqual(taught(flat, 'put lamp colour amber'), { command: 'put {name} {value}' });
    assert.deepEqual(taught(flat, 'amber>lamp colour!'), { command: '{value}>{name}!' });
    assert.deepEqual(taught(flat, 'lamp power := 12 W'), { command: '{name} := {value} {unit}' });
    assert.deepEqual(taught(flat, 'call name "Mossy"'), { command: 'call {name} {value}' });
  });

  it('has the group where it is typed', () => {
    assert.deepEqual(taught(grouped, 'harbour lamp 4'), { command: '{group} {name} {value}' });
    assert.deepEqual(taught(pathed, 'put harbour/rope 12'), { command: 'put {name} {value}' });
    assert.deepEqual(taught(pathed, 'put harbour rope 12'), { command: 'put {group} {name} {value}' });
    assert.deepEqual(taught(nested, 'sea.harbour.lamp 4'), {
      command: '{group}.{name} {value}',
      commandPath: '.',
    });
  });

  it('is the listing’s own where the example is a line of it', () => {
    assert.deepEqual(taught(flat, 'lamp ~> 3'), { command: 'same' });
    assert.deepEqual(taught(pathed, 'quay/crane: 9'), { command: 'same' });
    assert.deepEqual(taught(grouped, 'crane ~> 9'), { command: '{name} ~> {value}' });
  });

  it('is not taken from an example that fits nothing, or several', () => {
    assert.match(String(taught(flat, 'put mast 9')), /^The example names no setting of the listing/);
    assert.equal(
      taught(flat, 'put lamp power 40'),
      'The example names lamp power, but without the value that it has in the listing: type what would set it to 12.',
    );
    assert.match(
      String(taught(grouped, 'rope 12')),
      /^rope stands in several groups, and the example does not say which/,
    );
    assert.match(
      String(taught(['a ~> 3', 'b ~> 3', 'c ~> 4'], 'a b 3')),
      /^The example fits a and b: type one/,
    );
    assert.match(String(taught(flat, 'one\ntwo')), /^An example is one line/);
  });
});
