import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { benchCard } from '../../../server/src/sheet/bench-card/bench-card';
import type { BenchCard, CardStep } from '../../../server/src/sheet/bench-card/card';
import { benchCardMarkdown } from '../../../server/src/sheet/bench-card/markdown';
import { benchCardPage } from '../../../server/src/sheet/bench-card/page';
import {
  benchParts,
  type CardKept,
  isTicked,
  nothingTaken,
  notTicked,
  notWritten,
  progress,
  progressLine,
  takenFrom,
  takenTogether,
  tickLost,
  withReading,
  withTick,
  withWritten,
} from '../../../server/src/sheet/bench-card/taken';
import { craftOf, findingsOf } from '../../support/findings';

const club = { 'club-habits.craft': readFileSync('test/demo/club-habits.craft', 'utf8') };
const racer = readFileSync('test/demo/sandmartin.craft', 'utf8');

function cardOf(text: string): BenchCard {
  const craft = craftOf(text, club);
  return benchCard(craft, findingsOf(craft));
}

const stepsOf = ({ parts }: BenchCard) => parts.flatMap(({ steps }) => steps);
const step = (card: BenchCard, id: string): CardStep =>
  stepsOf(card).find((one) => one.id === id) ?? assert.fail(`no step ${id}`);
const ticked = (card: BenchCard, ids: readonly string[]): CardKept =>
  ids.reduce((taken, id) => withTick(taken, step(card, id), true), nothingTaken);

const card = cardOf(racer);

