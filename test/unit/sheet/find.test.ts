import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { CraftView } from '../../../server/src/craft/view';
import { figureOf } from '../../../server/src/figures';
import { axisNames } from '../../../server/src/figures/axis-names';
import { find } from '../../../server/src/sheet/find/find';
import { heldText, readHold } from '../../../server/src/sheet/find/hold-text';
import { movablesOf, write } from '../../../server/src/sheet/find/movable';
import { Tuning } from '../../../server/src/sheet/find/tuning';
import { wishFor } from '../../../server/src/sheet/find/wish';
import { setupLines } from '../../../server/src/sheet/find/work';
import { craftOf, findingsOf } from '../../support/findings';
import { club, demo, demos, found, foundIn } from '../../support/found-values';

function near(one: number, other: number, share = 1e-6): boolean {
  return Math.abs(one - other) <= share * Math.max(Math.abs(one), Math.abs(other), 1e-9);
}

describe('a setup that is tried', () => {
  for (const name of demos)
    it(`comes to what the figures of ${name} say once it is written`, () => {
      const craft = demo(name);
      const wish = wishFor(craft, { moves: ['filters', 'notches', 'gains'] });
      const movables = movablesOf(craft, wish);
      const tuning = new Tuning(craft.copied(), movables, wish.packs);
      const setups = fc.tuple(...movables.map(({ values }) => fc.nat(values.length - 1)));
      fc.assert(
        fc.property(setups, (setup) => {
          const written = craft.copied();
          write(written, setupLines(movables, setup));
          for (const reading of tuning.readings(setup)) {
            const view = new CraftView(written, reading.pack);
            const likely = (id: string) => figureOf(view, id)?.likely ?? 0;
            const delay = likely('gyro-filter-delay') + likely('derivative-filter-delay');
            assert.ok(near(reading.delay, delay, 2e-3), `delay ${reading.delay}, ${delay}`);
            const noise = Math.max(...axisNames.map((axis) => likely(`${axis}-noise-gain`)));
            assert.ok(near(reading.noise, noise, 5e-3), `noise ${reading.noise}, ${noise}`);
            for (const { id, left } of reading.tones)
              assert.ok(Math.abs(left - likely(id)) < 0.05, `${id} ${left}, ${likely(id)}`);
          }
        }),
        { numRuns: 12 },
      );
    });

  it('is weighed by the means of its readings', () => {
    const craft = demo('sandmartin');
    const wish = wishFor(craft, { moves: ['filters', 'notches', 'gains'] });
    const movables = movablesOf(craft, wish);
    const tuning = new Tuning(craft.copied(), movables, wish.packs);
    const setups = fc.tuple(...movables.map(({ values }) => fc.nat(values.length - 1)));
    fc.assert(
      fc.property(setups, (setup) => {
        const readings = tuning.readings(setup);
        const mean = (of: (one: (typeof readings)[number]) => number) =>
          readings.reduce((sum, one) => sum + of(one), 0) / readings.length;
        const missed = readings.flatMap(({ tones }) => tones.map(({ left }) => Math.max(0, left + 12)));
        const weighed = tuning.weigh(setup, -12);
        assert.ok(
          near(
            weighed.delay,
            mean(({ delay }) => delay),
          ),
        );
        assert.ok(
          near(
            weighed.noise,
            mean(({ noise }) => noise),
          ),
        );
        assert.ok(
          near(
            weighed.missed,
            missed.reduce((sum, one) => sum + one, 0),
          ),
        );
      }),
      { numRuns: 40 },
    );
  });

  it('has margins that the figures have, wherever those are least', () => {
    const craft = demo('bittern');
    const wish = wishFor(craft);
    const tuning = new Tuning(craft.copied(), movablesOf(craft, wish), wish.packs);
    const least = tuning.loops.leastMargins(tuning.now);
    for (const pack of craft.packs()) {
      const view = new CraftView(craft, pack);
      const told = axisNames.map((axis) => figureOf(view, `${axis}-phase-margin`)?.likely ?? 180);
      // The figures are told where a loop is nearest to swinging, which need not be where its phase is least.
      const { phase } = least.get(pack) ?? assert.fail(pack);
      assert.ok(phase <= Math.min(...told) + 0.1 && phase > Math.min(...told) - 8, `${phase}, ${told}`);
    }
  });
});

