import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { CraftView } from '../../../../server/src/craft/view';
import {
  answerFault,
  type FlightAnswer,
  flightEdit,
  flightForm,
  flownRecord,
} from '../../../../server/src/features/flight/note-flight';
import { learnedPart } from '../../../../server/src/sheet/learned';
import { testCatalog } from '../../../support/catalog';
import { craftOf, findingsOf } from '../../../support/findings';
import { snapshotOf } from '../../../support/snapshot';

const club = { 'club-habits.craft': readFileSync('test/demo/club-habits.craft', 'utf8') };
const racer = readFileSync('test/demo/sandmartin.craft', 'utf8');
const today = '2026-11-25';
const snapshot = (text: string) => snapshotOf(text, club).snapshot;

function noted(text: string, answers: readonly FlightAnswer[], name = `day-${today}`): string {
  const here = snapshot(text);
  const { start, end, text: newText } = flightEdit(here, [{ name, answers }]);
  here.script.edit([{ start, end, text: newText }]);
  return here.script.document.text();
}

function recordAfter(text: string): string {
  return JSON.stringify(flownRecord(snapshot(text), 'first', 'sprint'));
}

describe('noting a flight', () => {
  it('asks only what the catalogue knows, and finds a name that is free', () => {
    const form = flightForm(snapshot(racer), null, today);
    assert.equal(form.name, `day-${today}`);
    assert.deepEqual(form.packs, ['sprint', 'cruise']);
    assert.ok(form.questions.length >= 6);
    for (const { setting, example } of form.questions)
      assert.equal(answerFault(testCatalog, { setting, typed: example }), null, setting);
    const again = noted(racer, [{ setting: 'date', typed: today }]);
    assert.equal(flightForm(snapshot(again), null, today).name, `day-${today}-2`);
  });

  it('adds an aligned section after the last flight, and units and quotes where they lack', () => {
    const text = noted(racer, [
      { setting: 'date', typed: today },
      { setting: 'motor-temperature', typed: '58' },
      { setting: 'note', typed: ' said "fine"\\ ' },
    ]);
    const wanted = [
      'note              = "tail wobbles leaving the third tree"',
      '',
      '[flight.day-2026-11-25]',
      'date              = 2026-11-25',
      'motor-temperature = 58 degC',
      'note              = "said \\"fine\\"\\\\"',
    ].join('\n');
    assert.ok(text.includes(wanted), text.slice(-300));
    const craft = craftOf(text, club);
    assert.deepEqual(
      findingsOf(craft).filter(({ level }) => level === 'must-fix'),
      [],
    );
  });

  it('adds it at the end of a script that has none, empty or without a last line end', () => {
    for (const text of ['', '\n', '[gyro]\nrate = 8 kHz', '[gyro]\r\nrate = 8 kHz\r\n']) {
      const after = noted(text, [{ setting: 'date', typed: today }]);
      assert.ok(after.startsWith(text), JSON.stringify(after));
      assert.match(after, /(^|\n)\[flight\.day-2026-11-25\]\r?\ndate = 2026-11-25\r?\n$/);
    }
  });

  it('refuses an answer in the script’s own words', () => {
    assert.match(answerFault(testCatalog, { setting: 'minutes', typed: '5 V' }) ?? '', /time/);
    assert.match(answerFault(testCatalog, { setting: 'packs-flown', typed: '2.5' }) ?? '', /whole/);
    assert.notEqual(answerFault(testCatalog, { setting: 'motor-temperature', typed: '900' }), null);
    assert.notEqual(answerFault(testCatalog, { setting: 'minutes', typed: 'long' }), null);
    assert.equal(answerFault(testCatalog, { setting: 'minutes', typed: '5' }), null);
  });

  it('takes any words for a note that fit, and they come back as they were', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 80, unit: 'grapheme' }), (words) => {
        const typed = words.replace(/\p{Cc}/gu, ' ');
        fc.pre(typed.trim() !== '' && answerFault(testCatalog, { setting: 'note', typed }) === null);
        const text = noted(racer, [{ setting: 'note', typed }]);
        const view = new CraftView(craftOf(text, club), null);
        assert.equal(view.text(`flight.day-${today}.note`), typed.trim().replace(/\s+/g, ' '));
      }),
      { numRuns: 100 },
    );
  });

  it('tells what changed since the last flight, by the record beside the script', () => {
    const slower = racer.replace('cutoff = 2.5 * quiet', 'cutoff = 1.5 * quiet');
    const { changed, isRecordBroken } = flightForm(snapshot(slower), recordAfter(racer), today);
    assert.deepEqual([changed, isRecordBroken], ['gyro.filter.1.cutoff 225 Hz → 135 Hz', false]);
    assert.equal(flightForm(snapshot(racer), recordAfter(racer), today).changed, '');
    const silent = racer.replace(/^idle( +)= 6 %\n/m, '');
    assert.match(flightForm(snapshot(silent), recordAfter(racer), today).changed, /^motor\.idle 6 % → /);
  });

  it('says when the record can’t be read, and cuts a long list to what the script takes', () => {
    assert.equal(flightForm(snapshot(racer), '{"version": 2}', today).isRecordBroken, true);
    const { changed } = flightForm(snapshot('[craft]\nname = "x"\n'), recordAfter(racer), today);
    assert.ok(changed.length <= 300 && changed.endsWith('…'));
    assert.equal(answerFault(testCatalog, { setting: 'changed', typed: changed }), null);
  });
});

describe('what did I learn?', () => {
  it('shows flights newest first, with readings beside estimates', () => {
    const text = noted(racer, [
      { setting: 'date', typed: today },
      { setting: 'pack', typed: 'sprint' },
      { setting: 'hover-throttle', typed: '27 %' },
      { setting: 'changed', typed: 'new propellers' },
    ]);
    const { flights, answer } = learnedPart(new CraftView(craftOf(text, club), 'cruise'));
    assert.equal(answer, '2 flights noted');
    assert.deepEqual(
      flights.map(({ date, pack, changed }) => [date, pack, changed]),
      [
        [today, 'sprint', 'new propellers'],
        ['2026-05-14', 'sprint', null],
      ],
    );
    const [hover] = flights[0]?.facts ?? [];
    assert.deepEqual([hover?.title, hover?.text], ['hover throttle', '27 %']);
    assert.match(
      flights[0]?.measured[0] ?? '',
      /^hover throttle: you measured 27 %(?: on [-\d]+)?, the estimate was \d[\d.]* %: corrected$/,
    );
    assert.deepEqual(flights[1]?.measured, []);
    assert.ok(flights.every(({ target }) => target !== null));
  });

  it('says that none is noted', () => {
    const { flights, answer } = learnedPart(new CraftView(craftOf('[craft]\nname = "x"\n', club), null));
    assert.deepEqual([flights, answer], [[], 'no flight noted']);
  });
});