describe('a bench card that is ticked', () => {
  it('keeps a tick while the step says the same, and takes it back', () => {
    const taken = ticked(card, ['propellers-off', 'no-short']);
    assert.ok(isTicked(step(cardOf(`${racer}\n# a comment\n`), 'no-short'), taken));
    assert.deepEqual(progress(stepsOf(card), taken), { done: 2, all: stepsOf(card).length });
    assert.ok(!isTicked(step(card, 'no-short'), withTick(taken, step(card, 'no-short'), false)));
    assert.equal(tickLost(step(card, 'look-over'), taken), null);
  });

  it('loses the tick of a step whose figure changed, says what it said, and has it again with the old figure', () => {
    const taken = ticked(card, ['propellers-off', 'test-hover']);
    const heavier = cardOf(racer.replace('212 g', '260 g'));
    const before = step(card, 'test-hover').withPacks[0]?.expected[0]?.text ?? '';
    assert.notEqual(step(heavier, 'test-hover').withPacks[0]?.expected[0]?.text, before);
    assert.ok(!isTicked(step(heavier, 'test-hover'), taken));
    assert.ok(isTicked(step(heavier, 'propellers-off'), taken));
    const said = tickLost(step(heavier, 'test-hover'), taken) ?? '';
    assert.match(
      said,
      /^This has changed since it was ticked: do it again\. It said “Throttle in the hover, sprint: /,
    );
    assert.ok(said.includes(before), said);
    assert.ok(isTicked(step(card, 'test-hover'), taken));
  });

  it('loses it for a value within a sentence, and for a pack that joined', () => {
    const taken = ticked(card, ['switch-range arm', 'first-power']);
    const [, on = ''] = /\[switch\.arm\][^[]*?\non += (.+)/.exec(racer) ?? [];
    assert.notEqual(on, '');
    const moved = cardOf(racer.replace(on, '1710..2010 us'));
    assert.match(tickLost(step(moved, 'switch-range arm'), taken) ?? '', /It said “It is on from /);
    const third = cardOf(`${racer}\n[pack.winter]\nchemistry = lipo\ncells = 5\ncapacity = 650 mAh\n`);
    assert.match(tickLost(step(third, 'first-power'), taken) ?? '', /do it again/);
  });

  it('says first what is not ticked: whole parts by their names, and no more than a few', () => {
    const [wire] = card.parts;
    assert.ok(wire);
    const all = ticked(
      card,
      wire.steps.map(({ id }) => id),
    );
    assert.equal(progressLine(card, nothingTaken), null);
    const line = progressLine(card, all) ?? '';
    assert.match(
      line,
      /^Not ticked: all of “Make it obey”, .*all of “With propellers, outdoors”\. \d+ of \d+ steps are\.$/,
    );
    assert.match(
      notTicked({ parts: [wire] }, ticked(card, ['no-short']), 2),
      /^“Propellers off”, “Look it over” and \d more$/,
    );
    const done = ticked(
      card,
      stepsOf(card).map(({ id }) => id),
    );
    assert.equal(progressLine(card, done), `All ${stepsOf(card).length} steps are ticked.`);
    assert.ok(benchParts(card).every(({ stage }) => stage !== 'hover'));
    assert.equal(benchParts(card).length, card.parts.length - 1);
  });

  it('prints as before while nothing is taken, and with ticks and readings once there are any', () => {
    assert.equal(benchCardPage(card, nothingTaken), benchCardPage(card));
    assert.doesNotMatch(benchCardPage(card), /✓|Not ticked/);
    const taken = withReading(
      withReading(ticked(card, ['no-short']), 'no-short 1', '12 kohm'),
      'first-power 1 sprint',
      '<25.1',
    );
    const page = benchCardPage(card, taken);
    assert.equal(page.match(/<span class="box">✓<\/span>/g)?.length, 1);
    assert.match(page, /<p><b>Not ticked: /);
    assert.ok(page.indexOf('Not ticked: ') < page.indexOf('class="cautions"'));
    assert.match(page, /<span class="line">12 kohm<\/span> <\/span>/);
    assert.match(page, /<span class="line">&lt;25\.1<\/span>/);
    const markdown = benchCardMarkdown(card, taken);
    assert.match(markdown, /- \[x\] \*\*No short circuit\*\*/);
    assert.match(markdown, /At the battery pads after five seconds: 12 kohm$/m);
    assert.equal(benchCardMarkdown(card, nothingTaken), benchCardMarkdown(card));
  });

  it('knows which readings are in the script: another day’s come alone, and one that was changed comes again', () => {
    const evening = withReading(withReading(nothingTaken, 'no-short 1', '9'), 'wire done-on', ' ');
    assert.deepEqual(notWritten(evening), [{ id: 'no-short 1', value: '9' }]);
    const morning = withReading(withWritten(evening, notWritten(evening)), 'test-hover 1 sprint', '27');
    assert.deepEqual(notWritten(morning), [{ id: 'test-hover 1 sprint', value: '27' }]);
    const again = withReading(withWritten(morning, notWritten(morning)), 'no-short 1', '12');
    assert.deepEqual(notWritten(again), [{ id: 'no-short 1', value: '12' }]);
    assert.deepEqual(notWritten(withWritten(again, notWritten(again))), []);
  });

  it('has what was taken on it in two tabs: of each row the change that was made last', () => {
    const before = withReading(ticked(card, ['propellers-off', 'look-over']), 'no-short 1', '9');
    const mine = withReading(withTick(before, step(card, 'no-short'), true), 'wire done-on', '2026-05-01');
    const theirs = withReading(withTick(before, step(card, 'look-over'), false), 'no-short 1', '12');
    const all = takenTogether(before, mine, theirs);
    assert.deepEqual(all.ticked.map(({ id }) => id).sort(), ['no-short', 'propellers-off']);
    assert.deepEqual(
      new Map(all.readings.map(({ id, value }) => [id, value])),
      new Map([
        ['no-short 1', '12'],
        ['wire done-on', '2026-05-01'],
      ]),
    );
    assert.deepEqual(
      takenTogether(before, nothingTaken, theirs).readings,
      [],
      'what was cleared here is cleared',
    );
    assert.deepEqual(takenTogether(before, mine, before).readings.length, 2);
    assert.deepEqual(takenTogether(mine, mine, theirs), theirs, 'nothing of it is mine');
    const inScript = takenTogether(before, withWritten(before, before.readings), before);
    assert.deepEqual(inScript.written, before.readings);
  });

  it('is read back from whatever was kept, and what has another form is left out', () => {
    const taken = withReading(ticked(card, ['no-short']), 'no-short 1', '9');
    assert.deepEqual(takenFrom(JSON.parse(JSON.stringify(taken))), taken);
    for (const kept of [undefined, null, 7, 'x', [], { ticked: 'no-short' }, { readings: [null, { id: 1 }] }])
      assert.deepEqual(takenFrom(kept), nothingTaken);
    const mixed = { ticked: ['no-short', { id: 'a', told: [1] }, ...taken.ticked], readings: taken.readings };
    assert.deepEqual(takenFrom(mixed), taken);
  });
});