describe('what is proposed', () => {
  for (const name of demos)
    it(`holds for ${name} what is asked, raises nothing that weighs, and is one edit`, () => {
      const craft = demo(name);
      const before = findingsOf(craft);
      const { proposals, wish } = foundIn(name);
      assert.deepEqual(
        proposals.map(({ id }) => id),
        ['least-delay', 'middle', 'quietest'],
      );
      for (const proposal of proposals) {
        const written = craft.copied();
        written.changed(written.root.edit(proposal.edits));
        assert.equal(written.root.document.text(), proposal.text);
        assert.ok(proposal.settings.length > 0 && proposal.moved.length > 0);
        const heavy = (findings: typeof before) =>
          findings.filter(({ level }) => level === 'must-fix' || level === 'risk').length;
        assert.ok(heavy(findingsOf(written)) <= heavy(before));
        assert.deepEqual(
          proposal.gained.filter(({ level }) => level !== 'note' && level !== 'tidy'),
          [],
        );
        for (const pack of wish.packs) {
          const view = new CraftView(written, pack);
          for (const tone of ['hover-tone-left', 'hover-blade-tone-left', 'full-tone-left'])
            assert.ok((figureOf(view, tone)?.likely ?? 0) <= -12 + 0.01, `${proposal.id} ${tone}`);
          for (const axis of axisNames) {
            assert.ok((figureOf(view, `${axis}-phase-margin`)?.likely ?? 180) >= 39.9, proposal.id);
            assert.ok((figureOf(view, `${axis}-gain-margin`)?.likely ?? 9) >= 1.99, proposal.id);
          }
        }
      }
    });

  it('gives up noise for delay from one to the next', () => {
    for (const name of demos) {
      const { proposals, front } = foundIn(name);
      for (const points of [proposals.map(({ point }) => point), front])
        for (const [at, { delay, noise }] of points.entries()) {
          const last = points[at - 1];
          if (last !== undefined) assert.ok(delay > last.delay && noise < last.noise, name);
        }
    }
  });

  it('writes only what the board can hold', () => {
    for (const name of demos)
      for (const { gained } of foundIn(name).proposals)
        assert.ok(!gained.some(({ id }) => id === 'line/board-step' || id === 'line/board-limit'), name);
  });

  it('is for the packs that are asked for alone', () => {
    const craft = demo('sandmartin');
    const { proposals } = found(craft, { packs: ['cruise'] });
    assert.ok(proposals.length > 0);
    for (const { moved, settings } of proposals) {
      assert.ok(settings.every(({ packs }) => packs.join() === 'cruise'));
      for (const { packs, id } of moved) {
        const sprint = packs.find(({ pack }) => pack === 'sprint');
        assert.equal(sprint?.before?.text, sprint?.after?.text, id);
      }
    }
  });
});

describe('what can’t be had', () => {
  it('is said, with what stands in the way: the tones', () => {
    const craft = demo('bittern');
    const { proposals, inTheWay, answer } = found(craft, {
      holds: { toneLeft: -90, phaseMargin: null, gainMargin: null, minutes: null },
    });
    assert.deepEqual(proposals, []);
    assert.match(answer, /can’t be had/);
    assert.match(
      inTheWay[0] ?? '',
      /^Motor tone in the hover, filtered, with pack meadow: [\d.]+ dB off it at best, 90 dB asked for\.$/,
    );
  });

  it('or margins that go with them', () => {
    const craft = demo('wagtail');
    const { proposals, inTheWay } = found(craft, {
      holds: { toneLeft: -50, phaseMargin: 45, gainMargin: 2, minutes: null },
    });
    assert.deepEqual(proposals, []);
    assert.match(
      inTheWay.join(' '),
      /With at least 50 dB off the motors’ tones, .*(?:45 deg asked for|swing by itself)/,
    );
  });

  it('or the minutes, which filters don’t change', () => {
    const craft = demo('wagtail');
    const { inTheWay } = found(craft, {
      holds: { toneLeft: -12, phaseMargin: 30, gainMargin: 2, minutes: 60 },
    });
    assert.match(
      inTheWay[0] ?? '',
      /min of hovering with pack single, 60 min asked: filters and gains don’t change that/,
    );
  });

  it('is not looked for while a figure that it hangs on is not known', () => {
    const text = readFileSync('test/demo/wagtail.craft', 'utf8').replace(/^kv .*$/m, '');
    const { inTheWay, proposals } = found(craftOf(text, club));
    assert.deepEqual(proposals, []);
    assert.match(inTheWay.join(' '), /motor\.kv/);
    assert.match(found(craftOf('[gyro]\nrate = 4 kHz', {})).inTheWay.join(' '), /no whole craft/);
  });

  it('says meanwhile where the motors hum, and offers the lines once', () => {
    const text = readFileSync('test/demo/wagtail.craft', 'utf8')
      .replace(/\[gyro\.filter\.1\][\s\S]*?(?=\[control\])/, '')
      .replace(/^rate = 2 kHz$/m, '');
    const { tones, ways, inTheWay } = found(craftOf(text, club));
    assert.match(
      tones ?? '',
      /hum with pack single at \d+ Hz \(\d+–\d+\) in the hover and at \d+ Hz .*; with pack pair at/,
    );
    assert.ok(inTheWay.length > 1);
    assert.deepEqual(
      ways.map(({ paths }) => paths),
      [['gyro.filter.1.kind', 'control.rate']],
    );
    const noKv = readFileSync('test/demo/wagtail.craft', 'utf8').replace(/^kv .*$/m, '');
    assert.equal(found(craftOf(noKv, club)).tones, null);
  });

  it('says of a filter that may not go that it stays on', () => {
    assert.deepEqual(foundIn('wagtail').heldBack, [
      'derivative.filter.1.kind: stays on, or the check “The derivative is filtered” would speak up.',
    ]);
  });
});

