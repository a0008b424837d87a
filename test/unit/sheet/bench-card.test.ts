import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { slotsIn } from '../../../server/src/checks/data/data-template';
import { benchCard } from '../../../server/src/sheet/bench-card/bench-card';
import type { BenchCard, CardStep } from '../../../server/src/sheet/bench-card/card';
import { benchCardMarkdown } from '../../../server/src/sheet/bench-card/markdown';
import { benchCardPage } from '../../../server/src/sheet/bench-card/page';
import { testCatalog } from '../../support/catalog';
import { craftOf, findingsOf } from '../../support/findings';
import { salesPage } from '../../support/sales-page';

const club = { 'club-habits.craft': readFileSync('test/demo/club-habits.craft', 'utf8') };
const read = (name: string) => readFileSync(`test/demo/${name}.craft`, 'utf8');
const racer = read('sandmartin');

function cardOf(text: string, packs?: readonly string[]): BenchCard {
  const craft = craftOf(text, club);
  return benchCard(craft, findingsOf(craft), packs);
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
  const demos = ['sandmartin', 'bittern', 'wagtail'].map((name) => [name, read(name)] as const);
  for (const [name, text] of [...demos, ['a sales page', salesPage] as const]) {
    it(`of ${name} has no gap in any sentence, with any pack and with all`, () => {
      const packs = craftOf(text, club).packs();
      for (const some of [...packs.map((pack) => [pack]), packs]) {
        const card = cardOf(text, some);
        const said = JSON.stringify(card);
        assert.doesNotMatch(said, /not set|"[^"]*unknown[^"]*"[^:]|[{}]\w+\.|undefined|NaN|\[\w+(, \w+)*\]"/);
        assert.doesNotMatch(said, /\[\[|\]\]"| {2}|\( | \)|\.\.[^.]/);
        assert.ok(steps(card).length > 18);
        assert.equal(new Set(steps(card).map(({ id }) => id)).size, steps(card).length);
        assert.deepEqual(JSON.parse(said), card);
      }
    });
  }

  for (const { id, title, do: what, see, when, eachPack = '' } of testCatalog.benchSteps) {
    it(`never puts a setting without a value into a sentence: ${id}`, () => {
      const needed = `${title} ${what} ${see} ${eachPack}`.replace(/ ?\[\[[^[\]]*\]\]/g, '');
      const loose = slotsIn(needed).filter((slot) => {
        const found =
          testCatalog.parameter(slot.replace(/<[a-z]+>/, 'arm')) ?? testCatalog.parameters.get(slot);
        // Not even one with a default: beside a board's text whose settings nobody knows, none is assumed.
        if (found === undefined) return false;
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
      if (one.stage === 'hover') continue;
      if (!/\barm\b|motor(s)? (turn|run)|transmitter off|pack on|bench supply|switch/i.test(one.do)) continue;
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
      'tilt-refused',
      '[switch.arm]\nchannel = 5\n[arming]\ntilt-limit = 40 deg\n',
      '[switch.arm]\nchannel = 5\n[arming]\ntilt-limit = 180 deg\n',
    ],
    ['loss-asked', '[receiver]\nlow = 990 us\n', '[signal-loss]\naction = descend\n'],
    ['voltage-asked', '[receiver]\nlow = 990 us\n', '[power]\nmeasure = off\n'],
    ['call-switch', '[find]\ndevice = buzzer\non = [switch]\n', '[find]\ndevice = buzzer\non = [low-pack]\n'],
    ['call-low', '[find]\ndevice = buzzer\non = [low-pack]\n', '[find]\ndevice = buzzer\non = [switch]\n'],
    ['call-idle', '[find]\ndevice = motors\non = [armed-idle]\n', '[find]\ndevice = motors\non = [switch]\n'],
    ['call-heard', '[find]\ndevice = motors\n', '[find]\npattern = chirp\n'],
    ['telemetry', '[telemetry]\nport = uart1\n', '[telemetry]\ninverted = on\n'],
    ['telemetry-lost', '[receiver]\nlink = crsf\n', '[receiver]\nlink = sbus\n'],
    ['telemetry-low', '[telemetry]\nlow-cell-call = 3.5 V\n', '[telemetry]\nport = uart1\n'],
    ['video-unlock', '[video]\nlocked = on\n', '[video]\nlocked = off\n'],
    [
      'video-unlock',
      '[video]\nlocked = on\npower = 80 mW\npower-steps.1 = 20 mW\n',
      '[video]\nlocked = on\npower = 20 mW\npower-steps.1 = 20 mW\n',
    ],
    [
      'video-locked',
      '[video]\nlocked = on\npower = 20 mW\npower-steps.1 = 20 mW\n',
      '[video]\nlocked = on\npower = 80 mW\npower-steps.1 = 20 mW\n',
    ],
    ['video-steps', '[video]\npower-steps.1 = 20 mW\n', '[video]\npower = 20 mW\n'],
    ['video-asked', '[video]\npower = 20 mW\n', '[video]\npower = 20 mW\nfrequency = 5800 MHz\n'],
    ['video-carrier', '[video]\nfrequency = 5800 MHz\n', '[video]\nfrequency = 5800 MHz\nchannel = 4\n'],
    ['loss-stops', '[signal-loss]\naction = motors-off\n', '[signal-loss]\naction = descend\n'],
    ['loss-acts', '[signal-loss]\naction = return\n', '[signal-loss]\naction = motors-off\n'],
    ['found', '[find]\ndevice = buzzer\non = [lost-link]\n', '[find]\ndevice = buzzer\non = [switch]\n'],
    ['righting', '[switch.righting]\nchannel = 9\n', '[switch.lights]\nchannel = 9\n'],
    ['recording', '[record]\nmedium = flash\n', '[record]\nmedium = off\n'],
    ['recording-kept', '[record]\nmedium = flash\n', '[record]\nmedium = off\n'],
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
      'device-supply transmitter',
      '[wire.transmitter]\nsupply = 9 V\n',
      '[wire.transmitter]\nsupply = 9 V\n[video]\nsupply = 9 V\n',
    ],
    ['overlay', '[overlay.cell-voltage]\nplace = [1, 1]\n', '[overlay.throttle]\nplace = [1, 1]\n'],
  ];
  for (const [id, needs, not] of cases) {
    it(`has the step ${id} for a craft that needs it, and for no other`, () => {
      assert.equal(has(whole + needs, id), true);
      assert.equal(has(whole + not, id), false);
    });
  }

  it('asks a whole craft for what every one has, and a part for nothing', () => {
    const bare = cardOf(whole);
    const names = (id: string, card: BenchCard) => step(card, id).asked.map(({ words }) => words);
    assert.deepEqual(names('bound', bare), [
      'Serial link of the receiver (receiver.link)',
      'Serial port of the receiver (receiver.port)',
    ]);
    assert.deepEqual(names('arms-not-by-itself', bare), [
      'Arm: channel of a switch function (switch.arm.channel)',
      'Arm: travel that turns a function on (switch.arm.on)',
    ]);
    assert.equal(step(bare, 'arms-not-by-itself').asked[1]?.unit, 'us');
    assert.doesNotMatch(step(bare, 'bound').see, /on uart|by the link/);
    for (const id of ['channel-order', 'motor-order', 'spin', 'idle', 'attitude'])
      assert.equal(step(bare, id).asked.length, 1, id);
    assert.deepEqual(names('bound', cardOf(racer)), []);
    const part = steps(cardOf('[gyro]\nrate = 8 kHz\n'));
    assert.ok(part.length <= 10 && part.every(({ asked, unknown }) => asked.length + unknown.length === 0));
    const ofMotors = cardOf('[motor]\norder = [front-left, front-right, rear-left, rear-right]\n');
    assert.match(step(ofMotors, 'motor-order').see, /front left, front right/);
  });

  it('says how a board is turned, and nothing of one that sits straight', () => {
    const seen = (yaw: string) => step(cardOf(`${whole}[board]\n${yaw}`), 'attitude').see;
    assert.match(seen('mount-yaw = 90 deg'), / The board is mounted turned by 90 deg\.$/);
    for (const straight of ['mount-yaw = 0 deg', '']) assert.doesNotMatch(seen(straight), /turned by/);
  });

  it('asks for each setting once', () => {
    for (const text of [whole, salesPage]) {
      const asked = steps(cardOf(text)).flatMap((one) => one.asked.map(({ words }) => words));
      assert.equal(new Set(asked).size, asked.length);
      assert.equal(asked.filter((words) => words.includes('(signal-loss.action)')).length, 1);
    }
  });

  it('says of an expected figure that is not known what to write for it', () => {
    const card = cardOf(salesPage.replace(/^pitch = .*\n/m, ''));
    const { unknown, withPacks } = step(card, 'test-hover');
    assert.match(
      unknown[0] ?? '',
      /^Throttle in the hover and current in the hover: not known yet\. Write .*prop\.pitch/,
    );
    assert.ok(withPacks.every(({ expected, readings }) => expected.length === 0 && readings.length === 2));
    assert.deepEqual(step(cardOf(salesPage), 'test-hover').unknown, []);
    const whole = cardOf(salesPage);
    assert.deepEqual(step(whole, 'first-flight').unknown, [
      'Land at, a cell: not known yet. Write power.land-cell.',
    ]);
    assert.deepEqual(step(whole, 'pack-after').unknown, [
      'No cell below: not known yet, for what is missing above.',
    ]);
  });

  it('says which packs alone a figure is not known with, and one reason once', () => {
    const some = cardOf(
      salesPage.replace('[pack.three]', '[power @ four]\nland-cell = 3.4 V\n\n[pack.three]'),
    );
    assert.deepEqual(step(some, 'first-flight').unknown, [
      'Land at, a cell, with two and three: not known yet. Write power.land-cell.',
    ]);
    const none = step(cardOf(salesPage.replace(/^pitch = .*\n/m, '')), 'test-hover').unknown;
    assert.equal(none.length, 1);
    assert.match(none[0] ?? '', /^Throttle in the hover and current in the hover: not known yet\. Write /);
  });

  it('has all packs on one card: no step twice, and each with its own figures where they differ', () => {
    const card = cardOf(salesPage);
    assert.deepEqual(card.packs, ['two', 'three', 'four']);
    assert.deepEqual(card.about, ['packs two, three and four']);
    const { withPacks, expected, readings, do: what } = step(card, 'first-power');
    assert.deepEqual(
      withPacks.map(({ pack, expected: [full] }) => [pack, full?.text]),
      [
        ['two', '8.4 V'],
        ['three', '12.6 V'],
        ['four', '16.8 V'],
      ],
    );
    assert.deepEqual([expected, readings], [[], []]);
    assert.match(what, /Once with each pack, the one with the fewest cells first\.$/);
    assert.deepEqual(
      withPacks.map(({ readings: [own] }) => own?.id),
      ['first-power 1 two', 'first-power 1 three', 'first-power 1 four'],
    );
    assert.equal(step(card, 'no-short').withPacks.length, 0);
    // On a card for one pack nothing is told pack by pack.
    const alone = cardOf(salesPage, ['three']);
    assert.ok(steps(alone).every((one) => one.withPacks.length === 0 && one.only === null));
    assert.equal(step(alone, 'first-power').expected[0]?.text, '12.6 V');
    assert.doesNotMatch(step(alone, 'first-power').do, /each pack/);
  });

  it('says once what is the same with every pack', () => {
    const { expected, withPacks } = step(cardOf(read('bittern')), 'first-power');
    assert.deepEqual(expected, [{ words: 'A full pack at rest', text: '25.2 V', span: null }]);
    assert.deepEqual(
      withPacks.map((one) => one.expected.map(({ text }) => text)),
      [['21.6 V'], ['22.2 V']],
    );
  });

  it('says of each pack what a sentence has of it, and which packs alone need a step', () => {
    const packs = '[pack.a]\ncells = 3\n[pack.b]\ncells = 4\n[motor]\nidle = 6 %\n';
    const differing = cardOf(`${whole}${packs}[motor @ b]\nidle = 5 %\n`);
    assert.match(step(differing, 'idle').see, /smoothly at 6 % with a, 5 % with b, start together/);
    const loss = `${whole}${packs}[signal-loss]\naction = motors-off\n[signal-loss @ b]\naction = descend\n`;
    const { only, withPacks } = step(cardOf(loss), 'loss-acts');
    assert.deepEqual(only, ['b']);
    assert.deepEqual(
      withPacks.map(({ pack, readings }) => [pack, readings.length]),
      [['b', 1]],
    );
    assert.deepEqual(step(cardOf(loss), 'loss-stops').only, ['a']);
    assert.equal(step(cardOf(loss), 'bound').only, null);
  });

  it('tells of telemetry wherever the receiver’s own link brings it back', () => {
    const back = [...testCatalog.links.values()].filter(
      ({ uses, directions }) =>
        uses.includes('receiver') && uses.includes('telemetry') && directions === 'both',
    );
    assert.ok(back.length > 0);
    for (const { id, any = [] } of testCatalog.benchSteps)
      if (id === 'telemetry' || id === 'telemetry-lost')
        assert.deepEqual(
          any.filter((text) => text.startsWith('receiver.link')),
          back.map(({ name }) => `receiver.link is ${name}`),
        );
  });

  it('has room for what each power step sends, and names local rules where a transmitter is unlocked', () => {
    const steps2 = 'power-steps.1 = 20 mW\npower-steps.2 = 20 dBm\n';
    const card = cardOf(`${whole}[video]\npower = 100 mW\nlocked = on\n${steps2}`);
    const { readings, see, do: what } = step(card, 'video-steps');
    assert.deepEqual(
      readings.map(({ words, unit }) => [words, unit]),
      [
        ['Step 1, 20 mW', 'mW'],
        ['Step 2, 100 mW', 'mW'],
      ],
    );
    assert.match(see, /back at 100 mW, and/);
    const unlock = step(card, 'video-unlock');
    assert.match(unlock.see, /lowest step, 20 mW, until/);
    for (const text of [what, unlock.do]) assert.match(text, /local radio rules and your licence allow/);
    const ids = steps(card).map(({ id }) => id);
    assert.ok(ids.indexOf('video-unlock') < ids.indexOf('video-steps'));
  });

  it('has the arm switch before the other switches', () => {
    const ids = steps(cardOf(racer)).flatMap(({ id }) => (id.startsWith('switch-range') ? [id] : []));
    assert.deepEqual(ids, ['switch-range arm', 'switch-range self-level', 'switch-range righting']);
  });

  it('has room for each reading and for a signature under each part, on paper too', () => {
    const card = cardOf(racer);
    const room = card.parts.flatMap(({ steps: own, signed, noticed }) => [
      ...own.flatMap((one) => [
        ...one.readings,
        ...one.withPacks.flatMap(({ readings }) => readings),
        ...one.asked,
      ]),
      ...signed,
      noticed,
    ]);
    assert.equal(new Set(room.map(({ id }) => id)).size, room.length);
    assert.equal(benchCardPage(card).match(/class="line"/g)?.length, room.length);
    assert.equal(benchCardMarkdown(card).match(/: (?:\\_){12}/g)?.length, room.length);
    assert.equal(card.parts.length, benchCardPage(card).match(/Done by/g)?.length);
  });

  it('says what is expected, from low to high, and what was assumed', () => {
    const card = cardOf(racer);
    const [hover] = step(card, 'test-hover').withPacks[0]?.expected ?? [];
    assert.deepEqual([hover?.text, hover?.span], ['26.3 %', '21.5–32.8']);
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

  it('as Markdown has a box for every step', () => {
    const card = cardOf(racer);
    const markdown = benchCardMarkdown(card);
    assert.equal(markdown.match(/^- \[ \] /gm)?.length, steps(card).length);
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
