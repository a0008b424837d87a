import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { type BuildSheet, buildSheet, type SheetPart } from '../../../server/src/sheet/build-sheet';
import { craftOf, findingsOf } from '../../support/findings';

const club = { 'club-habits.craft': readFileSync('test/demo/club-habits.craft', 'utf8') };
const sandmartin = readFileSync('test/demo/sandmartin.craft', 'utf8');

function sheetOf(text: string, pack: string | null = null, files = club): BuildSheet {
  const craft = craftOf(text, files);
  return buildSheet(craft, findingsOf(craft), pack ?? craft.packs()[0] ?? null);
}

function part<I extends SheetPart['id']>(sheet: BuildSheet, id: I): Extract<SheetPart, { id: I }> {
  const found = sheet.parts.find((one) => one.id === id);
  assert.ok(found, `${id} is not among ${sheet.parts.map((one) => one.id).join(', ')}`);
  return found as Extract<SheetPart, { id: I }>;
}

describe('the build sheet', () => {
  it('is headed by the craft, what it is for, and its packs', () => {
    const { name, about, packs, packInView, readAs } = sheetOf(sandmartin);
    assert.equal(name, 'Sandmartin');
    assert.deepEqual(about, ['race', 'Heron', 'European Union']);
    assert.deepEqual(packs, [
      { name: 'sprint', detail: '6 cells', refusal: null },
      { name: 'cruise', detail: '4 cells', refusal: null },
    ]);
    assert.equal(packInView, 'sprint');
    assert.equal(readAs, 'whole');
  });

  it('tells how many settings only the board knows', () => {
    const more = `${sandmartin}[own]\n"gyro rate" = 8000\n[own @ sprint]\n"gyro rate" = 4000\nstep = 1,5\n`;
    assert.equal(sheetOf(more).about.at(-1), "2 settings of the board's own");
    assert.equal(sheetOf('[craft]\n[own]\nx = 1\n').about.at(-1), "1 setting of the board's own");
  });

  it('tells how many of these are not as they were last handed over', () => {
    const own = (lines: string) => {
      const craft = craftOf(`[craft]\n[own]\n${lines}`);
      const settings = [
        { groups: [], name: 'gyro rate', value: '8000' },
        { groups: ['PID α'], name: 'p', value: '1.0' },
        { groups: ['PID α'], name: 'p', occurrence: 2, value: 'on' },
      ];
      const handed = { version: 1, board: 'heron', pack: null, reason: null, settings } as const;
      return buildSheet(craft, [], null, handed).about.at(-1);
    };
    const same = '"gyro rate" = 8000\n"PID α".p = 1\n"PID α".p."#2" = on\n';
    assert.equal(own(same), "3 settings of the board's own, none changed since the last hand-over");
    const changed = `${same.replace('8000', '4000').replace('= on', '= off')}more = 1\n`;
    assert.equal(own(changed), "4 settings of the board's own, 3 changed since the last hand-over");
  });

  it('says why the craft can’t take a pack', () => {
    const weak = sandmartin.replace(/cells-limit( *)= 6/, 'cells-limit$1= 5');
    const [sprint, cruise] = sheetOf(weak).packs;
    assert.match(sprint?.refusal ?? '', /6/);
    assert.equal(cruise?.refusal, null);
  });

  it('is named after its file where the script gives no name', () => {
    assert.equal(sheetOf('[gyro]\nrate = 8 kHz\n').name, 'main.craft');
  });

  it('of a part that others include shows only what was found', () => {
    const sheet = sheetOf('[gyro]\nrat = 8 kHz\n');
    assert.equal(sheet.readAs, 'part');
    assert.deepEqual(
      sheet.parts.map(({ id }) => id),
      ['can-it-fly'],
    );
  });

  const unchecked = 'what a whole craft needs was not checked';
  const others: readonly [what: string, text: string, answer: string, unchecked: string | null][] = [
    [
      'a part',
      '[gyro]\nrate = 8 kHz\n',
      'nothing found to mend in this part',
      `Read as a part: ${unchecked}.`,
    ],
    [
      'an empty script',
      '# soon\n',
      'nothing written yet',
      'Nothing is written here yet: there was nothing to check.',
    ],
    [
      'a script that lacks an include',
      'include "gone.craft"\n',
      '1 to mend',
      `Something that it includes could not be read: ${unchecked}.`,
    ],
    ['a craft', sandmartin, 'nothing found to mend, 1 accepted', null],
  ];
  for (const [what, text, answer, told] of others) {
    it(`of ${what} says how much was looked at`, () => {
      const found = part(sheetOf(text), 'can-it-fly');
      assert.deepEqual([found.answer, found.unchecked], [answer, told]);
    });
  }

  it('is plain data: it comes back whole from JSON', () => {
    const sheet = sheetOf(sandmartin);
    assert.deepEqual(JSON.parse(JSON.stringify(sheet)), sheet);
  });

  it('gives every figure in a unit, with a reason', () => {
    const text = JSON.stringify(sheetOf(sandmartin));
    assert.doesNotMatch(text, /NaN|Infinity|undefined|not set to/);
  });
});

describe('can it fly?', () => {
  it('answers with counts, and leads each finding to its line', () => {
    const found = part(sheetOf(sandmartin.replace('tilt-limit', 'tilt-limt')), 'can-it-fly');
    assert.match(found.answer, /1 to mend/);
    const text = JSON.stringify(found);
    assert.match(text, /arming\.tilt-limt/);
    assert.match(text, /"line":\d+/);
  });

  it('lists what was accepted, with the reason', () => {
    assert.match(
      JSON.stringify(part(sheetOf(sandmartin), 'can-it-fly')),
      /one short test hover, motors felt at once/,
    );
  });

  it('says what was assumed, and that checks see the script and not the craft', () => {
    const text = JSON.stringify(part(sheetOf(sandmartin), 'can-it-fly'));
    assert.match(text, /assumed/i);
    assert.match(text, /not the craft/);
  });
});

describe('what is wired where?', () => {
  it('shows devices on their ports, and what is free', () => {
    const text = JSON.stringify(part(sheetOf(sandmartin), 'wired-where'));
    for (const word of ['receiver', 'uart2', 'uart5', 'uart3']) assert.ok(text.includes(word), word);
  });

  it('marks a conflict', () => {
    const clash = sandmartin.replace('control-port = uart5', 'control-port = uart2');
    assert.match(part(sheetOf(clash), 'wired-where').answer, /conflict/);
  });
});

describe('which pack does what?', () => {
  it('has a column for every pack', () => {
    const text = JSON.stringify(part(sheetOf(sandmartin), 'which-pack'));
    for (const word of ['sprint', 'cruise', '25.2 V', '16.8 V', '3.6 V', '3.1 V'])
      assert.ok(text.includes(word), word);
  });
});
