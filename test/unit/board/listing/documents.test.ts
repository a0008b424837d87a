import { strict as assert } from 'node:assert';
import { rendered } from '../../../support/rendered-listing';

const json = `{ // printed by hand
  "coast": { "tern": 1e5, "tern": 012, "beaks": [1,2, 3], "rest": {} },
  "wing": 9007199254740993, // 0..10
  "birds": [
    { "id": 1, "name": "plover", "value": 5, "unit": "Hz", "min": 0, "max": 9 },
    { "id": 2, "name": "raven", "value": "soft", "note": "in flight" }
  ],
  "nests": [
    "high",
    "low",
  ],
  "text": "a \\" b",
  "gone": null
}
`;

describe('a listing that is a document', () => {
  it('in JSON, with comments, repeated keys, records and values as they are written', () => {
    assert.equal(
      rendered(json),
      [
        'coast › tern = 1e5',
        'coast › tern (2) = 012',
        'coast › beaks = [1,2, 3]',
        'coast › rest = {}',
        'wing = 9007199254740993  (0 to 10)',
        'birds › plover = 5  (0 to 9; in Hz)',
        'birds › raven = "soft"  ("in flight")',
        'nests › 1 = "high"',
        'nests › 2 = "low"',
        'text = "a \\" b"',
        'gone = null',
      ].join('\n'),
    );
  });

  it('in elements, as texts and as attributes, with what they say beside values', () => {
    const text = `<?xml version="1.0"?>
<board>
  <!-- by hand -->
  <gyro>
    <rate unit="Hz" min="1" max="9000">8000</rate>
    <soft></soft>
  </gyro>
  <group name="motor">
    <param name="idle" value="5.5"/>
    <param name="turn" value="cw"/>
    <setting id="pace">soft &amp; slow</setting>
  </group>
  <lamp id="1" pin="4" level='7'/>
</board>`;
    const says = [
      'gyro › rate = 8000  (1 to 9000; in Hz)',
      'gyro › soft = ',
      'motor › idle = "5.5"',
      'motor › turn = "cw"',
      'motor › pace = soft &amp; slow',
      'lamp › 1 › pin = "4"',
      "lamp › 1 › level = '7'",
    ].join('\n');
    assert.equal(rendered(text), says);
    assert.equal(rendered(text.replaceAll(/\n\s*/g, '')), says);
    assert.equal(rendered(`heron> all\r\n${text.replaceAll('\n', '\r\n')}\r\nheron> `), says);
  });

  it('of elements alone, with nothing around them', () => {
    assert.equal(rendered('<tern>5</tern>\n<mode>soft</mode>'), 'tern = 5\nmode = soft');
    assert.equal(
      rendered('<roll p="5" i="7"/>\n<yaw p="6" i="0"/>'),
      'roll › p = "5"\nroll › i = "7"\nyaw › p = "6"\nyaw › i = "0"',
    );
  });

  it('in JSON between prompts, with mixed line ends', () => {
    const text = `heron> all --json\r\n${json.replaceAll('\n', '\r\n')}heron> `;
    assert.equal(rendered(text), rendered(json));
  });

  it('in JSON in one line that a tool counted', () => {
    const text = '{"coast": {"tern": 1e5, "beaks": [1,2]}}';
    for (const count of ['0001 ', '   1| ', '   1: ', '     1\t'])
      assert.equal(rendered(count + text), rendered(text));
  });

  it('in JSON with a time before each line', () => {
    const text = json.replace(/^/gm, '[12:00:01] ').replace(/\[12:00:01\] $/, '');
    assert.equal(rendered(text), rendered(json));
  });

  it('in JSON that is cut off: what is there is read', () => {
    assert.equal(rendered('{\n  "tern": 1,\n  "plover": {\n    "raven": 2,'), 'tern = 1\nplover › raven = 2');
  });

  it('in YAML, with lists, records, texts over lines and values as they are written', () => {
    const text = `# printed by hand
---
coast:
  tern: 012 # 0..100
  "wide name": 'a b'
  mode: on
  beaks: [1, 2]
  nests:
    - high
    - name: plover
      value: 5
      unit: Hz
  text: |
    first
    second
  long: a b
    c d
empty:
ref: *tern
`;
    assert.equal(
      rendered(text),
      [
        'coast › tern = 012  (0 to 100)',
        "coast › wide name = 'a b'",
        'coast › mode = on',
        'coast › beaks = [1, 2]',
        'coast › nests › 1 = high',
        'coast › nests › plover = 5  (in Hz)',
        'coast › text = first second',
        'coast › long = a b c d',
        'empty = ',
        'ref = *tern',
      ].join('\n'),
    );
  });
});
