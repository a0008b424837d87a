import assert from 'node:assert/strict';
import { doubtfulReadings } from '../../../../server/src/board/listing/doubtful-readings';
import { readListing } from '../../../../server/src/board/listing/read-listing';
import { trimmed } from '../../../support/listing-cases';
import { oddListings } from '../../../support/odd-listings';

const said = (text: string) =>
  doubtfulReadings(readListing(text, null)).map(
    ({ kind, line, count, text: read }) => `${kind} ${line + 1} ${count} ${read}`,
  );

describe('what was read and may be wrong', () => {
  it('lines behind a mark, more than there are settings', () =>
    assert.deepEqual(said('plinth 7\n- gyro\n-- rate 8k\n-- hush 150Hz\n-- hum on\n- name Pipit\n'), [
      'comments 3 3 -- rate 8k',
    ]));

  it('not remarks with marks that begin nothing else, and no drawn lines', () => {
    assert.deepEqual(said('# one\n# two\n# three\n# four\ncut = 5\nidle = 6\n'), []);
    assert.deepEqual(said('-- one\n-- two\ncut = 5\nidle = 6\n'), []);
  });

  it('further settings within a value', () => {
    const text = '+A rate=8000Hz cut=175Hz turn=-90\n+B tilt=52 pull=5.0\n+C ch=5 on=1700 tilt=25\n';
    assert.deepEqual(said(text), ['settings-within 1 3 8000Hz cut=175Hz turn=-90']);
  });

  it('columns that were read as one value', () => {
    const text = 'fence 1.4\nport  baud    radio  video\nA     420000  x      -\nB     115200    -       x\n';
    assert.deepEqual(said(text), ['columns 3 2 420000  x      -']);
  });

  it('a comment within a value', () =>
    assert.deepEqual(said('a=170; b=320; c=90; /* was 80 */\nd=110; e=460; f=3;\n'), [
      'comment-within 1 1 90; /* was 80 */',
    ]));

  it('a comma behind values, once for all', () => {
    const text =
      "{ // dump\n a: {\n  hz: 0x1F40, // 8000\n  cut: +180, // Hz\n },\n b: {\n  p: 'x', // y\n  q: 5,\n },\n}\n";
    assert.deepEqual(said(text), ['comma-behind 3 4 0x1F40,']);
  });

  it('closing marks that were taken for groups', () => {
    const text = [
      '{ // plinth, form 4',
      '  sensor: {',
      '    hz: 0x1F40, // 8000',
      '    notch: { on: true, centre: +240, width: +35, },',
      '    turn: -90,',
      '  },',
      '  loops: {',
      '    roll:  { p: +4.1e1, i: +66, },',
      '    pitch: { p: +4.4e1, i: +70, },',
      '  },',
      '  radio: {',
      '    low: 988, mid: 1500, high: 2012,',
      "    lost: { hold: 250, then: 'drop', },",
      '  },',
      '  flags: 0b1011, /* 0: beep, 1: led,',
      '     2: log, 3: tilt check */',
      '}',
    ].join('\n');
    assert.match(said(text).join('\n'), /mark-as-group 1 \d+ \{/);
  });

  for (const { what, text } of oddListings)
    it(`nothing in a listing that is read right: ${what}`, () => assert.deepEqual(said(trimmed(text)), []));
});
