import assert from 'node:assert/strict';
import type { TaughtKind } from '../../../../server/src/board/learn/teach/lesson';
import { teachLine } from '../../../../server/src/board/learn/teach/teach-line';
import { noForms } from '../../../../server/src/board/listing/forms/compiled';
import { readListing } from '../../../../server/src/board/listing/read-listing';
import type { Forms } from '../../../../server/src/catalog/model/board-forms';

/** The lines of the listing are of the first form; what else there is, nobody knows yet. */
const forms: Forms = { ...noForms, lines: [{ form: '{name} ... {value}' }], beside: [' {unit}'] };

const listing = [
  'lamp colour ... amber',
  'lamp power ... 12 W',
  'beeper @ 2700 Hz',
  'deck light @ 40 Hz',
  'stern lamp ... off',
  '%% taken in the shed %%',
  '%% by Ada',
  'HARBOUR SIDE >>',
  'anchor ... 3',
  'QUAY SIDE >>',
  'rope ... 12',
  'weigh slowly and then rest',
];

/** What is read of a listing with one line taught: settings as `groups/name=value`, and what is left. */
function taught(
  lines: readonly string[],
  number: number,
  as: TaughtKind,
  part: string | null = null,
  known: Forms | null = forms,
) {
  const before = readListing(lines.join('\n'), known);
  const made = teachLine(before, { line: number - 1, as, part });
  if (made.kind === 'refused') return { refused: made.reason, asks: made.asks };
  const after = readListing(before.text, made.forms);
  return {
    settings: after.settings.map(({ groups, name, value }) => `${[...groups, name].join('/')}=${value}`),
    left: after.left.map((one) => one.number + 1),
    alike: made.alike.map((one) => one + 1),
  };
}

/** The lines of the listing with these numbers. */
function some(...numbers: readonly number[]): readonly string[] {
  return numbers.map((number) => listing[number - 1] ?? '');
}

describe('a line that was not understood, taught', () => {
  it('as a setting has all lines like it understood', () => {
    assert.deepEqual(taught(some(1, 2, 5, 3, 4), 4, 'setting'), {
      settings: ['lamp colour=amber', 'lamp power=12', 'stern lamp=off', 'beeper=2700', 'deck light=40'],
      left: [],
      alike: [5],
    });
  });

  it('as a comment has all lines with its mark left alone', () => {
    assert.deepEqual(taught(some(1, 2, 6, 5, 7), 3, 'comment'), {
      settings: ['lamp colour=amber', 'lamp power=12', 'stern lamp=off'],
      left: [],
      alike: [5],
    });
  });

  it('as a heading puts the settings below it into its group', () => {
    assert.deepEqual(taught(some(1, 2, 8, 9, 10, 11), 3, 'heading'), {
      settings: ['lamp colour=amber', 'lamp power=12', 'HARBOUR SIDE/anchor=3', 'QUAY SIDE/rope=12'],
      left: [],
      alike: [5],
    });
  });

  it('as a setting whose value the line does not show is asked for it, and takes it', () => {
    const lines = some(1, 2, 5, 12);
    const asked = taught(lines, 4, 'setting');
    assert.deepEqual(asked, {
      refused: 'The line alone does not show its value, or its name=value: say it.',
      asks: true,
    });
    assert.deepEqual(
      taught(lines, 4, 'setting', 'slowly and then rest').settings?.at(-1),
      'weigh=slowly and then rest',
    );
    assert.match(
      taught(lines, 4, 'setting', 'quickly').refused ?? '',
      /^The line does not hold "quickly"\.$/,
    );
  });

  it('as a heading takes the group that is said', () => {
    const lines = ['lamp ... 4', 'now in the harbour', 'anchor ... 3', 'rope ... 12'];
    assert.deepEqual(taught(lines, 2, 'heading', 'harbour').settings, [
      'lamp=4',
      'harbour/anchor=3',
      'harbour/rope=12',
    ]);
  });

  it('takes a name and a value where the words around them are the board’s, for all lines like it', () => {
    const lines = [
      'item "lift" is 40, at most 100',
      'item "drop" is 22, at most 100',
      'item "calm" is yes',
      'flag quick',
    ];
    const misread: Forms = { ...noForms, lines: [{ form: '{name} {value}', names: 'word' }] };
    assert.deepEqual(taught(lines, 1, 'setting', 'lift=40', misread), {
      settings: ['lift=40', 'drop=22', 'calm=yes', 'flag=quick'],
      left: [],
      alike: [],
    });
    const counted = ['[ 9] yaw.soft .... 12', '[10] yaw.hard .... 48'];
    assert.deepEqual(taught(counted, 1, 'setting', 'yaw.soft=12', noForms).settings, [
      'yaw.soft=12',
      'yaw.hard=48',
    ]);
  });

  it('is parted from what stands behind its value, where the value is said', () => {
    const lines = ['lamp ... 4', 'horn ... short   out of: off, short, long', 'rope ... 12'];
    const before = readListing(lines.join('\n'), forms);
    const made = teachLine(before, { line: 1, as: 'setting', part: 'short' });
    assert.ok(made.kind === 'taught');
    const horn = readListing(before.text, made.forms).settings[1];
    assert.deepEqual([horn?.value, horn?.stated?.words], ['short', ['off', 'short', 'long']]);
  });

  it('is refused where another line would be read otherwise', () => {
    const lines = ['lamp ... 4', 'rope ... 12', 'lamp of the quay'];
    const { refused } = taught(lines, 3, 'comment', 'lamp');
    assert.equal(refused, 'By a form of this line, the setting lamp would be read otherwise than now.');
  });

  it('is taken out of what it was read as before, with the lines like it', () => {
    const lines = ['lamp ... 4', 'beeper loud', 'rope ... 12', 'horn quiet', 'not so loud'];
    const loose: Forms = {
      ...forms,
      lines: [...forms.lines, { form: '{name}', between: ' ' }],
      closing: ['not so loud'],
    };
    assert.deepEqual(taught(lines, 2, 'setting', 'loud', loose).settings, [
      'lamp=4',
      'beeper=loud',
      'rope=12',
      'horn=quiet',
    ]);
    assert.deepEqual(taught(lines, 5, 'comment', null, loose).left, []);
  });

  it('changes nothing where it is understood so already, and is refused in a document', () => {
    assert.deepEqual(taught(some(1, 2), 1, 'setting'), {
      settings: ['lamp colour=amber', 'lamp power=12'],
      left: [],
      alike: [],
    });
    const json = ['{', '  "lamp": 4,', '  "rope": 12,,', '  "anchor": 3', '}'];
    assert.match(taught(json, 3, 'setting', null, null).refused ?? '', /^The listing is a JSON document/);
    assert.equal(taught(some(1, 2), 9, 'comment').refused, 'There is nothing in this line.');
  });
});
