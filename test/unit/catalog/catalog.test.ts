import assert from 'node:assert/strict';
import { loadCatalog } from '../../../server/src/catalog/catalog';
import { filledIn, shippedCatalog, shippedData } from './shipped';

describe('looking a parameter up', () => {
  it('finds every parameter under a path as a script writes it', () => {
    for (const [name, known] of shippedCatalog().parameters) {
      const found = shippedCatalog().parameter(filledIn(name));
      assert.equal(found?.name, name);
      assert.equal(found?.parameter, known.parameter);
      assert.equal(shippedCatalog().explainMissing(filledIn(name)), undefined);
    }
  });

  it('tells the members named on the way', () => {
    assert.deepEqual(shippedCatalog().parameter('pack.sprint.cells')?.keys, ['sprint']);
    assert.deepEqual(shippedCatalog().parameter('gyro.filter.5.centre')?.keys, ['5']);
    assert.deepEqual(shippedCatalog().parameter('radio-club.other.Mika.power')?.keys, ['Mika']);
    assert.deepEqual(shippedCatalog().parameter('gyro.rate')?.keys, []);
    assert.deepEqual(shippedCatalog().parameter('control.when.fast-turn.integral')?.keys, ['fast-turn']);
    assert.deepEqual(shippedCatalog().parameter('control.when.fast-turn.from')?.keys, []);
  });

  it('tells members apart however many were asked for before', () => {
    const names = Array.from({ length: 2500 }, (_, index) => `pack.p${index}.cells`);
    for (const path of [...names, ...names.toReversed()]) {
      const found = shippedCatalog().parameter(path);
      assert.deepEqual(
        [found?.path, found?.name, found?.keys],
        [path, 'pack.<name>.cells', [path.split('.')[1]]],
      );
    }
  });

  it('gives ranges in SI with the name of their dimension', () => {
    const found = shippedCatalog().parameter('gyro.filter.1.cutoff');
    assert.equal(found?.dimensionName, 'frequency');
    assert.ok(found?.range && found.usual);
    assert.ok(found.range.low <= found.usual.low && found.usual.high <= found.range.high);
    const kv = shippedCatalog().parameter('motor.kv');
    assert.ok(kv?.usual && kv.usual.low < 300 && kv.usual.high > 300, 'rad/s a volt');
    assert.ok(shippedCatalog().parameter('stick.roll.curve')?.across);
  });

  it('takes no placeholder, no unknown member and no number outside', () => {
    const strange = [
      'pack.<name>.cells',
      'switch.jump.channel',
      'gyro.filter.0.centre',
      'gyro.filter.33.centre',
    ];
    const names = [
      ...strange,
      'gyro.filter.01.centre',
      'gyro.filter.1.5.centre',
      'pack..cells',
      '',
      '.',
      'gyro.',
    ];
    for (const name of names) assert.equal(shippedCatalog().parameter(name), undefined, name);
  });

  it('is not led astray by names that every object has', () => {
    const words = ['constructor', '__proto__', 'toString', 'hasOwnProperty', 'prototype', 'valueOf'];
    for (const word of words) {
      assert.equal(shippedCatalog().parameter(word), undefined);
      assert.equal(shippedCatalog().parameter(`${word}.name`), undefined);
      assert.equal(shippedCatalog().parameter(`gyro.${word}`), undefined);
      assert.equal(shippedCatalog().parameter(`switch.${word}.channel`), undefined);
      assert.equal(shippedCatalog().explainMissing(`gyro.${word}`)?.reason, 'unknown-property');
      assert.equal(shippedCatalog().isSection(word), false);
      assert.equal(shippedCatalog().board(word), undefined);
      assert.equal(shippedCatalog().collection(word), undefined);
      assert.equal(shippedCatalog().check(word), undefined);
      assert.deepEqual(shippedCatalog().parameter(`pack.${word}.cells`)?.keys, [word]);
    }
  });
});