describe('whether filters are needed', () => {
  const bare = () =>
    craftOf(
      readFileSync('test/demo/sandmartin.craft', 'utf8')
        .replace(/\[gyro\.filter\.1\][\s\S]*?(?=\[derivative\])/, '[gyro]\nchain = none\n\n')
        .replace(/ {2}# accept tune\/derivative-unfiltered.*$/m, ''),
      club,
    );

  it('is answered for four cells: yes, with how much', () => {
    const craft = bare();
    const { unfiltered, proposals, now } = found(craft, { packs: ['cruise'] });
    assert.equal(unfiltered?.isEnough, false);
    assert.match(
      unfiltered?.text ?? '',
      /^It needs filtering: .* nothing would be off the loudest motor tone \(12 dB are asked for\)/,
    );
    assert.equal(now?.delay, 0);
    const [least] = proposals;
    assert.ok(least !== undefined && least.point.delay > 0);
    assert.ok(
      least.settings.some(({ path, after }) => path === 'gyro.filter.1.cutoff' && / Hz$/.test(after)),
    );
    assert.ok(
      least.lost.length >= 0 && least.gained.every(({ level }) => level === 'note' || level === 'tidy'),
    );
  });
});

describe('voltages', () => {
  it('and the charge that stays come down as far as the minutes ask for', () => {
    const craft = demo('wagtail');
    const now = figureOf(new CraftView(craft, 'single'), 'minutes-to-landing')?.likely ?? 0;
    const asked = Number((1.04 * now).toFixed(2));
    const { proposals, inTheWay } = found(craft, {
      moves: ['voltages', 'filters'],
      holds: { toneLeft: -12, phaseMargin: 35, gainMargin: 2, minutes: asked },
    });
    assert.deepEqual(inTheWay, []);
    const [first] = proposals;
    const paths = first?.settings.map(({ path }) => path) ?? [];
    assert.ok(paths.includes('power.charge-reserve') || paths.includes('power.land-cell'), paths.join());
    const written = craftOf(first?.text ?? '', club);
    for (const pack of written.packs())
      assert.ok((figureOf(new CraftView(written, pack), 'minutes-to-landing')?.likely ?? 0) >= asked);
  });
});

describe('the work', () => {
  it('pauses often, says how far it is, and leaves the craft as it was when it is left', () => {
    const craft = demo('wagtail');
    const text = craft.root.document.text();
    const before = figureOf(new CraftView(craft, 'pair'), 'roll-phase-margin')?.likely;
    const work = find(craft, wishFor(craft), findingsOf(craft), findingsOf);
    let [last, count] = [0, 0];
    for (; count < 60; count += 1) {
      const step = work.next();
      assert.ok(step.done !== true);
      assert.ok(step.value.share >= last && step.value.share <= 1 && step.value.doing.length > 3);
      last = step.value.share;
    }
    work.return(undefined as never);
    assert.equal(craft.root.document.text(), text);
    assert.equal(figureOf(new CraftView(craft, 'pair'), 'roll-phase-margin')?.likely, before);
  });
});

describe('what must hold, as it is typed', () => {
  it('is a number with or without its unit, or any', () => {
    assert.equal(readHold('toneLeft', '20'), -20);
    assert.equal(readHold('toneLeft', '20 dB'), -20);
    assert.equal(readHold('phaseMargin', ' 45 deg '), 45);
    assert.equal(readHold('minutes', 'any'), null);
    assert.match(String(readHold('minutes', '5 s')), /takes a number of min, or any, not "5 s"/);
    assert.match(String(readHold('gainMargin', '50')), /takes 1 to 20 times, not 50/);
    assert.match(String(readHold('toneLeft', 'quiet')), /not "quiet"/);
  });

  it('is told as it was asked', () => {
    assert.equal(
      heldText({ toneLeft: -12, phaseMargin: 40, gainMargin: null, minutes: 5 }),
      'at least 12 dB off every motor tone, a phase margin of 40 deg, 5 min hovering until it is time to land',
    );
    assert.equal(
      heldText({ toneLeft: null, phaseMargin: null, gainMargin: null, minutes: null }),
      'that no loop swings',
    );
  });
});
