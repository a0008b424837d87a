import { strict as assert } from 'node:assert';
import { shippedData } from '../catalog/shipped';
import { differences, type Kind, readReviewed, standing } from './reviewed';
import { motorOrders, ordersIn } from './standing-texts';

const kinds = Object.keys(standing).filter((kind): kind is Kind => kind in standing);

/**
 * What is remembered from a program imitates it, be it a name or a number. So all that stands in the data, the
 * demo and the starters is in a list that somebody has read with one question: which single program would a
 * practitioner name on seeing this? `npx tsx test/unit/originality/review.ts` shows what nobody has read yet.
 */
describe('what was reviewed to be ours or the trade’s', () => {
  for (const kind of kinds) {
    it(`is all that stands under ${kind}`, () => {
      assert.deepEqual(differences(kind), { unreviewed: [], stale: [] });
    });

    it(`has its reason, and stands once, under ${kind}`, () => {
      const groups = readReviewed(kind);
      assert.ok(groups.length > 0);
      assert.deepEqual(
        groups.filter(({ why }) => why.split(' ').length < 4).map(({ why }) => why),
        [],
      );
      const lines = groups.flatMap((group) => group.lines);
      assert.deepEqual(
        lines.filter((text, index) => lines.indexOf(text) !== index),
        [],
      );
    });
  }
});

describe('a check about a missing overlay element', () => {
  const { collections, checks } = shippedData().bundle;
  const overlay = collections.find(({ path }) => path === 'overlay');
  const elements = overlay?.keys.kind === 'closed' ? overlay.keys.members : [];
  const missing = elements.flatMap(({ name, title }) => {
    const check = checks.flatMap((file) => file.checks).find(({ id }) => id === `see/${name}-missing`);
    return check === undefined ? [] : [{ title: title.toLowerCase(), message: check.message }];
  });

  it('calls it as the overlay does', () => {
    assert.ok(missing.length > 1);
    for (const { title, message } of missing) assert.match(message, new RegExp(`\\bnot the ${title}\\b`));
  });
});

describe('orders of the motors', () => {
  const places = ['rear-left', 'front-left', 'front-right', 'rear-right'];

  it('are found in lists, in listings of boards and in sentences', () => {
    const order = [places.join(' ')];
    assert.deepEqual(ordersIn(`order = [${places.join(', ')}]`), order);
    assert.deepEqual(ordersIn(JSON.stringify(places)), order);
    assert.deepEqual(ordersIn('a is tail left;\nb is nose left;\nc is nose right;\nd is tail right;'), order);
    assert.deepEqual(ordersIn('Rear left, front left, front right and then the rear right one'), order);
    assert.deepEqual(
      ordersIn(places.map((place) => `"${place}": "${place.replace('-', ' ')}"`).join(',')),
      order,
    );
  });

  it('are none where the corners stand apart, or belong to a frame of another shape', () => {
    assert.deepEqual(ordersIn(places.join(' '.repeat(100))), []);
    assert.deepEqual(ordersIn('front-left-upper front-right-upper rear-left-upper rear-right-upper'), []);
  });

  it('of the scripts are all that of reading', () => {
    const inScripts = [...motorOrders()].filter(([, files]) => files.some((file) => file.endsWith('.craft')));
    assert.deepEqual(
      inScripts.map(([order]) => order),
      ['front-left front-right rear-left rear-right'],
    );
  });
});
