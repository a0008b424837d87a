import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { slotsIn } from '../../../server/src/checks/data/data-template';
import { type BenchCard, benchCard, type CardStep } from '../../../server/src/sheet/bench-card/bench-card';
import { benchCardMarkdown } from '../../../server/src/sheet/bench-card/markdown';
import { benchCardPage } from '../../../server/src/sheet/bench-card/page';
import { testCatalog } from '../../support/catalog';
import { craftOf, findingsOf } from '../../support/findings';

const club = { 'club-habits.craft': readFileSync('test/demo/club-habits.craft', 'utf8') };
const read = (name: string) => readFileSync(`test/demo/${name}.craft`, 'utf8');
const racer = read('sandmartin');

function cardOf(text: string, pack: string | null = null): BenchCard {
  const craft = craftOf(text, club);
  return benchCard(craft, findingsOf(craft), pack ?? craft.packs()[0] ?? null);
}

function steps({ parts }: BenchCard): readonly CardStep[] {
  return parts.flatMap((part) => part.steps);
}

function step(card: BenchCard, id: string): CardStep {
  return steps(card).find((one) => one.id === id) ?? assert.fail(`no step ${id}`);
}

function has(text: string, id: string): boolean {
  return steps(cardOf(text)).some((one) => one.id === id);
}

const whole = '[craft]\nname = "x"\n';

