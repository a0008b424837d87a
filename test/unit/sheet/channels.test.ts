import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { CraftView } from '../../../server/src/craft/view';
import {
  type ChannelPlan,
  type ChannelWish,
  channelPlan,
  channelWishOf,
  sendsAt,
} from '../../../server/src/sheet/find/channels';
import { testCatalog } from '../../support/catalog';
import { craftOf } from '../../support/findings';

const european: ChannelWish = {
  pilots: 5,
  region: 'european-union',
  licence: 'none',
  plans: null,
  power: null,
  keep: [],
};

function planFor(wish: Partial<ChannelWish>, near: number | null = null): ChannelPlan {
  const work = channelPlan(testCatalog, { ...european, ...wish }, near);
  for (let step = work.next(); ; step = work.next()) if (step.done === true) return step.value;
}

/** MHz of every channel of the plans that lies whole in 5725 to 5875 MHz. */
const open = [
  ...new Set(
    [...testCatalog.videoBands.values()].flatMap(({ channels }) =>
      channels.map((text) => Number.parseFloat(text)),
    ),
  ),
]
  .filter((frequency) => frequency >= 5734 && frequency <= 5866)
  .sort((one, other) => one - other);

/** Counted by the definition, 2 f1 − f2 and f1 + f2 − f3 (ITU-R SM.1134), in another way than the engine's. */
function hits(carriers: readonly number[]): number {
  let count = 0;
  for (const victim of carriers) {
    const others = carriers.filter((one) => one !== victim);
    for (const [at, a] of others.entries())
      for (const b of others.slice(at))
        for (const c of others) if (c !== a && c !== b && Math.abs(a + b - c - victim) < 9) count += 1;
  }
  return count;
}

function spacingOf(carriers: readonly number[]): number {
  return Math.min(...carriers.slice(1).map((frequency, at) => frequency - (carriers[at] ?? 0)));
}

function* choices(count: number, from = 0): Generator<readonly number[]> {
  if (count === 0) yield [];
  else
    for (let at = from; at < open.length; at += 1)
      for (const rest of choices(count - 1, at + 1)) yield [open[at] ?? 0, ...rest];
}

describe('channels for everybody', () => {
  for (const pilots of [2, 3, 4, 5])
    it(`are, for ${pilots}, the best of all that there are`, () => {
      const { channels, products, spacing } = planFor({ pilots });
      const carriers = channels.map(({ frequency }) => frequency);
      assert.equal(carriers.length, pilots);
      assert.equal(hits(carriers), products);
      assert.equal(spacingOf(carriers), spacing);
      for (const other of choices(pilots)) {
        const apart = spacingOf(other);
        if (apart < 18) continue;
        const falls = apart > (spacing ?? 0) || products > 0 ? hits(other) : products;
        assert.ok(falls > products || (falls === products && apart <= (spacing ?? 0)), `${other}`);
      }
    });

  it('are named by their plans, and lie whole in what is open', () => {
    for (const { names, frequency } of planFor({}).channels) {
      assert.ok(names.length > 0 && open.includes(frequency));
      for (const { band, channel } of names)
        assert.equal(Number.parseFloat(testCatalog.videoBand(band)?.channels[channel - 1] ?? ''), frequency);
    }
  });

  it('leave those where they are who stay', () => {
    const { channels } = planFor({ pilots: 3, keep: [5769e6] });
    assert.deepEqual(
      channels.filter(({ isKept }) => isKept).map(({ frequency }) => frequency),
      [5769],
    );
    assert.equal(channels.length, 3);
  });

  it('are said not to fit where they don’t, with how many do', () => {
    const { channels, answer } = planFor({ pilots: 12 });
    assert.deepEqual(channels, []);
    assert.match(answer, /^So many don’t fit side by side: [5-8] at most/);
    assert.match(planFor({ region: 'nowhere' }).answer, /^No channel/);
  });

  it('are those of plans that the transmitters know', () => {
    const { channels } = planFor({ pilots: 3, plans: ['f'] });
    assert.ok(
      channels.length === 3 && channels.every(({ names }) => names.every(({ band }) => band === 'f')),
    );
  });

  it('are never farther apart for more pilots', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 5 }),
        fc.subarray(['a', 'b', 'f', 'r'], { minLength: 1 }),
        (pilots, plans) => {
          const [few, more] = [planFor({ pilots, plans }), planFor({ pilots: pilots + 1, plans })];
          if (more.channels.length === 0) return;
          assert.ok(few.products < more.products || (few.spacing ?? 0) >= (more.spacing ?? 0));
        },
      ),
      { numRuns: 12 },
    );
  });

  it('follow what a craft says of its region, its plans and where it sends', () => {
    const club = { 'club-habits.craft': readFileSync('test/demo/club-habits.craft', 'utf8') };
    const view = new CraftView(craftOf(readFileSync('test/demo/sandmartin.craft', 'utf8'), club), 'sprint');
    const wish = channelWishOf(view, 5, true);
    assert.deepEqual([wish.region, wish.licence, wish.keep], ['european-union', 'none', [5769e6]]);
    assert.equal(sendsAt(view), 5843e6);
    const { channels, answer } = planFor(wish, sendsAt(view));
    assert.equal(channels.length, 5);
    assert.match(answer, /channel \d of band [a-z]+ at 5\d{3} MHz, .*, at least \d+ MHz apart/);
  });
});