describe('explaining why a path names no parameter', () => {
  const reasons = [
    ['oven.rate', 'unknown-group'],
    ['switch.jump.channel', 'unknown-member'],
    ['gyro.filter.99.centre', 'number-outside'],
    ['gyro.filter.first.centre', 'number-outside'],
    ['gyro.filter.1.slope', 'unknown-property'],
    ['gyro.rate.now', 'unknown-property'],
    ['pack.sprint.volume', 'unknown-property'],
    ['gyro.filter.1', 'section-only'],
    ['pack', 'section-only'],
    ['pack.sprint', 'section-only'],
    ['own', 'section-only'],
    ['control.when.climbing.integral', 'unknown-member'],
    ['control.when.fast-turn.gives-way', 'unknown-property'],
    ['control.when.motors-short.proportional', 'makes-no-sense'],
    ['control.when.motors-short.from', 'makes-no-sense'],
    ['control.when.motors-short', 'section-only'],
  ] as const;
  for (const [path, reason] of reasons) {
    it(`${path}: ${reason}`, () => assert.equal(shippedCatalog().explainMissing(path)?.reason, reason));
  }

  it('says where the path stops making sense', () => {
    const property = shippedCatalog().explainMissing('pack.sprint.volume');
    assert.ok(property?.reason === 'unknown-property');
    assert.equal(property.section, 'pack.sprint');
    assert.equal(property.word, 'volume');
    assert.ok(property.properties.includes('cells'));
    const number = shippedCatalog().explainMissing('gyro.filter.99.centre');
    assert.ok(number?.reason === 'number-outside');
    assert.deepEqual([number.from, number.to, number.word], [1, 32, '99']);
  });
});

describe('sections', () => {
  it('are paths that settings can stand below', () => {
    const sections = [
      'gyro',
      'gyro.filter.1',
      'pack',
      'pack.sprint',
      'control.roll',
      'gyro.filter',
      'gyro.filter.2',
      'own',
      'own."PID 1"',
    ];
    for (const path of sections) assert.equal(shippedCatalog().isSection(path), true, path);
    const others = ['gyro.rate', 'gyro.lowpas', 'switch.jump', 'gyro.filter.33', '', 'pack.<name>'];
    for (const path of others) assert.equal(shippedCatalog().isSection(path), false, path);
  });

  it('list what can be set below them', () => {
    const rest = (section: string) =>
      shippedCatalog()
        .parametersUnder(section)
        .map((one) => one.rest);
    assert.ok(rest('pack.sprint').includes('cells'));
    assert.ok(rest('pack').includes('<name>.cells'));
    assert.ok(rest('gyro').includes('filter.<number>.centre'));
    assert.deepEqual(rest('control.when.motors-short'), ['integral', 'gives-way']);
    assert.deepEqual(rest('control.when.fast-turn'), ['proportional', 'integral', 'derivative', 'from']);
    assert.equal(new Set(rest('control')).size, rest('control').length);
    assert.deepEqual(rest('nowhere'), []);
    assert.deepEqual(rest('gyro.rate'), []);
    assert.ok(!rest('craft').includes(''));
  });

  it('have their members told where these are closed or numbered', () => {
    const names = (path: string) =>
      shippedCatalog()
        .members(path)
        .map((member) => member.name);
    assert.deepEqual(
      names('gyro.filter'),
      Array.from({ length: 32 }, (_, index) => `${index + 1}`),
    );
    assert.ok(names('switch').includes('permission'));
    assert.equal(names('overlay').length, 20);
    assert.deepEqual(names('pack'), []);
    assert.deepEqual(names('nowhere'), []);
  });
});

describe('loading', () => {
  it('gives the same catalogue from the bundle after a way through JSON', () => {
    const again = loadCatalog(JSON.parse(JSON.stringify(shippedData().bundle)));
    assert.deepEqual([...again.parameters.values()], [...shippedCatalog().parameters.values()]);
    assert.deepEqual([...again.checks.keys()], [...shippedCatalog().checks.keys()]);
  });
});