describe('the bench card', () => {
  for (const name of ['sandmartin', 'bittern', 'wagtail']) {
    it(`of ${name} has no gap in any sentence, with any pack`, () => {
      for (const pack of craftOf(read(name), club).packs()) {
        const card = cardOf(read(name), pack);
        const text = JSON.stringify(card);
        assert.doesNotMatch(
          text,
          /not set|unknown|[{}]\w+\.|undefined|NaN|\[\w+(, \w+)*\]"/,
          text.slice(0, 0),
        );
        assert.ok(steps(card).length > 20);
        assert.equal(new Set(steps(card).map(({ id }) => id)).size, steps(card).length);
        assert.deepEqual(JSON.parse(text), card);
      }
    });
  }

  for (const { id, title, do: what, see, when } of testCatalog.benchSteps) {
    it(`never puts a setting without a value into a sentence: ${id}`, () => {
      const needed = `${title} ${what} ${see}`.replace(/ ?\[\[[^[\]]*\]\]/g, '');
      const loose = slotsIn(needed).filter((slot) => {
        const found =
          testCatalog.parameter(slot.replace(/<[a-z]+>/, 'arm')) ?? testCatalog.parameters.get(slot);
        if (found === undefined || found.parameter.default !== null) return false;
        return !when.some((condition) => condition.startsWith(`${slot} `));
      });
      assert.deepEqual(loose, []);
    });
  }

  it('leaves out what hangs on a setting that is not set', () => {
    const bare = `${whole}[signal-loss]\naction = motors-off\n`;
    assert.match(step(cardOf(bare), 'loss-stops').see, /^Every motor stops, or a moment later/);
    assert.match(
      step(cardOf(`${bare}hold = 350 ms\n`), 'loss-stops').see,
      /^Every motor stops after 350 ms, or/,
    );
  });

  it('goes in the order of the job: propellers off first, on only in the last part', () => {
    const { parts } = cardOf(racer);
    assert.deepEqual(
      parts.map(({ stage }) => stage),
      ['wire', 'obey', 'turn', 'see', 'safe', 'remember', 'hover'],
    );
    assert.equal(parts[0]?.steps[0]?.id, 'propellers-off');
    const last = parts.at(-1)?.steps.map(({ id }) => id) ?? [];
    assert.equal(last[0], 'propellers-on');
    for (const { stage, steps: own } of parts)
      for (const { do: what } of own) if (stage !== 'hover') assert.doesNotMatch(what, /propellers on/i);
  });

  it('keeps propellers off by name wherever a motor may turn', () => {
    for (const one of testCatalog.benchSteps) {
      if (one.stage === 'hover' || !/\barm\b|motor(s)? (turn|run)|transmitter off/i.test(one.do)) continue;
      assert.match(one.do, /propellers off|Propellers off/, one.id);
    }
  });

  // For each step that not every craft needs: a script that needs it, and the nearest that does not.
  const cases: readonly (readonly [id: string, needs: string, not: string])[] = [
    [
      'switch-range locate',
      '[switch.locate]\nchannel = 8\non = 1350..1650 us\n',
      '[switch.locate]\nchannel = 8\n',
    ],
    [
      'arms-not-by-itself',
      '[switch.arm]\nchannel = 5\non = 1750..2050 us\n',
      '[switch.lights]\nchannel = 5\non = 1750..2050 us\n',
    ],
    [
      'tilt-refused',
      '[switch.arm]\nchannel = 5\n[arming]\ntilt-limit = 40 deg\n',
      '[switch.arm]\nchannel = 5\n[arming]\ntilt-limit = 180 deg\n',
    ],
    ['loss-stops', '[signal-loss]\naction = motors-off\n', '[signal-loss]\naction = descend\n'],
    ['loss-acts', '[signal-loss]\naction = return\n', '[signal-loss]\naction = motors-off\n'],
    ['found', '[find]\ndevice = buzzer\non = [lost-link]\n', '[find]\ndevice = buzzer\non = [switch]\n'],
    ['righting', '[switch.righting]\nchannel = 9\n', '[switch.lights]\nchannel = 9\n'],
    ['recording', '[record]\nmedium = flash\n', '[record]\nmedium = off\n'],
    ['current-told', '[power]\ncurrent-measure = shunt\n', '[power]\ncurrent-measure = reckoned\n'],
    [
      'speed-answers',
      '[esc]\nsignal = dshot300\nspeed-feedback = on\n',
      '[esc]\nsignal = dshot300\nspeed-feedback = off\n',
    ],
    ['position', '[position]\nport = uart4\n', '[position]\nprotocol = nmea\n'],
    ['video-control', '[video]\ncontrol-port = uart5\n', '[video]\ncontrol = button\n'],
    ['device-supply receiver', '[wire.receiver]\nsupply = 5 V\n', '[wire.receiver]\ncurrent = 100 mA\n'],
    [
      'motor-order',
      '[motor]\norder = [front-left, front-right, rear-left, rear-right]\n',
      '[motor]\npoles = 14\n',
    ],
    ['overlay', '[overlay.cell-voltage]\nplace = [1, 1]\n', '[overlay.throttle]\nplace = [1, 1]\n'],
  ];
  for (const [id, needs, not] of cases) {
    it(`has the step ${id} for a craft that needs it, and for no other`, () => {
      assert.equal(has(whole + needs, id), true);
      assert.equal(has(whole + not, id), false);
    });
  }

  it('says what is expected, from low to high, and what was assumed', () => {
    const card = cardOf(racer);
    const [hover] = step(card, 'test-hover').expected;
    assert.deepEqual([hover?.text, hover?.span], ['25.4 %', '23.5–27.9']);
    assert.deepEqual(step(card, 'warm-motors').assumed, ['motor.temperature-limit 70 degC']);
    assert.match(step(card, 'switch-range arm').see, /from 1750 to 2050 us/);
    assert.match(step(card, 'motor-order').see, /front left, front right, rear left, rear right/);
  });

  it('stands on what must be mended first, and on accepted risks with their reasons', () => {
    const card = cardOf(racer.replace(/cells-limit( *)= 6/, 'cells-limit$1= 5'));
    assert.ok(card.first.some(({ message }) => message.includes('motors take 5 cells')));
    assert.deepEqual(
      cardOf(racer).accepted.map(({ reason }) => reason),
      ['one short test hover, motors felt at once'],
    );
    assert.deepEqual(cardOf(racer).first, []);
  });

  it('leaves out a step whose line can’t be read: that line says so itself', () => {
    const broken = racer.replace('tilt-limit = 40 deg', 'tilt-limit = 40 V');
    assert.equal(has(broken, 'tilt-refused'), false);
    assert.ok(cardOf(broken).first.length > 0);
  });

  it('leads to the line that a step proves', () => {
    const { target } = step(cardOf(racer), 'motor-order');
    assert.match(racer.split('\n')[target?.line ?? -1] ?? '', /^order/);
  });

  it('makes nothing from a script markup, in neither form', () => {
    const name = '<img src=x>&\\"**_[x](y)`';
    const card = cardOf(`[craft]\nname = "<img src=x>&**_[x](y)\`"\n`);
    const page = benchCardPage(card);
    assert.doesNotMatch(page, /<img/);
    assert.match(page, /&lt;img src=x&gt;&amp;\*\*_/);
    const markdown = benchCardMarkdown(card);
    assert.match(markdown, /^# Bench card: \\<img src=x\\>&\\\*\\\*\\_\\\[x\\\]\\\(y\\\)\\`/);
    assert.ok(name.length > 0);
  });

  it('as a page fetches nothing and runs nothing', () => {
    const page = benchCardPage(cardOf(racer));
    assert.doesNotMatch(page, /<script|<link|url\(|https?:|<iframe/i);
    assert.match(page, /default-src 'none'/);
  });

  it('as Markdown has a box for every step and a line for every reading', () => {
    const card = cardOf(racer);
    const markdown = benchCardMarkdown(card);
    assert.equal(markdown.match(/^- \[ \] /gm)?.length, steps(card).length);
    const readings = steps(card).flatMap((one) => one.readings);
    assert.equal(markdown.match(/: \\_\\_/g)?.length, readings.length);
  });

  it('carries the cautions', () => {
    const text = cardOf(racer).cautions.join(' ');
    for (const caution of [
      /propellers off/i,
      /lithium/i,
      /local radio rules/i,
      /local aviation/i,
      /estimates/i,
    ])
      assert.match(text, caution);
  });
});
